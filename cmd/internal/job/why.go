package job

import (
	"slices"

	"drawdown/geometry"
	"drawdown/render/sheet/handout"
	"drawdown/sequence"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
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
	model, err := interaction.ModelOf(p, interaction.Setup{})
	if err != nil || len(p.Tighten.Stages) == 0 {
		return nil
	}
	targets, err := fullLoad(p, model)
	if err != nil {
		return nil
	}
	var runs [2]interaction.Prediction
	for k, order := range [][]int{p.Tighten.Order, otherOrder(p)} {
		if runs[k], err = model.Predict([]interaction.Pass{interaction.ToForces(order, targets, 1)}, targets); err != nil {
			return nil
		}
	}
	lowest := func(r interaction.Run) float64 { return r.Spread(0).Min }
	uneven := func(r interaction.Run) float64 { return r.Passes[0].LargestUnevenMm }
	f := &handout.Figures{
		LowestPercent: [2]handout.Band{bandOf(runs[0], lowest), bandOf(runs[1], lowest)},
		UnevenMm:      [2]handout.Band{bandOf(runs[0], uneven), bandOf(runs[1], uneven)},
		TellsLowest:   true, TellsUneven: true,
	}
	for _, at := range []func(interaction.Prediction) interaction.Run{
		func(p interaction.Prediction) interaction.Run { return p.Soft },
		func(p interaction.Prediction) interaction.Run { return p.Nominal },
		func(p interaction.Prediction) interaction.Run { return p.Stiff },
	} {
		f.TellsLowest = f.TellsLowest && lowest(at(runs[0])) >= lowest(at(runs[1]))+tellingPoints
		f.TellsUneven = f.TellsUneven && uneven(at(runs[0])) <= tellingShare*uneven(at(runs[1]))
	}
	return f
}

// fullLoad gives the force that stands for 100 % on each bolt: by the torque of
// the last stage, or after an angle by what the plan comes to.
func fullLoad(p plan.Plan, model interaction.Model) ([]float64, error) {
	work, err := interaction.WorkOf(p, p.Tighten)
	if err != nil || !slices.Contains(work.TargetsN, 0) {
		return work.TargetsN, err
	}
	planned, _, err := model.PredictPlan(p)
	return planned.Nominal.TargetsN, err
}

// otherOrder is what the page holds the plan's order against.
func otherOrder(p plan.Plan) []int {
	if handout.IsCircle(p) {
		points := make([]geometry.Point, 0, len(p.Tighten.Order))
		for _, i := range p.Tighten.Order {
			points = append(points, p.Joint.Fasteners[i].At)
		}
		order := sequence.Places(points, sequence.Circular, sequence.TurnRight)
		for k, place := range order {
			order[k] = p.Tighten.Order[place]
		}
		return order
	}
	order := slices.Clone(p.Tighten.Order)
	slices.Reverse(order)
	return order
}

func bandOf(p interaction.Prediction, of func(interaction.Run) float64) handout.Band {
	all := []float64{of(p.Soft), of(p.Nominal), of(p.Stiff)}
	return handout.Band{Low: slices.Min(all), Nominal: all[1], High: slices.Max(all)}
}
