package tension

import (
	"fmt"

	"drawdown/geometry/unit"
)

// Assumption is what was taken in place of something that was not stated. Which
// of its figures hold depends on What.
type Assumption struct {
	What      Assumed
	Low, High float64     // coefficients of friction
	Length    unit.Length // diameter of a bearing face or a hole
	Across    unit.Length // of the head whose bearing face it is
	Stress    unit.Stress
	Percent   float64
	Lubricant string // as FrictionOf lists it
	Standard  string // where the figure stands
	Text      string // of AnotherAssumption, in plain words
}

// Assumed tells assumptions apart.
type Assumed string

const (
	AssumedYield        Assumed = "yield"         // Stress: equal to the proof stress stated
	AssumedProof        Assumed = "proof load"    // Percent of the yield stress; none in Standard
	AssumedYieldShare   Assumed = "yield share"   // Percent of the yield stress used
	AssumedFriction     Assumed = "friction"      // Low to High for Lubricant, by Standard
	AssumedAnyFriction  Assumed = "any friction"  // Low to High: no lubricant stated
	AssumedExact        Assumed = "exact"         // the friction stated has no scatter
	AssumedFace         Assumed = "face"          // Length under the head, by Standard
	AssumedFaceOfAcross Assumed = "face of head"  // Length under a hexagon head, Across flats
	AssumedHole         Assumed = "hole"          // Length, by Standard
	AnotherAssumption   Assumed = "as Text tells" // no file brings it about
)

// String tells the assumption in plain words.
func (a Assumption) String() string {
	switch a.What {
	case AssumedYield:
		return fmt.Sprintf("yield stress %.4g MPa (equal to the stated proof stress), assumed", float64(a.Stress))
	case AssumedProof:
		return fmt.Sprintf("no proof load in %s; taken as %.0f %% of Rp0.2 (Shigley 9th ed.), assumed", a.Standard, a.Percent)
	case AssumedYieldShare:
		return fmt.Sprintf("%.0f %% of the yield stress used (VDI 2230), assumed", a.Percent)
	case AssumedFriction:
		return fmt.Sprintf("friction %.2f to %.2f for %s (%s), assumed", a.Low, a.High, a.Lubricant, a.Standard)
	case AssumedAnyFriction:
		return fmt.Sprintf("lubricant not stated: friction %.2f to %.2f (VDI 2230 classes B and C, oiled to dry), assumed", a.Low, a.High)
	case AssumedExact:
		return "friction without scatter, as stated, assumed"
	case AssumedFace:
		return fmt.Sprintf("under-head bearing face %v (%s), assumed", a.Length, a.Standard)
	case AssumedFaceOfAcross:
		return fmt.Sprintf("under-head bearing face %v (hexagon head of %v), assumed", a.Length, a.Across)
	case AssumedHole:
		return fmt.Sprintf("hole %v (%s), assumed", a.Length, a.Standard)
	}
	return a.Text
}

// told puts assumptions into words.
func Told(list []Assumption) []string {
	lines := make([]string, len(list))
	for i, a := range list {
		lines[i] = a.String()
	}
	return lines
}
