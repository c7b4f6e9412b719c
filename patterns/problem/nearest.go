package problem

import (
	"slices"
	"strings"
)

// Nearest returns the name with the fewest changes of letters, if they are few
// for its length; otherwise the only one with the same beginning; otherwise "".
// A name of one or two letters is near only if it differs in case.
func Nearest(name string, names []string) string {
	const (
		longest   = 40  // no listed name is longer
		mostNames = 250 // comparing more would take too long
	)
	wanted := []rune(strings.ToLower(name))
	if len(wanted) > longest || len(names) > mostNames {
		return ""
	}
	if len(wanted) < 3 {
		return otherCapitals(name, names)
	}
	best, fewest := "", 1+max(1, len(wanted)/3)
	for _, candidate := range names {
		if candidate == name || len(candidate) > longest {
			continue
		}
		if d := changes(wanted, []rune(strings.ToLower(candidate))); d < fewest {
			best, fewest = candidate, d
		}
	}
	if best == "" {
		return beginsAlike(string(wanted[:3]), names)
	}
	return best
}

func otherCapitals(name string, names []string) string {
	for _, candidate := range names {
		if candidate != name && strings.EqualFold(candidate, name) {
			return candidate
		}
	}
	return ""
}

// beginsAlike returns the only word with a beginning: tork is short for torque.
// An id such as M1-12 shares its beginning with many.
func beginsAlike(beginning string, names []string) string {
	alike := slices.DeleteFunc(slices.Clone(names), func(name string) bool {
		return !strings.HasPrefix(strings.ToLower(name), beginning)
	})
	if len(alike) != 1 {
		return ""
	}
	return alike[0]
}

// changes counts the letters to insert, delete, replace, or swap with their
// neighbour (the Damerau–Levenshtein distance, optimal string alignment).
func changes(a, b []rune) int {
	before := make([]int, len(b)+1)
	last := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
