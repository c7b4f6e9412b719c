package job

import (
	"slices"

	"drawdown/sequence/interaction/procedure"
)

// yielding takes bolts that an angle turns beyond yield at their yield load,
// which is about what they hold.
func (a *PredictAnswer) yielding(targets []float64, hundreds []procedure.Hundred) procedure.Work {
	work := procedure.Work{TargetsN: slices.Clone(targets), Hundreds: slices.Clone(hundreds)}
	for _, kind := range procedure.BeyondYield(a.Plan, targets) {
		for i, f := range a.Plan.Joint.Fasteners {
			if f.Kind == kind.Name {
				work.TargetsN[i] = procedure.YieldN(kind)
			}
		}
		for k, h := range work.Hundreds {
			if h.Kind == kind.Name {
				work.Hundreds[k].By = procedure.ByYieldLoad
			}
		}
	}
	return work
}
