package cli

import "strings"

// didYouMean gives " (did you mean x?)" where one of the names is near.
func didYouMean(name string, names []string) string {
	if best := nearest(name, names); best != "" {
		return " (did you mean " + best + "?)"
	}
	return ""
}

// nearest gives the name that takes the fewest changes of letters, at most a
// third of them; empty where none is so near. The first of equals wins.
func nearest(name string, names []string) string {
	const longest = 40 // nothing that we list is longer
	wanted := []rune(strings.ToLower(name))
	if len(wanted) > longest {
		return ""
	}
	best, fewest := "", 1+max(1, len(wanted)/3)
	for _, candidate := range names {
		if d := changes(wanted, []rune(candidate)); d < fewest && d < len(wanted) {
			best, fewest = candidate, d
		}
	}
	return best
}

// changes counts the letters to insert, leave out, replace, or swap with their
// neighbour (the Damerau–Levenshtein distance, optimal string alignment).
func changes(a, b []rune) int {
	table := make([][]int, len(a)+1)
	for i := range table {
		table[i] = make([]int, len(b)+1)
		table[i][0] = i
	}
	for j := range b {
		table[0][j+1] = j + 1
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			replaced := table[i-1][j-1]
			if a[i-1] != b[j-1] {
				replaced++
			}
			table[i][j] = min(replaced, table[i-1][j]+1, table[i][j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				table[i][j] = min(table[i][j], table[i-2][j-2]+1)
			}
		}
	}
	return table[len(a)][len(b)]
}
