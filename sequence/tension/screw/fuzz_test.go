package screw

import "testing"

// FuzzGiven: any text gives figures within their limits, or an error.
func FuzzGiven(f *testing.F) {
	for _, text := range []string{"0.12", "0.10-0.14", "thread=0.10-0.14, head=0.12", "90 %", "0,9", "1e308", "−0.1", "head=0.1, head=0.2", "0.14-0.10"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if fr, err := ParseFriction(text); err == nil {
			for _, r := range []Range{fr.Thread, fr.Head} {
				if !(r.Low >= 0.01 && r.Low <= r.Nominal && r.Nominal <= r.High && r.High <= 1) {
					t.Fatalf("%q is read as %v", text, fr)
				}
			}
		}
		if share, err := ParseShare(text); err == nil && !(share > 0 && share <= 1) {
			t.Fatalf("%q is read as a share of %v", text, share)
		}
		if k, err := ParseNutFactor(text); err == nil && !(k > 0 && k <= mostNutFactor) {
			t.Fatalf("%q is read as a nut factor of %v", text, k)
		}
	})
}
