package meaning

import (
	"testing"

	"pgregory.net/rapid"

	"drawdown/patterns/problem"
)

// Every text with one wrong letter still finds its word.
func TestNearestFindsOneSlip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom(fileKeys).Draw(t, "word")
		at := rapid.IntRange(0, len(word)-1).Draw(t, "at")
		if got := problem.Nearest(word[:at]+word[at+1:], fileKeys); got != word {
			t.Fatalf("%s without letter %d: %q", word, at, got)
		}
	})
}
