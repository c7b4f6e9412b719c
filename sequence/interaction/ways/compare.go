package ways

import (
	"fmt"
	"math"
	"slices"

	"drawdown/sequence"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

const (
	// mostSearched is the count of bolts up to which orders are searched; the work
	// grows with its fifth power.
	mostSearched = 24
	// mostTried bounds a search; from a good start it needs some hundreds to two
	// thousand orders.
	mostTried = 2000
	// WorthPoints is by how much a change must lift the worst bolt on the softest
	// gasket, in percent of its target, to be worth a word to the maker
	// (engineering judgement: below it nobody finds it again behind the friction).
	WorthPoints = 3
	// worthStrongPoints is the same where the joint is far from even all the same.
	worthStrongPoints = 10
	// hopelessPercent is what a bolt must keep at the worst for a change to be
	// called one that helps (engineering judgement).
	hopelessPercent = 50
)

// Compare puts the work of a plan beside other ways to do it. Where it may
// search, it also looks for the orders with the least scatter, the least tilt,
// and both.
func Compare(m prediction.Model, p plan.Plan, runs prediction.Prediction, work procedure.Work, search bool) (Comparison, error) {
	t := &trier{model: m, plan: p, p: runs, work: work}
	own := p.Tighten.Order
	if err := t.try(advice.OwnWay, own, work.Passes); err != nil {
		return Comparison{}, err
	}
	steps := []func() error{t.ways}
	if len(work.Falls) == 0 { // else "the last torque once more" would be of a slip
		steps = append(steps, t.snugAndRepeat, t.recommended)
	}
	var c Comparison
	if reason := t.whyNotSearch(); search && reason != "" {
		c.Notes = append(c.Notes, reason)
	} else if search {
		steps = append(steps, t.search)
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return Comparison{}, err
		}
	}
	c.Trials = t.list
	c.frictionSD = procedure.FrictionOf(p).SDPercent
	if work.CanRepeat() {
		soft := runs.Soft
		count, enough, err := procedure.Repeats(soft.Joint, work.Passes, soft.TargetsN, c.frictionSD, m.Stick)
		if err != nil {
			return Comparison{}, err
		}
		if enough {
			c.repeats = count
		}
	}
	c.falls = work.Falls
	c.hundreds, c.beforeRepeats = work.Hundreds, beforeRepeats(runs, work)
	c.judge()
	c.saySnug()
	return c, nil
}

// beforeRepeats is what the lowest bolt has at the least before the plan's own
// repeats of its last pass, in percent; 0 where it has none.
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

// ways tries the orders by which such a part can be gone round.
func (t *trier) ways() error {
	for _, way := range advice.SensibleWays {
		if way == sequence.Star && !compliance.OnCircle(t.model.At) {
			continue
		}
		order := t.orderBy(way)
		if order == nil {
			continue
		}
		if err := t.try(string(way), order, t.inOrder(order)); err != nil {
			return err
		}
	}
	order := t.roundOrder()
	if order == nil {
		return nil
	}
	return t.try(advice.OnceRound, order, t.inOrder(order))
}

// snugAndRepeat tries what the first stage buys, what a snug pass before it would,
// and what one more pass does.
func (t *trier) snugAndRepeat() error {
	own, passes := t.plan.Tighten.Order, t.work.Passes
	if len(passes) > 1 && contact.SameBolts(passes[0], passes[1]) && contact.IsTorque(passes[1]) {
		before := len(t.list)
		if err := t.try(advice.NoFirstStage, own, passes[1:]); err != nil {
			return err
		}
		if len(t.list) > before {
			t.list[before].Less = true
		}
	}
	if first := passes[0]; contact.IsTorque(first) {
		last := first
		for _, pass := range passes {
			if contact.IsTorque(pass) && contact.SameBolts(pass, first) {
				last = pass
			}
		}
		if first[0].ForceN > 2*procedure.SnugTo*last[0].ForceN {
			snug := append([]contact.Pass{scaled(arranged(last, own), procedure.SnugTo)}, passes...)
			if err := t.try(advice.SnugFirst, own, snug); err != nil {
				return err
			}
		}
	}
	return t.repeats()
}

// repeats tries the last torque of each set of bolts once more. Bolts that end
// on an angle are left alone: at the bench "once more" would turn them on, past
// what they bear.
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
	centreOut, round := t.orderBy(sequence.Auto), t.roundOrder()
	if centreOut == nil || round == nil || t.work.Compensated {
		return nil
	}
	return t.try(advice.Recipe, centreOut, t.recipe(centreOut, round))
}

// whyNotSearch says why no order is searched for; empty where one is.
func (t *trier) whyNotSearch() string {
	switch {
	case len(t.model.At) > mostSearched:
		return fmt.Sprintf("Orders are searched on up to %d bolts; these are %d.", mostSearched, len(t.model.At))
	case !slices.ContainsFunc(t.work.Passes, contact.IsTorque):
		return "No order is searched: equal angles leave the same forces in any order."
	}
	return ""
}

