package procedure

import (
	"slices"

	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// YieldN is the axial force at which a bolt of a kind yields; 0 if its class or
// thread is unknown.
func YieldN(kind plan.Kind) float64 {
	r, err := screw.Target(kind.Bolt())
	if err != nil {
		return 0
	}
	return float64(r.Strength.Yield) * r.LeastSectionMm2
}

// YieldTurnedN is the force at which a bolt of a kind yields while its nut is
// turned, with the torsion at nominal friction, as for the aims of a bolt; 0 if
// its class or thread is unknown.
func YieldTurnedN(kind plan.Kind) float64 {
	r, err := screw.Target(kind.Bolt())
	if err != nil {
		return 0
	}
	return float64(r.Nominal.Preload) / r.Nominal.YieldShare
}

// StretchMm is how much longer a bolt of a kind is at a force; 0 if it cannot be
// calculated.
func StretchMm(kind plan.Kind, forceN float64) float64 {
	bolt, err := BoltOf(kind)
	if err != nil {
		return 0
	}
	s, err := stiffness.Stretch(bolt, kind.Figures().Grip)
	if err != nil {
		return 0
	}
	return forceN * float64(s.Joint.Elongation)
}

// BeyondYield returns the kinds with a bolt above its yield force.
func BeyondYield(p plan.Plan, forcesN []float64) (kinds []plan.Kind) {
	for _, kind := range p.Kinds {
		yield := YieldN(kind)
		for i, f := range p.Joint.Fasteners {
			if f.Kind == kind.Name && yield > 0 && forcesN[i] > yield {
				kinds = append(kinds, kind)
				break
			}
		}
	}
	return kinds
}

// AtMostYield limits bolts that an angle turns beyond yield to their yield
// load, which is about what they hold.
func AtMostYield(p plan.Plan, targets []float64, hundreds []Hundred) ([]float64, []Hundred) {
	targets, hundreds = slices.Clone(targets), slices.Clone(hundreds)
	for _, kind := range BeyondYield(p, targets) {
		for i, f := range p.Joint.Fasteners {
			if f.Kind == kind.Name {
				targets[i] = YieldN(kind)
			}
		}
		for k, h := range hundreds {
			if h.Kind == kind.Name {
				hundreds[k].By = ByYieldLoad
			}
		}
	}
	return targets, hundreds
}
