package way

import (
	"math"

	"drawdown/geometry"
)

// Weighed is what an order comes to by the terms of the objective, whoever made
// it. Lengths are in units of the farthest place from the point of balance.
type Weighed struct {
	Pull   []float64 // after each step: how far what is tight pulls to one side
	Saddle []float64 // how far it bends the part along one line more than across it
	// Outwards is the sum of the squares by which places come out of their turn
	// by distance, as a share of what it is at random: 0 where all come in their
	// turn, 1 at random, 2 from the outside inwards. It is 0 where no place lies
	// further out than another.
	Outwards float64
}

// Weigh holds an order of places against the terms of the objective.
func Weigh(points []geometry.Point, order []int) Weighed {
	var w Weighed
	if len(order) == 0 {
		return w
	}
	l := newLayout(points)
	place := make([]int, len(points)) // where each point stands in the layout
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
