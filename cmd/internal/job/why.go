package job

import (
	"fmt"
	"slices"

	"drawdown/geometry"
	"drawdown/render/sheet/handout"
	"drawdown/sequence"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
	"drawdown/sequence/way"
)

// How much better the plan's order must be at every stiffness of the gasket for
// its figure to be held up as a reason (engineering judgement): so many points
// of percent more in the lowest bolt, such a share less out of true.
const (
	tellingPoints = 5
	tellingShare  = 0.8
)

// whyFigures works out one pass to the full load in the plan's order and in
// another: from the edges, or once round a bolt circle. Nil where the joint
// lacks what the model needs.
func whyFigures(p plan.Plan) *handout.Figures {
	model, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil || len(p.Tighten.Stages) == 0 {
		return nil
	}
	targets, err := fullLoad(p, model)
	if err != nil {
		return nil
	}
	var runs [2]prediction.Prediction
	for k, order := range [][]int{p.Tighten.Order, otherOrder(p)} {
		if runs[k], err = model.Predict([]contact.Pass{contact.ToForces(order, targets, 1)}, targets); err != nil {
			return nil
		}
	}
	f := &handout.Figures{
		LowestPercent: [2]handout.Band{bandOf(runs[0], lowest), bandOf(runs[1], lowest)},
		UnevenMm:      [2]handout.Band{bandOf(runs[0], uneven), bandOf(runs[1], uneven)},
	}
	better, worse := tells(runs[0], runs[1]), tells(runs[1], runs[0])
	// A figure is no reason where the other one speaks against the order.
	f.TellsLowest, f.TellsUneven = better.lowest && !worse.uneven, better.uneven && !worse.lowest
	return f
}

func lowest(r prediction.Run) float64 { return r.Spread(0).Min }
func uneven(r prediction.Run) float64 { return r.Passes[0].LargestUnevenMm }

// telling says by which figures an order is the better one by far.
type telling struct{ lowest, uneven bool }

// tells holds one order against another at every stiffness of the gasket.
func tells(one, other prediction.Prediction) telling {
	t := telling{true, true}
	for _, at := range []func(prediction.Prediction) prediction.Run{
		func(p prediction.Prediction) prediction.Run { return p.Soft },
		func(p prediction.Prediction) prediction.Run { return p.Nominal },
		func(p prediction.Prediction) prediction.Run { return p.Stiff },
	} {
		t.lowest = t.lowest && lowest(at(one)) >= lowest(at(other))+tellingPoints
		t.uneven = t.uneven && uneven(at(one)) <= tellingShare*uneven(at(other))
	}
	return t
}

// fullLoad gives the force that stands for 100 % on each bolt: by the torque of
// the last stage, or after an angle by what the plan comes to; never more than
// the yield load, since an angle beyond it adds about nothing to that. Of a bolt
// whose yield is not known an angle tells too little.
func fullLoad(p plan.Plan, model prediction.Model) ([]float64, error) {
	work, err := procedure.WorkOf(p, p.Tighten)
	if err != nil {
		return nil, err
	}
	targets := slices.Clone(work.TargetsN)
	if slices.Contains(targets, 0) {
		planned, _, err := model.PredictPlan(p)
		if err != nil {
			return nil, err
		}
		copy(targets, planned.Nominal.TargetsN)
	}
	for i := range targets {
		switch yield := procedure.YieldN(p.KindOf(i)); {
		case yield > 0:
			targets[i] = min(targets[i], yield)
		case work.TargetsN[i] == 0:
			return nil, fmt.Errorf("the yield load of kind %s is not known", p.KindOf(i).Name)
		}
	}
	return targets, nil
}

// otherOrder is what the page holds the plan's order against: each group once
// round its rim, or from its edges. The groups follow each other as they do in
// the plan, so that nothing but the order within them is compared.
func otherOrder(p plan.Plan) []int {
	var order []int
	for _, g := range p.Groups {
		members := slices.DeleteFunc(slices.Clone(p.Tighten.Order), func(i int) bool { return !slices.Contains(g.Members, i) })
		if handout.IsCircle(p) {
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

func bandOf(p prediction.Prediction, of func(prediction.Run) float64) handout.Band {
	all := []float64{of(p.Soft), of(p.Nominal), of(p.Stiff)}
	return handout.Band{Low: slices.Min(all), Nominal: all[1], High: slices.Max(all)}
}
