package job

import (
	"fmt"
	"math"
	"slices"

	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/procedure"
)

func isToForce(pass contact.Pass) bool {
	return !slices.ContainsFunc(pass, func(s contact.Action) bool { return s.Do != contact.ToForce })
}

// compensate puts targets in place of those of the last pass, such that the
// joint ends even on the gasket's nominal stiffness, and predicts anew.
func (a *PredictAnswer) compensate(work procedure.Work) error {
	last := len(work.Passes) - 1
	if pass := work.Passes[last]; !isToForce(pass) || len(pass) < len(a.At) {
		return fmt.Errorf("targets that make up for the loss need a last pass by torque over all fasteners; state the passes, such as 30, 70, 100 %%")
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
		if targets[i] > 0 { // one that has gone slack already is left alone
			pass = append(pass, contact.Action{Fastener: i, ForceN: targets[i]})
		}
	}
	work.Passes[last] = pass
	a.Targets = targets
	a.Prediction, err = a.Predict(work.Passes, wanted)
	return err
}

// mostOfYield is the axial share of the yield stress that no target exceeds
// (engineering estimate; torsion takes its part while the wrench turns).
const mostOfYield = 0.9

// lowerCap keeps the cap below yield where the class tells it.
func (a *PredictAnswer) lowerCap() error {
	for i, target := range a.Nominal.TargetsN {
		kind := a.Plan.KindOf(i)
		most := mostOfYield * procedure.YieldN(kind)
		if most == 0 {
			continue
		}
		if most < target {
			return fmt.Errorf("the target of %.0f kN on kind %s lies above %g %% of its yield stress; allowed: up to %.0f kN", target/1000, kind.Name, mostOfYield*100, most/1000)
		}
		if most/target < a.Cap {
			a.Notes = append(a.Notes, fmt.Sprintf("the cap is %.0f %%: more would pass %g %% of the yield stress of kind %s", math.Floor(100*most/target), mostOfYield*100, kind.Name))
			a.Cap = most / target
		}
	}
	return nil
}

// Capped counts the fasteners whose target for the loss the cap holds back.
func (a PredictAnswer) Capped() int {
	n := 0
	for i, target := range a.Targets {
		if target >= a.Cap*a.Nominal.TargetsN[i]*(1-1e-9) {
			n++
		}
	}
	return n
}
