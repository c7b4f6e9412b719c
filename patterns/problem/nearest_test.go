package problem

import (
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	names := []string{"card", "order", "check", "patterns", "completion", "help"}
	for _, c := range []struct{ name, want string }{
		{"ordr", "order"},
		{"crad", "card"},
		{"cards", "card"},
		{"Order", "order"},
		{"pattern", "patterns"},
		{"completoin", "completion"},
		{"hepl", "help"},
		{"xyzzy", ""},
		{"", ""},
		{"c", ""},
		{"draw-the-card-of-this-joint-and-print-it-please", ""},
	} {
		if got := Nearest(c.name, names); got != c.want {
			t.Errorf("Nearest(%q) = %q, want %q", c.name, got, c.want)
		}
	}
}

// By first principles: no changes between equal words, as many in both
// directions, at most the length of the longer word, and at least the
// difference in length.
func TestChanges(t *testing.T) {
	word := rapid.SliceOfN(rapid.RuneFrom([]rune("abc")), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		d := changes(a, b)
		if (d == 0) != (string(a) == string(b)) {
			t.Fatalf("%d changes between %q and %q", d, string(a), string(b))
		}
		if back := changes(b, a); back != d {
			t.Fatalf("%d changes there, %d back", d, back)
		}
		longer, shorter := max(len(a), len(b)), min(len(a), len(b))
		if d > longer || d < longer-shorter {
			t.Fatalf("%d changes between %q and %q", d, string(a), string(b))
		}
	})
}
