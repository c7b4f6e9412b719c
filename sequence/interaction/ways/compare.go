package ways

import (
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/plan"
)

const (
	// mostSearched is the largest number of bolts for which orders are
	// searched; the work grows with its fifth power.
	mostSearched = 24
	// mostTried limits a search; from a good start it needs some hundreds to
	// two thousand orders.
	mostTried = 2000
)

// sensibleWays are the ways to try, in the order of the help text.
var sensibleWays = []sequence.Way{sequence.Spiral, sequence.Cross, sequence.RowWay, sequence.Star, sequence.Circular}

// Compare compares the work of a plan with other ways to do it. If allowed, it
// also searches for the orders with the least scatter, the least tilt, and
// both. f must be the forecast of the same work.
func Compare(m prediction.Model, p plan.Plan, runs prediction.Prediction, work procedure.Work, f prediction.Forecast, search bool) (Comparison, error) {
	t := &trier{model: m, plan: p, p: runs, work: work}
	var err error
	if t.round, err = t.roundOrder(); err != nil {
		return Comparison{}, err
	}
	if err := t.try(advice.OwnWay, p.Tighten.Order, work.Passes); err != nil {
		return Comparison{}, err
	}
	steps := []func() error{t.ways}
	if len(work.Falls) == 0 { // otherwise "the last torque once more" would repeat an error
		steps = append(steps, t.snugAndRepeat, t.recommended)
	}
	if search {
		steps = append(steps, t.search)
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return Comparison{}, err
		}
	}
	of := f.Case()
	of.BeforeRepeats = beforeRepeats(runs, work)
	for _, trial := range t.Trials {
		of.Trials = append(of.Trials, trial.Trial)
	}
	t.Advice = advice.Decide(of)
	return t.Comparison, nil
}

// beforeRepeats is the minimum of the lowest bolt before the plan's own repeats
// of its last pass, in percent; 0 if there are none.
func beforeRepeats(p prediction.Prediction, work procedure.Work) float64 {
	last := len(work.Passes) - 1
	first := last
	for first > 0 && contact.IsTorque(work.Passes[first]) && contact.SameFigures(work.Passes[first-1], work.Passes[last]) {
		first--
	}
	if first == last {
		return 0
	}
	return min(p.Soft.Spread(first).Min, p.Nominal.Spread(first).Min, p.Stiff.Spread(first).Min)
}

// ways tries the usual orders for such a part.
func (t *trier) ways() error {
	for _, way := range sensibleWays {
		if way == sequence.Star && !compliance.OnCircle(t.model.At) {
			continue
		}
		order, err := t.orderBy(way)
		if err != nil {
			return err
		}
		if err := t.try(advice.Way(way), order, t.inOrder(order)); err != nil {
			return err
		}
	}
	return t.try(advice.OnceRound, t.round, t.inOrder(t.round))
}

// snugAndRepeat tries the work without its first stage, with a snug pass before
// it, and with one more pass.
func (t *trier) snugAndRepeat() error {
	own, passes := t.plan.Tighten.Order, t.work.Passes
	if len(passes) > 1 && contact.SameBolts(passes[0], passes[1]) && contact.IsTorque(passes[1]) {
		before := len(t.Trials)
		if err := t.try(advice.NoFirstStage, own, passes[1:]); err != nil {
			return err
		}
		if len(t.Trials) > before {
			t.Trials[before].Less = true
			t.Snug = advice.OnFirstStage(t.Trials[0].Trial, t.Trials[before].Trial)
		}
	}
	if first := passes[0]; contact.IsTorque(first) {
		last := first
		for _, pass := range passes {
			if contact.IsTorque(pass) && contact.SameBolts(pass, first) {
				last = pass
			}
		}
		if first[0].ForceN > 2*limits.SnugTo*last[0].ForceN {
			snug := append([]contact.Pass{scaled(arranged(last, own), limits.SnugTo)}, passes...)
			if err := t.try(advice.SnugFirst, own, snug); err != nil {
				return err
			}
		}
	}
	return t.repeats()
}

