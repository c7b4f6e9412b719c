package interaction

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// Cost tells how bad an order is; less is better. It must not be shared between
// workers.
type Cost func(order []int) float64

// Work is the passes that an order comes to.
type Work func(order []int) []Pass

// Scatter costs the standard deviation of the forces, in percent of the
// targets, at the end of the work.
func (j *Joint) Scatter(targets []float64, work Work) Cost {
	p := newPasser(j)
	return func(order []int) float64 {
		forces, _, ok := j.outcome(p, work(order), nil)
		if !ok {
			return math.Inf(1)
		}
		return SpreadOf(Percent(forces, targets)).SD
	}
}

// Tilt costs the largest unevenness in mm, tilt and warp together, at any step
// of the work.
func (j *Joint) Tilt(at []geometry.Point, work Work) Cost {
	p := newPasser(j)
	return func(order []int) float64 {
		_, uneven, ok := j.outcome(p, work(order), at)
		if !ok {
			return math.Inf(1)
		}
		return uneven
	}
}

// Both costs scatter and tilt together, each as a share of what an order that
// one could work by comes to.
func Both(scatter, tilt Cost, order []int) Cost {
	usualScatter, usualTilt := scatter(order), tilt(order)
	return func(order []int) float64 {
		return scatter(order)/math.Max(usualScatter, 0.1) + tilt(order)/math.Max(usualTilt, 1e-6) // nothing is too even to divide by
	}
}

// outcome gives the forces at the end of the work and the largest unevenness on
// the way, by closed forms where they hold. It says false where the work cannot
// be done.
func (j *Joint) outcome(p *passer, passes []Pass, at []geometry.Point) (forces []float64, unevenMm float64, ok bool) {
	p.watch = at != nil
	if p.passes(passes) {
		return p.force, p.unevenMm, true
	}
	after, err := j.Loose().Work(passes, at)
	if err != nil || len(after) == 0 {
		return nil, 0, false
	}
	for _, a := range after {
		unevenMm = math.Max(unevenMm, a.LargestUnevenMm)
	}
	return after[len(after)-1].ForcesN, unevenMm, true
}

// Search betters an order by swapping two of its places and by moving one, until
// no such change helps or so many orders have been tried: it is as good as the
// start allows. Start from several good orders.
func Search(start []int, cost Cost, mostTried int) (order []int, best float64) {
	order, best = slices.Clone(start), cost(start)
	trial, tried := make([]int, len(start)), 0
	for better := true; better && tried < mostTried; {
		better = false
		neighbours(order, trial, func() {
			if tried++; tried > mostTried {
				return
			}
			if c := cost(trial); c < best-1e-12*math.Abs(best) {
				copy(order, trial)
				best, better = c, true
			}
		})
	}
	return order, best
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
