package interaction

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/plan"
	"drawdown/sequence/way"
)

// Reason compares one pass to the full load, at most to yield, in the plan's
// order with one in another order. The plan's figures come first.
type Reason struct {
	LowestPercent [2]bounds.Band // of the bolt that ends lowest
	UnevenMm      [2]bounds.Band // unevenness at the worst moment
	// TellsLowest and TellsUneven report that the order is clearly better at
	// every stiffness, so that the figure can be given as a reason.
	TellsLowest, TellsUneven bool
}

// ReasonOf calculates the reason for a plan's order on a model of its joint. It
// compares with each group once around its rim, or from its edges. It returns
// nil if the joint lacks data for the model.
func ReasonOf(p plan.Plan, model prediction.Model, round bool) *Reason {
	if len(p.Tighten.Stages) == 0 {
		return nil
	}
	targets, err := fullLoad(p, model)
	if err != nil {
		return nil
	}
	var runs [2]prediction.Prediction
	for k, order := range [][]int{p.Tighten.Order, otherOrder(p, round)} {
		if runs[k], err = model.Predict([]contact.Pass{contact.ToForces(order, targets, 1)}, targets); err != nil {
			return nil
		}
	}
	r := &Reason{
		LowestPercent: [2]bounds.Band{runs[0].Over(lowest), runs[1].Over(lowest)},
		UnevenMm:      [2]bounds.Band{runs[0].Over(uneven), runs[1].Over(uneven)},
	}
	betterLowest, betterUneven := tells(runs[0], runs[1])
	worseLowest, worseUneven := tells(runs[1], runs[0])
	// A figure is not a reason if the other one contradicts it.
	r.TellsLowest, r.TellsUneven = betterLowest && !worseUneven, betterUneven && !worseLowest
	return r
}

func lowest(r prediction.Run) float64 { return r.Spread(0).Min }
func uneven(r prediction.Run) float64 { return r.Passes[0].LargestUnevenMm }

// tells reports by which figures one order is clearly better than another, at
// every stiffness of the gasket.
func tells(one, other prediction.Prediction) (byLowest, byUneven bool) {
	byLowest, byUneven = true, true
	others := other.Runs()
	for k, run := range one.Runs() {
		byLowest = byLowest && lowest(*run) >= lowest(*others[k])+limits.TellingPoints
		byUneven = byUneven && uneven(*run) <= limits.TellingShare*uneven(*others[k])
	}
	return byLowest, byUneven
}

// fullLoad returns the force that means 100 % on each bolt: by the torque of
// the last stage, or after an angle by the result of the plan. It is at most
// the yield load, because an angle beyond it adds almost nothing. If the yield
// load is unknown, an angle says too little.
func fullLoad(p plan.Plan, model prediction.Model) ([]float64, error) {
	work, targets, err := ends(p, model)
	if err != nil {
		return nil, err
	}
	for i, target := range work.TargetsN {
		if target == 0 && procedure.YieldN(p.KindOf(i)) == 0 {
			return nil, finding.Failed(TargetUnknown, nil)
		}
	}
	targets, _ = procedure.AtMostYield(p, targets, nil)
	return targets, nil
}

// otherOrder is the order to compare a plan's order with. The groups keep their
// order, so that only the order within them is compared.
func otherOrder(p plan.Plan, round bool) []int {
	var order []int
	for _, g := range p.Groups {
		members := slices.DeleteFunc(slices.Clone(p.Tighten.Order), func(i int) bool { return !slices.Contains(g.Members, i) })
		if round {
			members = onceRound(p, members)
		} else {
			slices.Reverse(members)
		}
		order = append(order, members...)
	}
	return order
}

// onceRound sorts fasteners from neighbour to neighbour.
func onceRound(p plan.Plan, members []int) []int {
	points := make([]geometry.Point, len(members))
	for k, i := range members {
		points[k] = p.Joint.Fasteners[i].At
	}
	order := way.Places(points, sequence.Circular, sequence.TurnRight)
	for k, place := range order {
		order[k] = members[place]
	}
	return order
}
