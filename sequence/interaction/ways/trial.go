// Package ways compares the work of the plan with other ways: other orders, a
// snug pass, one more pass, a recipe. It never changes the plan. It may import
// prediction and what that imports.
package ways

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// Trial is a way to do the work, and what it leaves.
type Trial struct {
	advice.Trial
	Also    []advice.Way // other names of the same work
	Order   []int        // of tightening, every fastener once
	Passes  []contact.Pass
	End     bounds.Spreads // in percent of the targets
	TiltMm  bounds.Band    // the worst at any step, as WarpMm
	WarpMm  bounds.Band
	TravelM float64 // of the wrench, from bolt to bolt
	Steps   int     // of the wrench
}

// Comparison is the plan of a file beside others for the same joint. The maker's
// sequence stands first and is never written over: the others are a reason to
// ask, not a plan.
type Comparison struct {
	Trials []Trial // the file's own first
	Advice advice.Advice
	Snug   []finding.Finding // what the first stage buys; none where nobody can say
	Notes  []finding.Finding
}

// trier works trials on the three runs of a prediction.
type trier struct {
	Comparison
	model prediction.Model
	plan  plan.Plan
	p     prediction.Prediction
	work  procedure.Work
	round []int // the order from bolt to neighbour
}

// try works passes out and puts them on the list. Passes that stand there
// already only lend it their name.
func (t *trier) try(way advice.Way, order []int, passes []contact.Pass) error {
	for i, other := range t.Trials {
		if slices.EqualFunc(other.Passes, passes, slices.Equal[contact.Pass]) {
			t.Trials[i].Also = append(t.Trials[i].Also, way)
			return nil
		}
	}
	runs, err := t.model.Again(t.p, passes)
	if err != nil {
		return err
	}
	worst := func(of func(contact.AfterPass) float64) bounds.Band {
		return runs.Over(func(r prediction.Run) (most float64) {
			for _, after := range r.Passes {
				most = max(most, of(after))
			}
			return most
		})
	}
	end, steps := runs.Spreads(len(passes)-1), slices.Concat(passes...)
	t.Trials = append(t.Trials, Trial{
		Trial: advice.Trial{
			Way: way, Lowest: end.Min, Class: advice.ClassOf(end.Min.Low), OwnOrder: slices.Equal(order, t.plan.Tighten.Order),
			Rules:    judge.Order(judge.ForPlan(t.plan, judge.Tighten, t.plan.IDs(order))).Verdict,
			UnevenMm: worst(func(a contact.AfterPass) float64 { return a.LargestUnevenMm }),
		},
		Order: order, Passes: passes, End: end, TravelM: travelM(steps, t.model.At), Steps: len(steps),
		TiltMm: worst(func(a contact.AfterPass) float64 { return a.LargestTiltMm }),
		WarpMm: worst(func(a contact.AfterPass) float64 { return a.LargestWarpMm }),
	})
	return nil
}

// travelM is how far the wrench goes from bolt to bolt.
func travelM(steps []contact.Action, at []geometry.Point) (sum float64) {
	for k, step := range steps[1:] {
		sum += at[steps[k].Fastener].Distance(at[step.Fastener])
	}
	return sum / 1000
}

// inOrder is the work of the plan with another order: each pass keeps its
// figures and its bolts. A check pass that has a way of its own keeps that.
func (t *trier) inOrder(order []int) []contact.Pass {
	outsideIn := slices.Clone(order)
	slices.Reverse(outsideIn)
	passes := make([]contact.Pass, len(t.work.Passes))
	for n, pass := range t.work.Passes {
		var stage plan.Stage
		if n < len(t.work.Stages) {
			stage = t.plan.Tighten.Stages[t.work.Stages[n]]
		}
		switch {
		case stage.Way != "":
			passes[n] = pass
		case stage.Do == plan.BackOff:
			passes[n] = arranged(pass, outsideIn)
		default:
			passes[n] = arranged(pass, order)
		}
	}
	return passes
}
