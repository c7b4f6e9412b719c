package trace

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
)

// bay is a stretch of the outer edge that runs round an opening to the outside.
type bay struct {
	from, to int // of the edge, from < to; it may run past the end of the edge
	gap      float64
}

// mostGap is the opening of a bay as a share of its diameter: wider ones are
// part of the outline.
const mostGap = 0.6

// widestTornMm is the diameter up to which torn holes are looked for: above it
// a hole is a bore, and a bay is part of the outline.
const widestTornMm = holes.BoreFromMm

// tornHoles finds holes that a tear has joined to the outside, or that run out
// over the edge. It returns them with a doubt, and the outline without them.
func (t *tracer) tornHoles(outer edge) ([]Shape, []geometry.Point) {
	var shapes []Shape
	cut := make([]bool, len(outer.mm))
	for _, b := range bays(outer.mm, t.options, outer.side) {
		s, ok := t.tornHole(outer, b)
		if !ok {
			continue
		}
		shapes = append(shapes, s)
		for i := b.from + 1; i < b.to; i++ {
			cut[i%len(cut)] = true
		}
	}
	return shapes, keep(outer.mm, func(i int) bool { return !cut[i] })
}

// bays lists the stretches whose ends lie near to each other, each with its
// narrowest opening. None overlaps another.
func bays(line []geometry.Point, o Options, side float64) []bay {
	step := max(1, int(0.4/side)) // a look every 0.4 mm is enough
	n := len(line) / step
	if n < 12 {
		return nil
	}
	at := func(k int) geometry.Point { return line[k%n*step] }
	longest := min(int(1.3*math.Pi*widestTornMm/side)/step, n/2)
	shortest := int(2*o.SmallestMm/side) / step
	whole := signedArea(line)
	var found []bay
	for i := 0; i < n; i++ {
		best := bay{gap: math.Inf(1)}
		for k := i + shortest; k <= i+longest; k++ {
			gap := at(i).Distance(at(k))
			around := float64(k-i) * float64(step) * side
			// The edge of a pixel picture is some 4/π times as long as the line.
			if gap > mostGap*around/4 || gap >= best.gap {
				continue
			}
			best = bay{i * step, k * step, gap}
		}
		// A bay runs round something outside of the part.
		if math.IsInf(best.gap, 1) || signedArea(stretch(line, best))*whole >= 0 {
			continue
		}
		if last := len(found) - 1; last >= 0 && found[last].to > best.from {
			if best.gap < found[last].gap {
				found[last] = best
			}
			continue
		}
		found = append(found, best)
	}
	return found
}

func stretch(line []geometry.Point, b bay) []geometry.Point {
	some := make([]geometry.Point, 0, b.to-b.from)
	for i := b.from; i < b.to; i++ {
		some = append(some, line[i%len(line)])
	}
	return some
}

func signedArea(line []geometry.Point) float64 {
	sum := 0.0
	for i, a := range line {
		b := line[(i+1)%len(line)]
		sum += a.X*b.Y - a.Y*b.X
	}
	return sum / 2
}

// wayRound is the share of the way round that some of the points lie on a circle.
func (c circle) wayRound(points []geometry.Point, tolerance float64) float64 {
	const sectors = 72
	seen := map[int]bool{}
	for _, p := range points {
		if math.Abs(c.off(p)) <= tolerance {
			seen[int(p.AngleFrom(c.centre)/(360/sectors))%sectors] = true
		}
	}
	return float64(len(seen)) / sectors
}

// tornHole lays a circle through a bay. It counts where the circle follows more
// than half a turn.
func (t *tracer) tornHole(outer edge, b bay) (Shape, bool) {
	points := stretch(outer.mm, b)
	c, ok := fitCircle(points)
	if !ok {
		return Shape{}, false
	}
	tolerance := max(1.5*outer.side, 0.12, noticedShare*c.radius*2)
	share := c.wayRound(points, tolerance)
	d := 2 * c.radius
	if share < roundShare || d < t.options.SmallestMm || d >= widestTornMm {
		return Shape{}, false
	}
	s := Shape{At: c.centre, DiameterMm: d, ScatterMm: c.scatter, Kept: share, Contrast: outer.contrast, Edge: points}
	s.doubt(Open, finding.Values{"round": share})
	return s, true
}
