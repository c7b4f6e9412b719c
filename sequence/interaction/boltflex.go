package interaction

import (
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// BoltResilience gives what a bolt gives way within its grip and in its head
// and nut, in short; tension.StiffnessOf does it in full.
func BoltResilience(elastic unit.Stress, diameter unit.Length, stressAreaMm2 float64, shank, threaded unit.Length) tension.Resilience {
	onThread := unit.Length(math.Sqrt(4 / math.Pi * stressAreaMm2))
	return tension.RodResilience(shank+diameter/2, diameter, elastic) + // half a diameter for the head
		tension.RodResilience(threaded+diameter/2, onThread, elastic) // and for the engaged thread
}
