package texts

import (
	"regexp"
	"sync"
)

// expression is a regular expression that is compiled on first use: a run needs
// few of them, and compiling all would take longer than reading a file.
type expression func() *regexp.Regexp

func lazily(source string) expression {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(source) })
}

func (e expression) MatchString(s string) bool            { return e().MatchString(s) }
func (e expression) FindStringSubmatch(s string) []string { return e().FindStringSubmatch(s) }

func (e expression) FindAllStringSubmatch(s string, most int) [][]string {
	return e().FindAllStringSubmatch(s, most)
}

func (e expression) FindAllStringSubmatchIndex(s string, most int) [][]int {
	return e().FindAllStringSubmatchIndex(s, most)
}
