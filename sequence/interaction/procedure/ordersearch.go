package procedure

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
)

// Cost rates an order; lower is better. It is not safe for concurrent use.
type Cost func(order []int) float64

// ByOrder returns the passes for an order.
type ByOrder func(order []int) []contact.Pass

// Scatter is the cost by the standard deviation of the final forces, in percent
// of the targets.
func Scatter(j *contact.Joint, targets []float64, work ByOrder) Cost {
	return outcome(j, nil, work, func(forces []float64, _ float64) float64 {
		return bounds.SpreadOf(bounds.Percent(forces, targets)).SD
	})
}

// Tilting is the cost by the largest unevenness in mm, tilt and warp together,
// at any step of the work.
func Tilting(j *contact.Joint, at []geometry.Point, work ByOrder) Cost {
	return outcome(j, at, work, func(_ []float64, unevenMm float64) float64 { return unevenMm })
}

// outcome is the cost by the result of the work, or infinite if it cannot be
// done.
func outcome(j *contact.Joint, at []geometry.Point, work ByOrder, cost func(forces []float64, unevenMm float64) float64) Cost {
	p := contact.NewPasser(j)
	return func(order []int) float64 {
		forces, uneven, ok := p.Outcome(work(order), at)
		if !ok {
			return math.Inf(1)
		}
		return cost(forces, uneven)
	}
}

// Both is the cost by scatter and tilt together, each relative to that of a
// usual order.
func Both(scatter, tilt Cost, order []int) Cost {
	usualScatter, usualTilt := scatter(order), tilt(order)
	return func(order []int) float64 {
		return scatter(order)/math.Max(usualScatter, 0.1) + tilt(order)/math.Max(usualTilt, 1e-6) // avoids division by zero
	}
}

// Search improves an order by swapping two of its places and by moving one,
// until no change helps or mostTried orders have been tried. The result depends
// on the start: use several good orders.
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

// neighbours writes every order that differs by one change into trial.
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

// move removes place i and inserts it at k.
func move(order, trial []int, i, k int) {
	copy(trial, order)
	if i < k {
		copy(trial[i:k], order[i+1:k+1])
	} else {
		copy(trial[k+1:i+1], order[k:i])
	}
	trial[k] = order[i]
}
