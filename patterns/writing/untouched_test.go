package writing_test

import (
	"bytes"
	"testing"

	"drawdown/geometry"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

// A file is untouched until one character of it changes; line ends of another
// system are no change (first principles).
func TestUntouched(t *testing.T) {
	t.Parallel()
	draft := writing.Draft{Title: "Cover", Joint: geometry.Joint{Fasteners: []geometry.Fastener{{ID: "A", Kind: "hole 8"}, {ID: "B", Kind: "hole 8", At: geometry.Point{X: 30}}}}}
	made := writing.Pattern(draft, words.English().Say)
	if !writing.Untouched(made) || !writing.Untouched(bytes.ReplaceAll(made, []byte("\n"), []byte("\r\n"))) {
		t.Error("a new file counts as edited")
	}
	for name, edited := range map[string][]byte{
		"a letter": bytes.Replace(made, []byte("Cover"), []byte("Covet"), 1), "a line behind": append(bytes.Clone(made), "# mine\n"...),
		"no mark": made[:bytes.LastIndex(made, []byte("# fingerprint"))], "empty": nil,
	} {
		if writing.Untouched(edited) {
			t.Errorf("%s: counts as untouched", name)
		}
	}
}
