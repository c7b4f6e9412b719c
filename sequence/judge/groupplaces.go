package judge

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence"
)

// work is one group with its order. It is judged by units: single fasteners and
// clusters.
type work struct {
	joint   geometry.Joint
	members []int // fasteners in the order as given
	step    []int // of every fastener of the joint, from 1
	// The units, each in the order in which its fasteners are tightened: those
	// of unloaded clusters, and the others, which are judged by their places.
	free, units [][]int
	listed      []int // the first listed fastener of each unit
	order       []int // units in the order as given
	layout      Layout
	places
}

// places are the places of the units, moved to exact ones if they are regular.
type places struct {
	geometry.Layout
	seen     family.Seen
	given    []geometry.Point // as in the file
	middle   geometry.Point   // of the smallest circle around them
	centroid geometry.Point
	radius   []float64 // from the middle
	deg      []float64 // direction from the middle
	turn     []float64 // the same if all were evenly spread around the middle
	ring     []int     // number from the inside
	along    []onEdge  // position along an edge
	spacing  float64
	reach    float64 // distance from the centroid to the outermost
	// length is the distance from the middle along the longest extent; nil if
	// the places extend equally in all directions.
	length []float64
}

func newWork(j geometry.Joint, members, step []int) *work {
	w := &work{joint: j, members: members, step: step}
	// The listing order of the fasteners must not decide anything.
	w.free, w.units = sequence.Units(j, slices.Sorted(slices.Values(members)))
	w.places = newPlaces(sequence.Centres(j, w.units))
	w.listed = geometry.Mapped(w.units, func(unit []int) int { return unit[0] })
	for _, unit := range slices.Concat(w.free, w.units) {
		slices.SortFunc(unit, func(a, b int) int { return step[a] - step[b] })
	}
	w.order = geometry.Sorted(len(w.units), func(k int) float64 { return float64(w.firstStep(k)) })
	switch w.seen.Family {
	case family.Row:
		w.layout = Row
	case family.Circle:
		w.layout = Circle
	default:
		w.layout = Spread
	}
	return w
}

func newPlaces(points []geometry.Point) places {
	seen := family.Of(points)
	p := places{Layout: seen.Layout, seen: seen, given: points, ring: make([]int, len(points))}
	p.middle, p.centroid = geometry.Enclose(p.Points).Centre, geometry.Centroid(p.Points)
	p.spacing = geometry.Spacing(p.Points)
	for _, at := range p.Points {
		p.radius = append(p.radius, at.Distance(p.middle))
		p.deg = append(p.deg, at.AngleFrom(p.middle))
		p.reach = math.Max(p.reach, at.Distance(p.centroid))
	}
	if seen.Family == family.Row {
		p.takeSides()
	}
	p.length, p.turn, p.along = p.lengths(), evenly(p.deg), p.edges()
	for number, ring := range p.rings() {
		for _, i := range ring {
			p.ring[i] = number
		}
	}
	return p
}

// rings divides the places from the middle outwards: a row by steps from its
// middle, circles as recognized, otherwise by rings of the layout.
func (p places) rings() [][]int {
	switch p.seen.Family {
	case family.Circles:
		return p.seen.Rings
	case family.Row:
		return rowRings(p.Points)
	}
	return p.Rings(p.middle)
}

// takeSides assigns the places of a row to sides by their number in it, however
// uneven the spacing.
func (p places) takeSides() {
	axis := geometry.LongAxis(p.Points)
	for k, ring := range rowRings(p.Points) {
		for _, i := range ring {
			p.deg[i] = axis.AngleFrom(geometry.Point{})
			if len(ring) == 1 && k == 0 {
				p.radius[i] = 0
			} else if i == ring[0] {
				p.deg[i] = geometry.Turn(p.deg[i] + 180)
			}
		}
	}
}

func rowRings(points []geometry.Point) [][]int {
	axis := geometry.LongAxis(points)
	order := geometry.Sorted(len(points), func(i int) float64 { return points[i].Dot(axis) })
	var rings [][]int
	for low, high := (len(order)-1)/2, len(order)/2; low >= 0; low, high = low-1, high+1 {
		ring := []int{order[low]}
		if high != low {
			ring = append(ring, order[high])
		}
		rings = append(rings, ring)
	}
	return rings
}

// onEdge is the position of a place along one of the closed edges: its number,
// of so many places. of is 0 if it is on none.
type onEdge struct{ edge, number, of int }

// edges numbers the places along the edge of a perimeter or curve, and along
// each of several circles.
func (p places) edges() []onEdge {
	edges := [][]int{p.seen.Edge}
	if p.seen.Family == family.Circles {
		edges = nil
		for _, ring := range p.seen.Rings {
			edges = append(edges, inRound(ring, p.deg))
		}
	}
	along := make([]onEdge, len(p.Points))
	for e, edge := range edges {
		for k, i := range edge {
			along[i] = onEdge{e, k, len(edge)}
		}
	}
	return along
}

// evenly spreads directions evenly around a full turn, keeping their order. On
// a circle with unevenly spaced bolts each then still has an opposite place.
func evenly(deg []float64) []float64 {
	turn := make([]float64, len(deg))
	for k, i := range inRound(geometry.Count(len(deg)), deg) {
		turn[i] = 360 * float64(k) / float64(len(deg))
	}
	return turn
}

// firstStep is the step of the first fastener of a unit.
func (w *work) firstStep(unit int) int { return w.step[w.units[unit][0]] }

// name is the id of the first fastener of a unit.
func (w *work) name(unit int) string { return w.joint.Fasteners[w.units[unit][0]].ID }

// at returns the steps and ids of the units at some positions of the order.
func (w *work) at(positions ...int) (steps []int, names []string) {
	for _, k := range positions {
		steps, names = append(steps, w.firstStep(w.order[k])), append(names, w.name(w.order[k]))
	}
	return steps, names
}

// lengths returns the distances from the middle along the longest extent.
func (p places) lengths() []float64 {
	axis := geometry.LongAxis(p.Points)
	along, longest, widest := make([]float64, len(p.Points)), 0.0, 0.0
	for i, at := range p.Points {
		d := at.Sub(p.middle)
		along[i] = math.Abs(d.Dot(axis))
		longest, widest = math.Max(longest, along[i]), math.Max(widest, math.Abs(d.Dot(geometry.Point{X: -axis.Y, Y: axis.X})))
	}
	if longest < longShare*widest {
		return nil
	}
	return along
}
