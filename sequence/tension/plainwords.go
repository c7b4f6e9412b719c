package tension

import (
	"strings"
)

// betweenWords are the signs that people put between words.
var betweenWords = strings.NewReplacer("-", " ", "‐", " ", ",", " ", "/", " ", "+", " and ", "&", " and ", "_", " ")

// plainWords gives the words in lower case, without signs between them.
func PlainWords(s string) string {
	s = betweenWords.Replace(strings.ToLower(s))
	return strings.Join(strings.Fields(s), " ")
}
