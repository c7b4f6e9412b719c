package interaction

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/procedure"
)

// Targets that compensate for the loss.
const (
	TorqueEndsNot    finding.Code = "forecast compensation without torque"
	TargetAboveYield finding.Code = "forecast target above yield" // target, kind, share, most
	CapLowered       finding.Code = "forecast cap lowered"        // cap, share, kind
	TargetsCaution   finding.Code = "forecast targets caution"    //
	CapStops         finding.Code = "forecast cap stops"          // bolts
)

// compensate replaces the targets of the last pass so that the joint ends up
// even with the nominal stiffness of the gasket, and predicts again.
func (a *Answer) compensate(work procedure.Work) error {
	last := len(work.Passes) - 1
	if pass := work.Passes[last]; !contact.IsTorque(pass) || len(pass) < len(a.At) {
		return finding.Failed(TorqueEndsNot, nil)
	}
	if err := a.lowerCap(); err != nil {
		return err
	}
	nuts := a.Nominal.Joint.Loose()
	if _, err := nuts.Work(work.Passes[:last], nil); err != nil {
		return err
	}
	order := make([]int, 0, len(a.At))
	for _, step := range work.Passes[last] {
		order = append(order, step.Fastener)
	}
	wanted := a.Nominal.TargetsN
	targets, err := nuts.Compensated(order, wanted, a.Cap)
	if err != nil {
		return err
	}
	pass := contact.Pass{}
	for _, i := range order {
		if targets[i] > 0 { // a bolt that is slack is left alone
			pass = append(pass, contact.Action{Fastener: i, ForceN: targets[i]})
		}
	}
	work.Passes[last] = pass
	a.Targets = targets
	a.Prediction, err = a.Predict(work.Passes, wanted)
	return err
}

// lowerCap keeps the cap below yield if the class is known.
func (a *Answer) lowerCap() error {
	const share = 100 * limits.MostOfYield
	for i, target := range a.Nominal.TargetsN {
		kind := a.Plan.KindOf(i)
		most := limits.MostOfYield * procedure.YieldTurnedN(kind)
		if most == 0 {
			continue
		}
		if most < target {
			return finding.Failed(TargetAboveYield, finding.Values{"target": unit.Force(target), "kind": kind.Name, "share": share, "most": unit.Force(most)}).
				About(finding.Place{Kind: kind.Name})
		}
		if most/target < a.Cap {
			a.Notes = append(a.Notes, finding.Noted(CapLowered, finding.Values{"cap": math.Floor(100 * most / target), "share": share, "kind": kind.Name}))
			a.Cap = most / target
		}
	}
	return nil
}

// OnTargets reports what compensating targets require, or nothing if there are
// none.
func (a Answer) OnTargets() []finding.Finding {
	if a.Targets == nil {
		return nil
	}
	list := []finding.Finding{finding.Noted(TargetsCaution, nil)}
	capped := 0
	for i, target := range a.Targets {
		if target >= a.Cap*a.Nominal.TargetsN[i]*(1-1e-9) {
			capped++
		}
	}
	if capped > 0 {
		list = append(list, finding.Noted(CapStops, finding.Values{"bolts": capped}))
	}
	return list
}
