package strength

import (
	"testing"
)

// Every class has its own elongation and shear ratio or the least one, and
// every name in the two tables is a class.
func TestElongationsBelongToClasses(t *testing.T) {
	named := map[string]bool{}
	for _, g := range grades {
		named[g.strength().Name] = true
		if elongations[g.strength().Name] == 0 {
			t.Errorf("%s has no elongation", g.name)
		}
	}
	for name := range elongations {
		if !named[name] {
			t.Errorf("%s is no class", name)
		}
	}
	for name, ratio := range shearRatios {
		if !named[name] || ratio < leastShearRatio {
			t.Errorf("%s, %v", name, ratio)
		}
	}
}