// search betters the orders at hand.
func (t *trier) search() error {
	joint, targets := t.p.Nominal.Joint, t.p.Nominal.TargetsN
	scatter := t.allowed(procedure.Scatter(joint, targets, t.inOrder))
	tilt := t.allowed(procedure.Tilting(joint, t.model.At, t.inOrder))
	own := t.plan.Tighten.Order
	for _, goal := range []struct {
		name string
		cost procedure.Cost
	}{
		{advice.LeastScatter, scatter},
		{advice.LeastTilt, tilt},
		{advice.LeastOfBoth, procedure.Both(scatter, tilt, own)},
	} {
		best, least := own, goal.cost(own)
		for _, start := range t.starts() {
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

// starts are the orders that a search begins at: good ones, of different kinds.
func (t *trier) starts() (list [][]int) {
	for _, order := range [][]int{t.plan.Tighten.Order, t.roundOrder()} {
		if order != nil {
			list = append(list, order)
		}
	}
	return list
}

// allowed costs orders that part a group or a cap no end.
func (t *trier) allowed(cost procedure.Cost) procedure.Cost {
	set := make([]int, len(t.model.At)) // the cap or, without one, the group of a fastener
	group := make([]int, len(t.model.At))
	for g, members := range t.plan.Groups {
		for _, i := range members.Members {
			group[i] = g
		}
	}
	place := map[string]int{}
	for i, f := range t.plan.Joint.Fasteners {
		place[f.ID] = i
	}
	for c, cluster := range t.plan.Joint.Clusters {
		for _, id := range cluster.Of {
			set[place[id]] = c + 1
		}
	}
	done := make([]bool, len(t.plan.Joint.Clusters)+1)
	return func(order []int) float64 {
		clear(done)
		for k, i := range order {
			if k == 0 {
				continue
			}
			before := order[k-1]
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

// judge picks the trial that is worth the change, and says so. What torque
// scatter hides anyway is not, nor is an order that departs from the trade's rules,
// unless it is the file's.
func (c *Comparison) judge() {
	own := c.Trials[0]
	if len(c.falls) > 0 {
		c.Verdict = advice.Verdict{Kind: advice.MendFile, Way: own.Name, Falls: c.falls, OwnLowest: own.End.Min.Low, BestLowest: own.End.Min.Low, FrictionSD: c.frictionSD, Hundreds: c.hundreds}
		return
	}
	passedOver := false
	for i, trial := range c.Trials {
		gain, best := trial.End.Min.Low-own.End.Min.Low, c.Trials[c.Best].End.Min.Low-own.End.Min.Low
		// An easier change wins unless another lifts the worst bolt by a point more.
		enough := float64(WorthPoints)
		if trial.Class == advice.Strong {
			enough = worthStrongPoints
		}
		margin := 1.0
		if trial.Name == advice.OneMorePass || trial.Name == advice.LastTwice {
			margin = -1 // to do a stage again is the easiest change of all
		}
		departs := trial.Rules == judge.Departs && !slices.Equal(trial.Order, own.Order)
		switch better := own.Class != advice.Negligible && !trial.Less && gain >= enough && gain > best+margin; {
		case better && departs:
			passedOver = true
		case better:
			c.Best = i
		}
	}
	best := c.Trials[c.Best]
	c.Verdict = advice.Verdict{Kind: advice.AskFor, Way: best.Name, OwnLowest: own.End.Min.Low, BestLowest: best.End.Min.Low, OwnNominal: own.End.Min.Nominal, BestNominal: best.End.Min.Nominal, PassedOver: passedOver, FrictionSD: c.frictionSD, Repeats: c.repeats, Hundreds: c.hundreds}
	if !slices.Equal(best.Order, own.Order) {
		c.Verdict.Rules = best.Rules
	}
	if c.beforeRepeats > 0 && own.End.Min.Low-c.beforeRepeats >= WorthPoints {
		c.Verdict.BeforeRepeats = c.beforeRepeats
	}
	switch {
	case own.Class == advice.Negligible:
		c.Verdict.Kind = advice.LeaveIt
	case c.Best == 0 || best.End.Min.Low < hopelessPercent:
		c.Verdict.Kind = advice.NoCure
	default:
		c.Verdict.StillStrong = best.Class == advice.Strong
		if best.Uneven.Nominal > 1.25*own.Uneven.Nominal {
			c.Verdict.OwnUnevenMm, c.Verdict.BestUnevenMm = own.Uneven.Nominal, best.Uneven.Nominal
		}
	}
}

// saySnug says what the first stage buys.
func (c *Comparison) saySnug() {
	own := c.Trials[0]
	for _, trial := range c.Trials {
		if trial.Name != advice.NoFirstStage {
			continue
		}
		hardly := math.Max(0.1*own.Uneven.Nominal, 0.02) // mm; a tenth, or what nobody feels
		c.Snug = &advice.Snug{
			OwnUnevenMm: own.Uneven.Nominal, WithoutUnevenMm: trial.Uneven.Nominal, OwnLowest: own.End.Min.Low, WithoutLowest: trial.End.Min.Low,
			SameUneven: math.Abs(trial.Uneven.Nominal-own.Uneven.Nominal) < hardly,
			SameLowest: math.Abs(trial.End.Min.Low-own.End.Min.Low) < 1,
		}
	}
}
