package job

import (
	"fmt"
	"slices"

	"drawdown/sequence/plan"
	"drawdown/sequence/tension"
)

// yieldN is the axial force at which a kind yields; 0 where its class or its
// thread is not known.
func yieldN(kind plan.Kind) float64 {
	if kind.Class == "" || kind.Thread == nil {
		return 0
	}
	r, err := tension.Target(kind.Bolt())
	if err != nil {
		return 0
	}
	return float64(r.Strength.Yield) * r.StressAreaMm2
}

// beyond gives the kinds whose force passes their yield.
func (a *PredictAnswer) beyond(forces []float64) (kinds []plan.Kind) {
	for _, kind := range a.Plan.Kinds {
		yield := yieldN(kind)
		for i, f := range a.Plan.Joint.Fasteners {
			if f.Kind == kind.Name && yield > 0 && forces[i] > yield {
				kinds = append(kinds, kind)
				break
			}
		}
	}
	return kinds
}

// yielding takes bolts that an angle turns beyond yield at their yield load,
// which is about what they hold.
func (a *PredictAnswer) yielding(targets []float64) []float64 {
	targets = slices.Clone(targets)
	for _, kind := range a.beyond(targets) {
		yield := yieldN(kind)
		for i, f := range a.Plan.Joint.Fasteners {
			if f.Kind == kind.Name {
				targets[i] = yield
			}
		}
		a.Assumptions = append(a.Assumptions, fmt.Sprintf("kind %s is turned beyond its yield: 100 %% is its yield load of %.0f kN, assumed", kind.Name, yield/1000))
	}
	return targets
}

// sayYield tells which kinds are turned beyond what the model can follow.
func (a *PredictAnswer) sayYield() {
	for _, kind := range a.beyond(a.Nominal.TargetsN) {
		a.Notes = append(a.Notes, fmt.Sprintf("kind %s is turned beyond its yield at %.0f kN, which is not in the model: read its percentages, not its newtons", kind.Name, yieldN(kind)/1000))
	}
}
