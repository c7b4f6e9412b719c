package way

import (
	"math"

	"drawdown/geometry"
)

// Weighed has the figures of an order by the terms of the objective, whoever
// made it. Lengths are in units of the farthest place from the point of
// balance.
type Weighed struct {
	Pull   []float64 // after each step: how far what is tight pulls to one side
	Saddle []float64 // how much it bends the part along one line more than across it
	// Outwards is the sum of squared deviations from the order by distance,
	// relative to that of a random order: 0 if all come by distance, 1 for
	// random, 2 from the outside inwards. It is 0 if all places are equally far
	// out.
	Outwards float64
}

// Weigh evaluates an order of places by the terms of the objective.
func Weigh(points []geometry.Point, order []int) Weighed {
	var w Weighed
	if len(order) == 0 {
		return w
	}
	l := newLayout(points)
	place := make([]int, len(points)) // index of each point in the layout
	for k, i := range l.listed {
		place[i] = k
	}
	o := newObjective(l.at, nil, nil, l.stages())
	var pull, bend geometry.Point
	var off, mean, squares float64
	for k, point := range order {
		i := place[point]
		pull, bend = pull.Add(o.at[i]), bend.Add(o.square[i])
		twist := bend.Sub(o.bent[k])
		w.Pull = append(w.Pull, math.Sqrt(pull.Dot(pull)))
		w.Saddle = append(w.Saddle, math.Sqrt(twist.Dot(twist)))
		apart := o.far[i] - o.turnAt[k]
		off, mean, squares = off+apart*apart, mean+o.far[i], squares+o.far[i]*o.far[i]
	}
	n := float64(len(order))
	if spread := squares/n - (mean/n)*(mean/n); spread > 1e-6 {
		w.Outwards = off / (2 * n * spread)
	}
	return w
}
