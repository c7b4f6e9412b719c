package strength

import (
	"testing"
)

// Every class has its own elongation and shear ratio or takes the least, and
// every name of the two tables is a class.
func TestElongationsBelongToClasses(t *testing.T) {
	printed := map[string]bool{}
	for _, g := range grades {
		printed[g.printed()] = true
		if _, known := g.strength().Elongation(); !known {
			t.Errorf("%s has no elongation", g.printed())
		}
	}
	for name := range elongations {
		if !printed[name] {
			t.Errorf("%s is no class", name)
		}
	}
	for name, ratio := range shearRatios {
		if !printed[name] || ratio < leastShearRatio {
			t.Errorf("%s, %v", name, ratio)
		}
	}
}
