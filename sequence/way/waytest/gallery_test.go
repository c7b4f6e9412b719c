package waytest_test

import (
	"testing"

	"drawdown/geometry"
	"drawdown/sequence/way/waytest"
)

// There are forty parts, none with two fasteners at the same place.
func TestParts(t *testing.T) {
	t.Parallel()
	parts := waytest.Parts()
	if len(parts) != 40 {
		t.Errorf("%d parts", len(parts))
	}
	names := map[string]bool{}
	for _, p := range parts {
		if names[p.Name] {
			t.Errorf("%s is there twice", p.Name)
		}
		names[p.Name] = true
		for i, d := range geometry.NearestDistances(p.Points) {
			if d < 20 {
				t.Errorf("%s: place %d has another %.0f mm away", p.Name, i, d)
			}
		}
	}
}
