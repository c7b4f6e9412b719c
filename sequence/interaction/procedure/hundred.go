package procedure

import (
	"fmt"

	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/plan"
)

// HundredBy is what 100 % is taken by.
type HundredBy string

const (
	ByLastTorque  HundredBy = "last torque"  // of those that turn it, so the greatest: the preload that it gives at the middle of its friction
	ByMeanAtAngle HundredBy = "mean"         // of the kind at the end of the work, as an angle ends it
	ByYieldLoad   HundredBy = "yield load"   // since the plan turns it beyond
	ByStatedForce HundredBy = "stated force" // on every fastener
)

// Hundred is what 100 % of a kind is.
type Hundred struct {
	Kind   string // empty: all
	By     HundredBy
	Torque unit.GivenTorque // for ByLastTorque
	ForceN bounds.Band      // the same for every gasket, unless it is a mean
}

// String says it in English.
func (h Hundred) String() string {
	force := fmt.Sprintf("%.3g kN", h.ForceN.Nominal/1000)
	switch h.By {
	case ByLastTorque:
		return fmt.Sprintf("for %s the preload of %v at the middle of its friction, %s", h.Kind, h.Torque, force)
	case ByMeanAtAngle:
		return "for " + h.Kind + " the mean of its bolts at the end, as an angle ends it: how even they are, not whether the angle is right"
	case ByYieldLoad:
		return fmt.Sprintf("for %s its yield load of %s, as the file turns it beyond", h.Kind, force)
	}
	return force + " on every bolt, as stated"
}

// hundreds tells what the targets of a side of a plan stand for.
func hundreds(p plan.Plan, side plan.Side) []Hundred {
	byKind, so := map[string]Hundred{}, reached{}
	for _, stage := range side.Stages {
		for _, kind := range stage.Kinds {
			turns, _ := so.take(kind, stage)
			switch stage.Do {
			case plan.Tighten:
				if turns {
					byKind[kind] = Hundred{Kind: kind, By: ByLastTorque, Torque: stage.Torque}
				}
			case plan.Advance, plan.BackOff, plan.TurnBack, plan.Remove:
				byKind[kind] = Hundred{Kind: kind, By: ByMeanAtAngle}
			}
		}
	}
	var list []Hundred
	for _, kind := range p.Kinds {
		if h, used := byKind[kind.Name]; used {
			list = append(list, h)
		}
	}
	return list
}
