package way

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// The rules of the trade as figures. An order costs the sum over its steps of
//
//	balance      how far what is tight pulls to one side, squared, and how much
//	             more than as much as one fastener at the edge;
//	saddle       how far it bends the part along one line more than across it;
//	outwards     how far the place lies from where its turn would be, were all
//	             worked by their distance from the middle;
//	neighbours   whether the place is a neighbour of the one before, and how near
//	             to it it lies;
//	sides        how far it lies out on the same side as the one before;
//	trapped      whether both its neighbours along the edge are tight, though it
//	             lies further in than they do;
//	corner       how many of the two are not, though it is a corner;
//	passed       how much further in others lie that are left on the other side,
//	             and how far what is tight leans away from them.
//
// Lengths are in units of the farthest place. Common practice, no source: the
// weights were set so that the orders that the trade has for regular parts cost
// least among those that keep its rules.
const (
	weighsBalance    = 1.0
	weighsExcess     = 6.0
	weighsSaddle     = 0.6
	weighsOutwards   = 15.0
	weighsNeighbours = 2.0
	weighsNearness   = 0.6
	weighsSides      = 0.15
	weighsTrapped    = 1.0
	weighsCorner     = 0.75
	weighsPassed     = 3.0
	// onePair is as much as half a pair across bends: so much is no saddle yet.
	onePair = 1.0
	// farSpacings is how far away from the last a place has to be, in spacings,
	// to count as far.
	farSpacings = 3.0
)

// objective holds places against the rules.
type objective struct {
	at     []geometry.Point // from the point of balance
	square []geometry.Point // the same as complex numbers, squared: along which line they bend
	far    []float64        // distance from the middle
	beside [][]int          // neighbours
	along  []along          // of places along an edge
	sides  []int            // places along an edge but for its corners, the nearest first
	near   float64          // farSpacings
	turnAt []float64        // for each step the distance whose turn it is
	bent   []geometry.Point // for each step what is bent if all goes by distance
}

// newObjective looks at places, some along an edge, whose stages are worked one
// after another.
func newObjective(points []geometry.Point, edge []int, beside [][]int, stages [][]int) *objective {
	centre, spacing := geometry.Centroid(points), geometry.Spacing(points)
	o := &objective{beside: beside}
	reach := reachFrom(centre, points)
	for _, p := range points {
		d := p.Sub(centre).Scale(1 / reach)
		o.at, o.far = append(o.at, d), append(o.far, d.Distance(geometry.Point{}))
		o.square = append(o.square, geometry.Point{X: d.X*d.X - d.Y*d.Y, Y: 2 * d.X * d.Y})
	}
	o.near = farSpacings * spacing / reach
	o.lookAlong(edge)
	for _, stage := range stages {
		o.expect(stage)
	}
	return o
}

// blurred is the width over which distances pass for alike, in units of the
// farthest place: on a round part no place has a turn of its own.
const blurred = 0.15

// expect appends, for each step of a stage, the distance whose turn it is and
// what is bent by then if places come by their distance. A place counts little
// by little as the distance passes it, so that nothing jumps where two change
// places.
func (o *objective) expect(stage []int) {
	order := slices.Clone(stage)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(o.far[a], o.far[b]) })
	var before geometry.Point
	if len(o.bent) > 0 {
		before = o.bent[len(o.bent)-1]
	}
	low, high := o.far[order[0]]-blurred/2, o.far[order[len(order)-1]]+blurred/2
	const samples = 64
	count := make([]float64, samples+1)
	bent := make([]geometry.Point, samples+1)
	for s := range count {
		at := low + (high-low)*float64(s)/samples
		for _, i := range order {
			share := min(1, max(0, (at-o.far[i])/blurred+0.5))
			count[s] += share
			bent[s] = bent[s].Add(o.square[i].Scale(share))
		}
	}
	s := 0
	for k, i := range order {
		o.turnAt = append(o.turnAt, o.far[i])
		for s < samples-1 && count[s+1] < float64(k+1) {
			s++
		}
		between := min(1, max(0, (float64(k+1)-count[s])/max(count[s+1]-count[s], 1e-9)))
		o.bent = append(o.bent, before.Add(bent[s]).Add(bent[s+1].Sub(bent[s]).Scale(between)))
	}
}

// step is what one more place costs, after those that sum up to pull and bend.
func (o *objective) step(i, last, k int, pull, bend geometry.Point) float64 {
	size := math.Sqrt(pull.Dot(pull))
	excess := max(0, size-1)
	twist := bend.Sub(o.bent[k])
	beyond := max(0, math.Sqrt(twist.Dot(twist))-onePair)
	cost := weighsBalance*size + weighsExcess*excess*excess + weighsSaddle*beyond*beyond + o.outOfTurn(i, k)
	if last >= 0 {
		cost += o.succession(last, i)
	}
	return cost
}

// outOfTurn is what it costs by the distance that a place is worked at a step.
func (o *objective) outOfTurn(i, k int) float64 {
	off := o.far[i] - o.turnAt[min(k, len(o.turnAt)-1)]
	return weighsOutwards * off * off
}

// succession is what it costs that i is worked straight after last.
func (o *objective) succession(last, i int) float64 {
	cost := 0.0
	if slices.Contains(o.beside[last], i) {
		cost = weighsNeighbours
	}
	apart := o.at[i].Sub(o.at[last])
	if square := apart.Dot(apart); square < o.near*o.near {
		closeness := 1 - math.Sqrt(square)/o.near
		cost += weighsNearness * closeness * closeness
	}
	return cost + weighsSides*max(0, o.at[i].Dot(o.at[last]))
}
