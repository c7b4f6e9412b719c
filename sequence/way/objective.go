package way

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// The rules of the trade as an objective. The cost of an order is the sum over
// its steps of
//
//	balance      how far what is tight pulls to one side, squared, and how much
//	             this exceeds one fastener at the edge
//	saddle       how much it bends the part along one line more than across it
//	outwards     how far the place is from the one whose turn it would be by
//	             distance from the middle
//	neighbours   whether the place is a neighbour of the one before, and how
//	             close it is
//	sides        how far out it is on the same side as the one before
//	trapped      whether both its neighbours along the edge are tight, though
//	             it is further in than they are
//	corner       how many of the two are not, though it is a corner
//	passed       how much further in others are that remain on the other side,
//	             and how far what is tight leans away from them
//
// Lengths are in units of the farthest place. Common practice, no source: the
// weights were chosen so that the orders of the trade for regular parts cost
// least among those that follow its rules.
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
	// onePair is the bending of half a pair; so much is not yet a saddle.
	onePair = 1.0
	// farSpacings is the distance from the last place, in spacings, from which
	// a place counts as far.
	farSpacings = 3.0
)

// objective evaluates places by the rules.
type objective struct {
	at     []geometry.Point // relative to the point of balance
	square []geometry.Point // the same as complex numbers, squared: the line along which they bend
	far    []float64        // distance from the middle
	beside [][]int          // neighbours
	along  []along          // of places along an edge
	sides  []int            // places along an edge except its corners, nearest first
	near   float64          // farSpacings
	turnAt []float64        // for each step, the distance whose turn it is
	bent   []geometry.Point // for each step, the bending if all come by distance
}

// newObjective prepares the objective for places, some along an edge, whose
// stages come one after another.
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

// blurred is the width over which distances count as equal, in units of the
// farthest place: on a round part no place has a definite turn.
const blurred = 0.15

// expect appends, for each step of a stage, the distance whose turn it is, and
// the bending by then if places come by distance. A place counts gradually as
// the distance passes it, so that nothing jumps when two swap.
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

// step is the cost of one more place, after those that sum up to pull and bend.
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

// outOfTurn is the cost of tightening a place at a step that does not match its
// distance.
func (o *objective) outOfTurn(i, k int) float64 {
	off := o.far[i] - o.turnAt[min(k, len(o.turnAt)-1)]
	return weighsOutwards * off * off
}

// succession is the cost of tightening i directly after last.
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
