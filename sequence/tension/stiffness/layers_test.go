package stiffness

import (
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// First principles: 1 in = 25.4 mm.
func TestParseLayers(t *testing.T) {
	for text, want := range map[string][]Layer{
		"95mm": {{95, ""}}, "95 mm": {{95, ""}}, "steel 20mm, aluminium 45mm": {{20, "steel"}, {45, "aluminium"}},
		"steel 20,5 mm,aluminium 45 mm": {{20.5, "steel"}, {45, "aluminium"}}, "20 mm grey cast iron + 10 mm": {{20, "grey cast iron"}, {10, ""}},
		"7075 1 1/2 in": {{38.1, "7075"}}, "70 GPa 20 mm; 3 mm washer": {{20, "70 GPa"}, {3, "washer"}}, "cast aluminium 1/2 in": {{12.7, "cast aluminium"}},
	} {
		got, err := ParseLayers(text)
		if diff := cmp.Diff(want, got, cmp.Comparer(func(a, b unit.Length) bool { return a-b < 1e-9 && b-a < 1e-9 })); err != nil || diff != "" {
			t.Errorf("%q: %v\n%s", text, err, diff)
		}
	}
	for text, want := range map[string]string{
		"": "steel 20 mm", "95": "with a unit", "steel": "with a unit", "steel 20mm,": "with a unit", "0 mm": "0.05 mm", "-3 mm": "0.05 mm",
		"cheese 20 mm": "grey cast iron", strings.Repeat("1 mm,", 60) + "1 mm": "up to 50",
	} {
		if got, err := ParseLayers(text); err == nil || !strings.Contains(words.English().Error(err), want) {
			t.Errorf("%q: %v, %v; want %q", text, got, err, want)
		}
	}
}

// Any text gives usable layers, or an error.
func TestLayersNeverPassSilently(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom([]rune("0123456789.,-–% =;+mthread headsl½/"))).Draw(t, "text")
		layers, err := ParseLayers(text)
		for _, l := range layers {
			if err == nil && !(l.Thickness > 0) {
				t.Fatalf("layers %q: %v", text, layers)
			}
		}
	})
}
