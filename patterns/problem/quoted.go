package problem

import (
	"fmt"
	"strconv"
	"strings"
)

// Quoted prints a value of the file, shortened where it is long.
func Quoted(s string) string { return strconv.Quote(Shortened(s)) }

// Shortened cuts a text that is long.
func Shortened(s string) string {
	const shown = 60
	if runes := []rune(s); len(runes) > shown {
		return string(runes[:shown]) + "…"
	}
	return s
}

// Alternatives joins what is allowed.
func Alternatives(names []string) string { return listed(names, 40) }

// Some joins names of the file, at most a dozen of them.
func Some(names []string) string { return listed(names, 12) }

func listed(names []string, shown int) string {
	if len(names) <= shown {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:shown], ", "), len(names)-shown)
}
