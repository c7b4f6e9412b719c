package texts

import (
	"regexp"
	"testing"

	"pgregory.net/rapid"
)

// The letters of a designation are those that this pattern matches: one to four
// capitals, one to four digits, possibly a letter.
func TestLettersOfADesignation(t *testing.T) {
	t.Parallel()
	like := regexp.MustCompile(`^(\p{Lu}{1,4})-?(\d{1,4})(\pL?)$`)
	try := func(t interface{ Errorf(string, ...any) }, word string) {
		want := ""
		if m := like.FindStringSubmatch(word); m != nil {
			want = m[1]
		}
		if got := lettersOf(word); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
	for _, word := range []string{"G6", "V8", "P4", "ÄB-12c", "ABCD1234é", "ABCDE1", "A12345", "A--1", "A1bc", "a1", "A", "1", "", "A-", "A1-", "A١"} {
		try(t, word)
	}
	rapid.Check(t, func(t *rapid.T) {
		try(t, rapid.StringMatching(`[A-CÄa]{0,5}-{0,2}[0-9]{0,5}[a-bé3-]{0,2}`).Draw(t, "word"))
	})
}
