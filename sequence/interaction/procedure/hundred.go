package procedure

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/plan"
)

// Origin of 100 % for a kind.
const (
	ByLastTorque  finding.Code = "hundred by last torque"  // kind, torque, force: of the torques that turn it, so the greatest: its preload at the middle of its friction
	ByStretch     finding.Code = "hundred by stretch"      // kind, stretch, force
	ByMeanAtAngle finding.Code = "hundred by mean"         // kind: at the end of the work, because an angle is last
	ByYieldLoad   finding.Code = "hundred by yield load"   // kind, force: because the plan turns it beyond yield
	ByStatedForce finding.Code = "hundred by stated force" // force: on every fastener
)

// Hundred is the meaning of 100 % for a kind.
type Hundred struct {
	Kind    string // "": all
	By      finding.Code
	Torque  unit.GivenTorque // for ByLastTorque
	Stretch unit.Length      // for ByStretch
	ForceN  bounds.Band      // the same for every gasket, unless it is a mean
}

// Taken returns the entries of a list with a certain origin.
func Taken(by finding.Code, list []Hundred) (some []Hundred) {
	for _, h := range list {
		if h.By == by {
			some = append(some, h)
		}
	}
	return some
}

// OnAngle lists the kinds whose last step is an angle.
func OnAngle(list []Hundred) (kinds []string) {
	for _, h := range Taken(ByMeanAtAngle, list) {
		kinds = append(kinds, h.Kind)
	}
	return kinds
}

// hundreds returns the meaning of the targets of a plan.
func hundreds(p plan.Plan) []Hundred {
	byKind, so := map[string]Hundred{}, reached{}
	for _, stage := range p.Tighten.Stages {
		for _, kind := range stage.Kinds {
			turns := so.take(kind, stage)
			switch stage.Do {
			case plan.Tighten:
				if turns {
					byKind[kind] = Hundred{Kind: kind, By: ByLastTorque, Torque: stage.Torque}
				}
			case plan.Lengthen:
				byKind[kind] = Hundred{Kind: kind, By: ByStretch, Stretch: stage.Stretch}
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

// Say returns a list as findings.
func Say(list []Hundred) []finding.Finding {
	said := make([]finding.Finding, len(list))
	for i, h := range list {
		values := finding.Values{"kind": h.Kind, "torque": h.Torque, "stretch": h.Stretch, "force": unit.Force(h.ForceN.Nominal)}
		said[i] = finding.Noted(h.By, values).About(finding.Place{Kind: h.Kind})
	}
	return said
}
