package tension

import (
	"slices"
	"strings"
)

// betweenWords are signs used between words.
var betweenWords = strings.NewReplacer("-", " ", "‐", " ", ",", " ", "/", " ", "+", " and ", "&", " and ", "_", " ")

// PlainWords returns the words in lower case, without signs between them.
func PlainWords(s string) string {
	s = betweenWords.Replace(strings.ToLower(s))
	return strings.Join(strings.Fields(s), " ")
}

// Named finds the first element of a list with a name, in any spelling.
func Named[T any](list []T, names func(T) []string, text string) (found T, ok bool) {
	name := PlainWords(text)
	k := slices.IndexFunc(list, func(one T) bool {
		return slices.ContainsFunc(names(one), func(known string) bool { return PlainWords(known) == name })
	})
	if k < 0 {
		return found, false
	}
	return list[k], true
}
