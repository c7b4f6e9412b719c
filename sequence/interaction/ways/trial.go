// Package ways lays other ways to do the work beside that of the plan: other
// orders, a snug pass, one more pass, a recipe. The plan is never changed. It may
// import prediction and what that imports.
package ways

import (
	"slices"

	"drawdown/geometry"
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
	Name    string
	Also    []string      // other names of the same work
	Own     bool          // as the file has it
	Less    bool          // leaves out what the file has: it tells what that buys, and is never to be done
	Order   []int         // of tightening, every fastener once
	Rules   judge.Verdict // what the trade's rules say of the order
	Passes  []contact.Pass
	End     bounds.Spreads // in percent of the targets
	Class   advice.Class   // of the worst bolt, at the low end
	TiltMm  bounds.Band    // these three: the worst at any step
	WarpMm  bounds.Band
	Uneven  bounds.Band
	TravelM float64 // of the wrench, from bolt to bolt
	Steps   int     // of the wrench
}

// Comparison is the plan of a file beside others for the same joint. The maker's
// sequence stands first and is never written over: the others are a reason to
// ask, not a plan.
type Comparison struct {
	Trials  []Trial // the file's own first
	Best    int     // of Trials: the one that is worth the change; 0: none is
	Verdict advice.Verdict
	Snug    *advice.Snug // what the first stage buys; nil where nobody can say
	Notes   []string     // in whole sentences

	frictionSD    float64 // of the preload at a torque, in percent
	repeats       int     // of the last pass until the soft gasket is even; 0: none, or nobody can say
	beforeRepeats float64 // percent that the lowest bolt has before the file's own repeats; 0: there are none
	hundreds      []procedure.Hundred
	falls         []procedure.Fall
}

// trier works trials on the three runs of a prediction.
type trier struct {
	model prediction.Model
	plan  plan.Plan
	p     prediction.Prediction
	work  procedure.Work
	list  []Trial
}

// try works passes out and puts them on the list. Passes that stand there
// already only lend it their name.
func (t *trier) try(name string, order []int, passes []contact.Pass) error {
	same := func(a, b contact.Pass) bool { return slices.Equal(a, b) }
	for i, other := range t.list {
		if slices.EqualFunc(other.Passes, passes, same) {
			t.list[i].Also = append(t.list[i].Also, name)
			return nil
		}
	}
	rules := judge.Order(judge.ForPlan(t.plan, judge.Tighten, t.plan.IDs(order))).Verdict
	made := Trial{Name: name, Own: len(t.list) == 0, Order: order, Rules: rules, Passes: passes, TravelM: travelM(passes, t.model.At)}
	var ends [3]bounds.Spread
	var tilt, warp, uneven [3]float64
	for k, r := range []prediction.Run{t.p.Soft, t.p.Nominal, t.p.Stiff} {
		nuts := r.Joint.Loose()
		nuts.Stick = t.model.Stick
		after, err := nuts.Work(passes, t.model.At)
		if err != nil {
			return err
		}
		for _, a := range after {
			tilt[k], warp[k], uneven[k] = max(tilt[k], a.LargestTiltMm), max(warp[k], a.LargestWarpMm), max(uneven[k], a.LargestUnevenMm)
		}
		ends[k] = bounds.SpreadOf(bounds.Percent(nuts.Forces(), r.TargetsN))
	}
	s, n, f := ends[0], ends[1], ends[2]
	made.End = bounds.Spreads{Min: bounds.Of(s.Min, n.Min, f.Min), Mean: bounds.Of(s.Mean, n.Mean, f.Mean), Max: bounds.Of(s.Max, n.Max, f.Max), SD: bounds.Of(s.SD, n.SD, f.SD)}
	made.Class = advice.ClassOf(made.End.Min.Low)
	made.TiltMm, made.WarpMm, made.Uneven = bounds.Of3(tilt), bounds.Of3(warp), bounds.Of3(uneven)
	for _, pass := range passes {
		made.Steps += len(pass)
	}
	t.list = append(t.list, made)
	return nil
}

// travelM is how far the wrench goes from bolt to bolt.
func travelM(passes []contact.Pass, at []geometry.Point) float64 {
	sum, from := 0.0, -1
	for _, pass := range passes {
		for _, step := range pass {
			if from >= 0 {
				sum += at[from].Distance(at[step.Fastener])
			}
			from = step.Fastener
		}
	}
	return sum / 1000
}

// inOrder is the work of the plan with another order: each pass keeps its
// figures and its bolts. A check pass that has a way of its own keeps that.
func (t *trier) inOrder(order []int) []contact.Pass {
	place := make([]int, len(order))
	for k, i := range order {
		place[i] = k
	}
	passes := make([]contact.Pass, len(t.work.Passes))
	for n, pass := range t.work.Passes {
		passes[n] = slices.Clone(pass)
		do := plan.Tighten
		if n < len(t.work.Stages) {
			stage := t.plan.Tighten.Stages[t.work.Stages[n]]
			if stage.Way != "" {
				continue
			}
			do = stage.Do
		}
		slices.SortStableFunc(passes[n], func(a, b contact.Action) int {
			if do == plan.BackOff { // slackening goes outside in
				a, b = b, a
			}
			return place[a.Fastener] - place[b.Fastener]
		})
	}
	return passes
}
