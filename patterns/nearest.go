package patterns

import (
	"fmt"
	"strconv"
	"strings"
)

// quoted prints a value of the file, shortened where it is long.
func quoted(s string) string { return strconv.Quote(shortened(s)) }

func shortened(s string) string {
	const shown = 60
	if runes := []rune(s); len(runes) > shown {
		return string(runes[:shown]) + "…"
	}
	return s
}

// alternatives joins what is allowed.
func alternatives(names []string) string { return listed(names, 40) }

// some joins names of the file, at most a dozen of them.
func some(names []string) string { return listed(names, 12) }

func listed(names []string, shown int) string {
	if len(names) <= shown {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:shown], ", "), len(names)-shown)
}
