package fixes_test

import (
	"testing"

	readfixes "drawdown/patterns/fixes"
	"drawdown/patterns/source"
	"drawdown/render/words"
)

// Whatever the text, the reader gives corrections that make sense, or problems that
// can be worded.
func FuzzRead(f *testing.F) {
	f.Add("drawdown: 1\ndrop: [F3, [812, 455]]\nadd:\n  - {pixel: [640, 210]}\n  - {at: [12.5, 40], diameter: 8.4, as: dowel}\nsizes: {F4: 8.4 mm}\ncrop: [100, 80, 2400, 1600]\npart: 2\n")
	f.Add("drawdown: 1\ndrop: {F3: []}\nsizes: [~]\ncrop: [1e308, -1, 0]\npart: 1.5\n")
	f.Fuzz(func(t *testing.T, text string) {
		made, problems := readfixes.Read(source.Source{File: "a.fixes.yaml", Data: []byte(text)})
		_ = problems.Worded(words.English().What, words.English().Allowed).Error()
		if problems.Stops() {
			return
		}
		for _, s := range made.Sizes {
			if !(s.DiameterMm > 0) {
				t.Errorf("a hole of %g mm", s.DiameterMm)
			}
		}
		for _, a := range made.Adds {
			if !(a.DiameterMm >= 0) {
				t.Errorf("a hole of %g mm added", a.DiameterMm)
			}
		}
		if made.Part < 0 {
			t.Errorf("part %d", made.Part)
		}
	})
}
