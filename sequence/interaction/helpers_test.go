package interaction

import (
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/stiffness"
)

// boltResilience gives what a bolt gives way within its grip and in its head
// and nut, in short; tension.StiffnessOf does it in full.
func boltResilience(elastic unit.Stress, diameter unit.Length, stressAreaMm2 float64, shank, threaded unit.Length) stiffness.Resilience {
	onThread := unit.Length(math.Sqrt(4 / math.Pi * stressAreaMm2))
	return stiffness.RodResilience(shank+diameter/2, diameter, elastic) + // half a diameter for the head
		stiffness.RodResilience(threaded+diameter/2, onThread, elastic) // and for the engaged thread
}

// infiniteBeam is a beam without ends on a foundation. The bolts at the ends
// of a real row sit four times as soft: use Row for these.
type infiniteBeam struct{ BendingNmm2 float64 }

// At gives what the beam gives way at a distance from a unit load, in mm/N.
// The foundation is that of a millimetre of the beam's length.
func (b infiniteBeam) At(distanceMm, foundationMPa float64) float64 {
	lambda := beamLambda(b.BendingNmm2, foundationMPa)
	x := lambda * math.Abs(distanceMm)
	return lambda / (2 * foundationMPa) * math.Exp(-x) * (math.Cos(x) + math.Sin(x)) // Hetényi, section 5: y = Pλ/(2k)·Aλx
}

// byTravels is a pass that turns each nut of the order on by a travel.
func byTravels(order []int, travelMm float64) Pass {
	pass := make(Pass, len(order))
	for s, i := range order {
		pass[s] = Step{Fastener: i, Do: ByTravel, TravelMm: travelMm}
	}
	return pass
}

// inStages is one pass over all for each share of the targets.
func inStages(targets []float64, shares ...float64) Work {
	return func(order []int) []Pass {
		passes := make([]Pass, len(shares))
		for k, share := range shares {
			passes[k] = ToForces(order, targets, share)
		}
		return passes
	}
}
