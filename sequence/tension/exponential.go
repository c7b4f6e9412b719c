package tension

import (
	"math"

	"drawdown/geometry/unit"
)

// exponential holds A and B of Wileman, Choudhury and Green (1991) as in Shigley
// 9th ed., table 8-8.
var exponential = map[kind]struct{ a, b float64 }{
	steelKind:     {0.78715, 0.62873},
	aluminiumKind: {0.79670, 0.63816},
	greyIronKind:  {0.77871, 0.61616},
}

// ExponentialStiffness gives the stiffness of members of one material, fitted
// to finite elements: a check on the cones. It is 0 for a material that was
// not fitted.
func ExponentialStiffness(m Material, diameter, grip unit.Length) Stiffness {
	fit, ok := exponential[m.kind]
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
		whole := ExponentialStiffness(l.material, diameter, grip)
		if whole == 0 {
			return 0
		}
		sum += whole.Resilience() * Resilience(l.thickness/grip)
	}
	return sum.Stiffness()
}
