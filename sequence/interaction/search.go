package interaction

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// Cost tells how bad an order is; less is better. It must not be shared between
// workers.
type Cost func(order []int) float64

// Scatter costs the standard deviation of the forces, in percent of the
// targets, after one pass for each share of the targets.
func (j *Joint) Scatter(targets, shares []float64) (Cost, error) {
	scaled, err := j.scaled(targets, shares)
	if err != nil {
		return nil, err
	}
	p := newPasser(j)
	return func(order []int) float64 {
		if p.work(order, scaled) {
			return SpreadOf(Percent(p.force, targets)).SD
		}
		after := j.exactly(order, targets, shares, nil)
		if after == nil {
			return math.Inf(1)
		}
		return SpreadOf(Percent(after[len(after)-1].ForcesN, targets)).SD
	}, nil
}

// Tilt costs the largest unevenness in mm, tilt and warp together, at any step
// of one pass for each share of the targets.
func (j *Joint) Tilt(targets, shares []float64, at []geometry.Point) (Cost, error) {
	if _, err := j.scaled(targets, shares); err != nil {
		return nil, err
	}
	return func(order []int) float64 {
		after := j.exactly(order, targets, shares, at)
		if after == nil {
			return math.Inf(1)
		}
		most := 0.0
		for _, a := range after {
			most = math.Max(most, a.LargestUnevenMm)
		}
		return most
	}, nil
}

func (j *Joint) scaled(targets, shares []float64) ([][]float64, error) {
	if err := j.checkTargets(targets); err != nil {
		return nil, err
	}
	var list [][]float64
	for _, share := range shares {
		if err := positive(quantity{"a stage at the share", share, "of the target"}); err != nil {
			return nil, err
		}
		stage := make([]float64, len(targets))
		for i, t := range targets {
			stage[i] = share * t
		}
		list = append(list, stage)
	}
	return list, nil
}

// work works all passes by closed forms and says whether they hold.
func (p *passer) work(order []int, targets [][]float64) (holds bool) {
	for s, t := range targets {
		if s == 0 {
			holds = p.first(order, t)
		} else {
			holds = p.again(order, t)
		}
		if !holds {
			return false
		}
	}
	return holds
}

// exactly works all passes step by step; nil where that fails.
func (j *Joint) exactly(order []int, targets, shares []float64, at []geometry.Point) []AfterPass {
	var passes []Pass
	for _, share := range shares {
		passes = append(passes, ToForces(order, targets, share))
	}
	after, err := j.Loose().Work(passes, at)
	if err != nil || len(after) == 0 {
		return nil
	}
	return after
}

// Search betters an order by swapping two of its places and by moving one,
// best change first, until none helps: it is as good as the start allows. Start
// from several good orders.
func Search(start []int, cost Cost) (order []int, best float64) {
	order, best = slices.Clone(start), cost(start)
	trial := make([]int, len(start))
	for {
		better, at := []int(nil), best
		neighbours(order, trial, func() {
			if c := cost(trial); c < at-1e-12*math.Abs(best) {
				better, at = append(better[:0], trial...), c
			}
		})
		if better == nil {
			return order, best
		}
		copy(order, better)
		best = at
	}
}

// neighbours puts every order that one change makes into trial.
func neighbours(order, trial []int, visit func()) {
	for i := range order {
		for k := range order {
			if i == k {
				continue
			}
			if i < k {
				copy(trial, order)
				trial[i], trial[k] = trial[k], trial[i]
				visit()
			}
			move(order, trial, i, k)
			visit()
		}
	}
}

// move takes place i out and puts it at place k.
func move(order, trial []int, i, k int) {
	copy(trial, order)
	if i < k {
		copy(trial[i:k], order[i+1:k+1])
	} else {
		copy(trial[k+1:i+1], order[k:i])
	}
	trial[k] = order[i]
}