// repeats tries the last torque of each set of bolts once more. Bolts that end
// on an angle are excluded: turning them "once more" would overload them.
func (t *trier) repeats() error {
	if t.work.CanRepeat() {
		last := t.work.Passes[len(t.work.Passes)-1]
		return t.try(advice.OneMorePass, t.plan.Tighten.Order, append(slices.Clone(t.work.Passes), last))
	}
	var passes []contact.Pass
	for _, part := range t.parts() {
		passes = append(passes, part...)
		if last := part[len(part)-1]; contact.IsTorque(last) {
			passes = append(passes, last)
		}
	}
	if t.work.Compensated || len(passes) == len(t.work.Passes) {
		return nil
	}
	return t.try(advice.LastTwice, t.plan.Tighten.Order, passes)
}

func (t *trier) recommended() error {
	if t.work.Compensated {
		return nil
	}
	centreOut, err := t.orderBy(sequence.Auto)
	if err != nil {
		return err
	}
	return t.try(advice.Recipe, centreOut, t.recipe(centreOut, t.round))
}

// Reasons why no order is searched for.
const (
	TooManyToSearch finding.Code = "ways too many to search" // most, bolts
	AnglesAlone     finding.Code = "ways angles alone"
)

// search improves the available orders, or notes why it does not.
func (t *trier) search() error {
	switch {
	case len(t.model.At) > mostSearched:
		t.Notes = append(t.Notes, finding.Noted(TooManyToSearch, finding.Values{"most": mostSearched, "bolts": len(t.model.At)}))
		return nil
	case !slices.ContainsFunc(t.work.Passes, contact.IsTorque):
		t.Notes = append(t.Notes, finding.Noted(AnglesAlone, nil))
		return nil
	}
	joint, targets := t.p.Nominal.Joint, t.p.Nominal.TargetsN
	scatter := t.allowed(procedure.Scatter(joint, targets, t.inOrder))
	tilt := t.allowed(procedure.Tilting(joint, t.model.At, t.inOrder))
	own := t.plan.Tighten.Order
	starts := [][]int{own, t.round} // good orders of different kinds
	for _, goal := range []struct {
		name advice.Way
		cost procedure.Cost
	}{
		{advice.LeastScatter, scatter},
		{advice.LeastTilt, tilt},
		{advice.LeastOfBoth, procedure.Both(scatter, tilt, own)},
	} {
		best, least := own, goal.cost(own)
		for _, start := range starts {
			if order, cost := procedure.Search(start, goal.cost, mostTried); cost < least-1e-9*math.Abs(least) {
				best, least = order, cost
			}
		}
		if err := t.try(goal.name, best, t.inOrder(best)); err != nil {
			return err
		}
	}
	return nil
}

// allowed gives an infinite cost to orders that separate a group or a cap.
func (t *trier) allowed(cost procedure.Cost) procedure.Cost {
	set := make([]int, len(t.model.At)) // the cap or, without one, the group of a fastener
	group := make([]int, len(t.model.At))
	for g, members := range t.plan.Groups {
		for _, i := range members.Members {
			group[i] = g
		}
	}
	place := t.plan.Joint.Index()
	for c, cluster := range t.plan.Joint.Clusters {
		for _, id := range cluster.Of {
			set[place[id]] = c + 1
		}
	}
	done := make([]bool, len(t.plan.Joint.Clusters)+1)
	return func(order []int) float64 {
		clear(done)
		for k, i := range order[1:] {
			before := order[k]
			if group[i] < group[before] {
				return math.Inf(1)
			}
			if set[i] != set[before] {
				done[set[before]] = set[before] > 0
				if done[set[i]] {
					return math.Inf(1)
				}
			}
		}
		return cost(order)
	}
}

// OnRecipe compares the recipe with the file's own work; nothing if it was not
// tried.
func (c Comparison) OnRecipe() []finding.Finding {
	for _, t := range c.Trials {
		if t.Way == advice.Recipe || slices.Contains(t.Also, advice.Recipe) {
			return []finding.Finding{advice.OnRecipe(c.Trials[0].Trial, t.Trial)}
		}
	}
	return nil
}

// Orders lists the trials whose order is not clear from their names: those
// found by search, and the best one. None has the file's own order.
func (c Comparison) Orders() (list []Trial) {
	for i, t := range c.Trials {
		if (advice.Searched(t.Way) || i == c.Advice.Best) && !t.OwnOrder {
			list = append(list, t)
		}
	}
	return list
}
