package cli

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/render/words"
)

func TestKnownDistance(t *testing.T) {
	k, err := knownDistance("f1, F12 = 190.4mm")
	if err != nil || k.FromID != "F1" || k.ToID != "F12" || k.Mm != 190.4 {
		t.Errorf("%+v, %v", k, err)
	}
	k, err = knownDistance("102,80:2400.5,95=7.5in")
	if err != nil || k.FromID != "" || k.From != (geometry.Point{X: 102, Y: 80}) || k.To != (geometry.Point{X: 2400.5, Y: 95}) || math.Abs(k.Mm-190.5) > 1e-9 {
		t.Errorf("%+v, %v", k, err)
	}
	for text, want := range map[string]string{
		"":               "write F1,F5=190.4mm",
		"F1,F5":          "write F1,F5=190.4mm",
		"F1=20mm":        "write F1,F5=190.4mm",
		"F1,F1=20mm":     "both ends are F1",
		"X1,F2=20mm":     "write F1,F5=190.4mm",
		"F1,F2=0mm":      "too small",
		"F1,F2=-4mm":     "too small",
		"F1,F2=20kg":     "20kg",
		"1,2:3=20mm":     "not a place in pixels",
		"1,2:x,4=20mm":   "not a place in pixels",
		"1,2:NaN,4=20mm": "not a place in pixels",
		"1,2:1e9,4=20mm": "not a place in pixels",
	} {
		if _, err := knownDistance(text); err == nil || !strings.Contains(words.English().Error(err), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}
