package stiffness

import (
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// exponential holds A and B of Wileman, Choudhury and Green (1991) as in Shigley
// 9th ed., table 8-8.
var exponential = map[strength.Family]struct{ a, b float64 }{
	strength.Steel:     {0.78715, 0.62873},
	strength.Aluminium: {0.79670, 0.63816},
	strength.GreyIron:  {0.77871, 0.61616},
}

// ExponentialStiffness gives the stiffness of members of one material, fitted
// to finite elements: a check on the cones. It is 0 for a material that was
// not fitted.
func Exponential(m strength.Material, diameter, grip unit.Length) Stiffness {
	fit, ok := exponential[m.Family]
	if !ok {
		return 0
	}
	// Shigley 9th ed., Eq. (8-23): km = E d A exp(B d/l)
	return Stiffness(float64(m.Elastic) * float64(diameter) * fit.a * math.Exp(fit.b*float64(diameter/grip)))
}

// exponentialOfLayers sets the layers in series, each as its share of members
// that are wholly of its material; 0 where one was not fitted.
func exponentialOfLayers(layers []layer, diameter unit.Length) Stiffness {
	grip := thicknessOf(layers)
	var sum Resilience
	for _, l := range layers {
		whole := Exponential(l.material, diameter, grip)
		if whole == 0 {
			return 0
		}
		sum += whole.Resilience() * Resilience(l.thickness/grip)
	}
	return sum.Stiffness()
}
