package flag

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Expected values are first principles: percents are hundredths.
func TestFiguresOfPredict(t *testing.T) {
	for text, want := range map[string][]float64{"30,70,100": {0.3, 0.7, 1}, " 10 % , 100%": {0.1, 1}} {
		got, err := ParsePercents(text)
		if diff := cmp.Diff(want, got); err != nil || diff != "" {
			t.Errorf("%s: %v %s", text, err, diff)
		}
	}
	for text, want := range map[string]float64{"110%": 1.1, "1.25": 1.25, "150 %": 1.5} {
		if got, err := ParseCap(text); err != nil || got != want {
			t.Errorf("%s: %g, %v; want %g", text, got, err, want)
		}
	}
}

// Whatever is typed, what is taken lies within what is allowed.
func FuzzFiguresOfPredict(f *testing.F) {
	for _, text := range []string{"30,70,100", "0.3,1", "110%", "50-120-250 MPa/mm", "4.2e-6 mm/N", "150mm-190mm", "", ",", "-", "1e99%", "NaN", "Inf MPa/mm", "1e-99 mm/N"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, parse := range []func(string) ([]float64, error){ParsePercents, ParseShares} {
			list, err := parse(text)
			for _, share := range list {
				if err == nil && !(share >= 0.01 && share <= 1.2) {
					t.Errorf("%q: a pass to %g", text, share)
				}
			}
		}
		if c, err := ParseCap(text); err == nil && !(c >= 1 && c <= 2) {
			t.Errorf("%q: a cap of %g", text, c)
		}
		if ring, err := ParseRing(text); err == nil && !(ring.GasketInner > 0 && ring.GasketOuter > ring.GasketInner) {
			t.Errorf("%q: a ring of %v to %v", text, ring.GasketInner, ring.GasketOuter)
		}
	})
}
