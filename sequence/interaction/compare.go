package interaction

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const (
	// mostSearched is the count of bolts up to which orders are searched; the work
	// grows with its fifth power.
	mostSearched = 24
	// mostTried bounds a search; from a good start it needs some hundreds to two
	// thousand orders.
	mostTried = 2000
	// worthPoints is by how much a change must lift the worst bolt on the softest
	// gasket, in percent of its target, to be worth a word to the maker
	// (engineering judgement: below it nobody finds it again behind the friction).
	worthPoints = 3
	// worthStrongPoints is the same where the joint is far from even all the same.
	worthStrongPoints = 10
)

// Names of trials.
const (
	OwnWay = "the file's own"
	Recipe = "recipe"

	noFirstStage = "no first stage"
)

// RecipeWords say what the recipe is.
const RecipeWords = "Recipe: a snug pass to 10 %, the stages of the file from the centre out, the last torque once round or end to end, and the same again."

// sensibleWays are the ways that bolts are gone round by, in the order of the help.
var sensibleWays = []sequence.Way{sequence.Spiral, sequence.Cross, sequence.RowWay, sequence.Star, sequence.Circular}

// Compare puts the work of a plan beside other ways to do it. Where it may
// search, it also looks for the orders with the least scatter, the least tilt,
// and both.
func (m Model) Compare(p plan.Plan, prediction Prediction, work PlanWork, search bool) (Comparison, error) {
	t := &trier{model: m, plan: p, p: prediction, work: work}
	own := p.Tighten.Order
	if err := t.try(OwnWay, own, work.Passes); err != nil {
		return Comparison{}, err
	}
	steps := []func() error{t.ways, t.snugAndRepeat, t.recommended}
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
	friction, _ := FrictionOf(p)
	c.frictionSD = SpreadOf(friction).Mean
	c.judge()
	c.saySnug()
	return c, nil
}

