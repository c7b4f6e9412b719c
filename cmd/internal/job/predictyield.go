package job

import (
	"fmt"
	"slices"

	"drawdown/sequence/interaction"
)

// yielding takes bolts that an angle turns beyond yield at their yield load,
// which is about what they hold.
func (a *PredictAnswer) yielding(targets []float64) []float64 {
	targets = slices.Clone(targets)
	for _, kind := range interaction.BeyondYield(a.Plan, targets) {
		yield := interaction.YieldN(kind)
		for i, f := range a.Plan.Joint.Fasteners {
			if f.Kind == kind.Name {
				targets[i] = yield
			}
		}
		a.Assumptions = append(a.Assumptions, fmt.Sprintf("kind %s is turned beyond its yield: 100 %% is its yield load of %.0f kN, assumed", kind.Name, yield/1000))
	}
	return targets
}
