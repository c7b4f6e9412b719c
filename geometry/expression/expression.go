// Package expression compiles regular expressions on first use: a run needs few of
// them, and compiling all would take longer than reading a file. Pure.
package expression

import (
	"regexp"
	"sync"
	"weak"
)

// Lazy is a regular expression that is compiled on first use.
type Lazy func() *regexp.Regexp

// Lazily returns an expression; a source with a mistake panics on first use. Memory
// that is needed takes the compiled one back: all of them are a megabyte, and after
// a file is read nobody uses them.
func Lazily(source string) Lazy {
	var (
		lock sync.Mutex
		kept weak.Pointer[regexp.Regexp]
	)
	return func() *regexp.Regexp {
		lock.Lock()
		defer lock.Unlock()
		compiled := kept.Value()
		if compiled == nil {
			compiled = regexp.MustCompile(source)
			kept = weak.Make(compiled)
		}
		return compiled
	}
}

func (e Lazy) MatchString(s string) bool            { return e().MatchString(s) }
func (e Lazy) FindStringSubmatch(s string) []string { return e().FindStringSubmatch(s) }
func (e Lazy) FindSubmatch(b []byte) [][]byte       { return e().FindSubmatch(b) }

func (e Lazy) FindAllString(s string, most int) []string { return e().FindAllString(s, most) }

func (e Lazy) FindAllStringSubmatch(s string, most int) [][]string {
	return e().FindAllStringSubmatch(s, most)
}

func (e Lazy) FindAllStringSubmatchIndex(s string, most int) [][]int {
	return e().FindAllStringSubmatchIndex(s, most)
}

func (e Lazy) ReplaceAllStringFunc(s string, by func(string) string) string {
	return e().ReplaceAllStringFunc(s, by)
}