// ways tries the orders by which such a part can be gone round.
func (t *trier) ways() error {
	for _, way := range sensibleWays {
		if way == sequence.Star && !OnCircle(t.model.At) {
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
	return t.try("once round", order, t.inOrder(order))
}

// snugAndRepeat tries what the first stage buys, what a snug pass before it would,
// and what one more pass does.
func (t *trier) snugAndRepeat() error {
	own, passes := t.plan.Tighten.Order, t.work.Passes
	if len(passes) > 1 && sameBolts(passes[0], passes[1]) && isTorque(passes[1]) {
		before := len(t.list)
		if err := t.try(noFirstStage, own, passes[1:]); err != nil {
			return err
		}
		if len(t.list) > before {
			t.list[before].Less = true
		}
	}
	if first := passes[0]; isTorque(first) {
		last := first
		for _, pass := range passes {
			if isTorque(pass) && sameBolts(pass, first) {
				last = pass
			}
		}
		if first[0].ForceN > 2*snugTo*last[0].ForceN {
			snug := append([]Pass{scaled(arranged(last, own), snugTo)}, passes...)
			if err := t.try("10 % snug pass first", own, snug); err != nil {
				return err
			}
		}
	}
	return t.repeats()
}

// repeats tries the last torque of each set of bolts once more.
func (t *trier) repeats() error {
	if t.work.CanRepeat() {
		last := t.work.Passes[len(t.work.Passes)-1]
		return t.try("one more pass", t.plan.Tighten.Order, append(slices.Clone(t.work.Passes), last))
	}
	var passes []Pass
	for _, part := range t.parts() {
		at := -1
		for n, pass := range part {
			if isTorque(pass) {
				at = n
			}
		}
		passes = append(passes, part...)
		if at >= 0 {
			passes = slices.Insert(passes, len(passes)-len(part)+at+1, part[at])
		}
	}
	if t.work.Compensated || len(passes) == len(t.work.Passes) {
		return nil
	}
	return t.try("each last torque twice", t.plan.Tighten.Order, passes)
}

func (t *trier) recommended() error {
	centreOut, round := t.orderBy(sequence.Auto), t.roundOrder()
	if centreOut == nil || round == nil || t.work.Compensated {
		return nil
	}
	return t.try(Recipe, centreOut, t.recipe(centreOut, round))
}

// whyNotSearch says why no order is searched for; empty where one is.
func (t *trier) whyNotSearch() string {
	switch {
	case len(t.model.At) > mostSearched:
		return fmt.Sprintf("Orders are searched on up to %d bolts; these are %d.", mostSearched, len(t.model.At))
	case !slices.ContainsFunc(t.work.Passes, isTorque):
		return "No order is searched: equal angles leave the same forces in any order."
	}
	return ""
}

// search betters the orders at hand.
func (t *trier) search() error {
	joint, targets := t.p.Nominal.Joint, t.p.Nominal.TargetsN
	scatter := t.allowed(joint.Scatter(targets, t.inOrder))
	tilt := t.allowed(joint.Tilt(t.model.At, t.inOrder))
	own := t.plan.Tighten.Order
	for _, goal := range []struct {
		name string
		cost Cost
	}{
		{"search: least scatter", scatter},
		{"search: least tilt", tilt},
		{"search: both", Both(scatter, tilt, own)},
	} {
		best, least := own, goal.cost(own)
		for _, start := range t.starts() {
			if order, cost := Search(start, goal.cost, mostTried); cost < least-1e-9*math.Abs(least) {
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
func (t *trier) allowed(cost Cost) Cost {
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
// scatter hides anyway is not.
func (c *Comparison) judge() {
	own := c.Trials[0]
	for i, trial := range c.Trials {
		gain, best := trial.End.Min.Low-own.End.Min.Low, c.Trials[c.Best].End.Min.Low-own.End.Min.Low
		// An easier change wins unless another lifts the worst bolt by a point more.
		enough := float64(worthPoints)
		if trial.Class == Strong {
			enough = worthStrongPoints
		}
		if own.Class != Negligible && !trial.Less && gain >= enough && gain > best+1 {
			c.Best = i
		}
	}
	best := c.Trials[c.Best]
	switch {
	case own.Class == Negligible:
		c.Verdict = fmt.Sprintf("Leave the plan as it is: even on the gasket that is worst for it the lowest bolt keeps %.0f %%, and torque scatter of about %.0f %% SD hides the rest.", own.End.Min.Low, c.frictionSD)
	case c.Best == 0:
		c.Verdict = fmt.Sprintf("No other order or stages cure this joint: the lowest bolt may end at %.0f %%, and none of them lifts it by more than %d points. It takes a stiffer gasket, longer bolts or measured stretch.", own.End.Min.Low, worthStrongPoints)
	default:
		c.Verdict = fmt.Sprintf("Worth asking the maker for: %s. It lifts the lowest bolt from %.0f to %.0f %% on the gasket that is worst for it.", best.phrase(), own.End.Min.Low, best.End.Min.Low)
		if best.Class == Strong {
			c.Verdict += " That is still far from even; count on several passes or measured stretch."
		}
		if best.Uneven.Nominal > 1.25*own.Uneven.Nominal {
			c.Verdict += fmt.Sprintf(" But on the way the part lies uneven by %.2f mm instead of %.2f mm.", best.Uneven.Nominal, own.Uneven.Nominal)
		}
		c.Verdict += " Until then the maker's sequence stands."
	}
}

// phrase says what a trial changes.
func (t Trial) phrase() string {
	switch {
	case t.Name == Recipe:
		return "a snug pass, the stages from the centre out, and the last torque twice round"
	case strings.HasPrefix(t.Name, "search"):
		return "another order, found by search for " + strings.TrimPrefix(t.Name, "search: ")
	case slices.Contains(sensibleWays, sequence.Way(t.Name)):
		return "the order " + t.Name
	}
	return t.Name
}

// saySnug says what the first stage buys.
func (c *Comparison) saySnug() {
	own := c.Trials[0]
	for _, trial := range c.Trials {
		if trial.Name != noFirstStage {
			continue
		}
		hardly := math.Max(0.1*own.Uneven.Nominal, 0.02) // mm; a tenth, or what nobody feels
		if math.Abs(trial.Uneven.Nominal-own.Uneven.Nominal) < hardly && math.Abs(trial.End.Min.Low-own.End.Min.Low) < 1 {
			c.Snug = "Without the first stage the bolts would end the same and the part would lie as even; it is there to bring the faces together, which is not in the model."
			return
		}
		c.Snug = fmt.Sprintf("Without the first stage the part would lie uneven by %.2f mm instead of %.2f mm, and the lowest bolt would end at %.0f instead of %.0f %%.",
			trial.Uneven.Nominal, own.Uneven.Nominal, trial.End.Min.Low, own.End.Min.Low)
	}
}
