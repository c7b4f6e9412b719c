package diagram

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/scene"
)

// With hundreds of fasteners on one circle, the gaps are too narrow for
// straight leaders to pass the numbers. A fan sets the numbers in columns:
// level to the left and right of the circle, and turned upward above and below
// it. Each leader bends once, at the height of its number, and continues
// parallel to an edge of the paper. Neighbouring numbers alternate between a
// near and a far line, so that each takes up half its height. The search starts
// from a fan.

// quarter is one of the four sides of the paper, outside or inside the circle.
// Positions in it are measured along the outward direction of the numbers, and
// across it.
type quarter struct {
	side   int // from the middle: 0 right, 1 up, 2 left, 3 down
	inward bool
}

// fanned is the position of one number in its quarter.
type fanned struct {
	index         int
	along, across float64 // of the mark, from the middle of the circle
	extent        scene.Point
	at            float64 // of the number's middle, across
	last          float64 // of the outermost number on its side of the quarter, across
	near, far     float64 // of its ends, along
}

const (
	fanKnee  = 1.4 // mm from the rim of a mark, along, to the bend of its leader
	fanReach = 2.4 // mm from the rim of a mark, along, to its number
	fanWiden = 38  // most degrees from the middle of a quarter to the last number inside the circle
)

// fans reports whether the fasteners are so close together on one circle that
// their numbers need a fan.
func (s *sketch) fans(z size) bool {
	if !z.led || s.count() > hopeless || s.req.piece != nil {
		return false
	}
	if _, round := geometry.RoundPart(s.req.Plan.Joint.Points()); !round {
		return false
	}
	const least = 0.9 // a leader does not pass between two marks with less
	step := s.closest() * s.fitWith(z).scale
	return step >= least && 2*step < tallText+2*leaderAir
}

func (s *sketch) fan(waiting []int, em float64) map[int][]placement {
	places := map[int][]placement{}
	for widen := float64(fanWiden); widen >= 0; widen-- {
		fits := true
		for q, all := range s.quarters(waiting, em, widen) {
			if !s.spread(q, all) {
				fits = false
				break
			}
			for _, f := range all {
				places[f.index] = s.aboutFan(q, f)
			}
		}
		if fits {
			return places
		}
	}
	return nil
}

// quarters assigns the fasteners: every second one inward, except near the
// boundary of two quarters, where there is no room inside the circle.
func (s *sketch) quarters(waiting []int, em, widen float64) map[quarter][]fanned {
	all := map[quarter][]fanned{}
	order := s.alongString()
	for _, i := range waiting {
		side := int(math.Round(s.away(i)/90)+4) % 4
		off := math.Remainder(s.away(i)-90*float64(side), 360)
		q := quarter{side, order[i]%2 == 1 && math.Abs(off) <= widen}
		m, c := s.marks[i].at, s.view.centre
		sin, cos := math.Sincos(off * math.Pi / 180)
		radius := math.Hypot(m.X-c.X, m.Y-c.Y)
		all[q] = append(all[q], fanned{index: i, along: radius * cos, across: radius * sin, extent: textExtent(s.text(i), scene.Bold, em)})
	}
	for _, f := range all {
		slices.SortFunc(f, func(a, b fanned) int { return cmp.Or(cmp.Compare(a.across, b.across), a.index-b.index) })
	}
	return all
}

// spread separates the numbers of a quarter, each as close to its mark as
// possible, and reports whether they fit.
func (s *sketch) spread(q quarter, all []fanned) bool {
	apart := all[0].extent.Y/2 + leaderAir + 0.05 // from a number to its neighbour's leader
	middles := make([]float64, len(all))
	for k, f := range all {
		middles[k] = f.across
	}
	if q.inward {
		middles = spacedOut(middles, apart)
	} else {
		pushOut(middles, apart)
	}
	for k, at := range middles {
		all[k].at = at
	}
	radius := math.Hypot(all[0].along, all[0].across)
	most := radius
	if q.inward {
		depth := 0.0
		for _, f := range all {
			depth = max(depth, f.extent.X)
		}
		depth = 2*depth + gapAside + fanReach + 1
		for most > 0 && math.Sqrt(radius*radius-most*most)-depth < most+apart {
			most -= 0.1
		}
		if float64(len(all)-1)*apart > 2*most {
			return false
		}
		squeeze(all, most, apart)
	}
	for k := range all {
		all[k].last = math.Max(math.Copysign(1, all[k].at)*all[len(all)-1].at, math.Copysign(1, all[k].at)*all[0].at)
	}
	s.stagger(q, all, radius)
	return true
}

func squeeze(all []fanned, most, apart float64) {
	for k := len(all) - 1; k >= 0; k-- {
		all[k].at = min(all[k].at, most-float64(len(all)-1-k)*apart)
	}
	for k := range all {
		all[k].at = max(all[k].at, float64(k)*apart-most)
	}
}

func (s *sketch) stagger(q quarter, all []fanned, radius float64) {
	way := 1.0
	if q.inward {
		way = -1
	}
	set := func(k int, behind float64) {
		f := &all[k]
		rim := f.along
		if math.Abs(f.at) < radius {
			rim = way * max(way*rim, way*math.Sqrt(radius*radius-f.at*f.at))
		}
		f.near = rim + way*(s.marks[f.index].radius+s.outer(f.index)+fanReach)
		if !q.inward {
			f.near = max(f.near, f.corner()) // beyond this is the next quarter
		}
		f.near = way * max(way*f.near, behind)
		f.far = f.near + way*f.extent.X
	}
	for k := 0; k < len(all); k += 2 {
		set(k, math.Inf(-1))
	}
	for k := 1; k < len(all); k += 2 {
		behind := way*all[k-1].far + gapAside + 0.05
		if k+1 < len(all) {
			behind = max(behind, way*all[k+1].far+gapAside+0.05)
		}
		set(k, behind)
	}
}

// corner is how far out a number outside the circle must be, along, to clear
// the next quarter. Numbers pushed towards the corner have leaders that bend
// almost below one another, so that the leaders keep their spacing.
func (f *fanned) corner() float64 {
	last := math.Max(f.last, math.Abs(f.at))
	return last + f.extent.Y/2 + leaderAir - 0.5*(last-math.Abs(f.at))
}

// aboutFan returns the placement of a number in the fan and others near it, for
// the search to use if something is in the way.
func (s *sketch) aboutFan(q quarter, f fanned) []placement {
	way := math.Copysign(1, f.far-f.near)
	places := []placement{s.inFan(q, f, 0)}
	for _, out := range []float64{0, 2, 4.5, 8, 12} {
		for _, aside := range []float64{0, 0.7, -0.7, 1.5, -1.5, 2.5, -2.5} {
			for _, slant := range []float64{0, out} {
				g := f
				g.near, g.far, g.at = f.near+way*out, f.far+way*out, f.at+aside
				p := s.inFan(q, g, slant)
				p.cost = 1 + out + math.Abs(aside)
				places = append(places, p)
			}
		}
	}
	return places
}

// inFan converts a position in a quarter to a placement on the page, with the
// bend of its leader moved by further.
func (s *sketch) inFan(q quarter, f fanned, further float64) placement {
	c := s.view.centre
	onPage := func(along, across float64) scene.Point {
		switch q.side {
		case 0:
			return scene.Point{X: c.X + along, Y: c.Y - across}
		case 1:
			return scene.Point{X: c.X - across, Y: c.Y - along}
		case 2:
			return scene.Point{X: c.X - along, Y: c.Y + across}
		}
		return scene.Point{X: c.X + across, Y: c.Y + along}
	}
	way := math.Copysign(1, f.far-f.near)
	a, b := onPage(f.near, f.at-f.extent.Y/2), onPage(f.far, f.at+f.extent.Y/2)
	p := placement{
		box:    scene.Box{Left: min(a.X, b.X), Top: min(a.Y, b.Y), Right: max(a.X, b.X), Bottom: max(a.Y, b.Y)},
		to:     onPage(f.near-way*leaderGap, f.at),
		led:    true,
		bent:   true,
		upward: q.side%2 == 1,
	}
	// The bend comes before the numbers of the first line.
	rim := way * f.along
	if radius := math.Hypot(f.along, f.across); math.Abs(f.at) < radius {
		rim = max(rim, way*math.Sqrt(radius*radius-f.at*f.at))
	}
	m := s.marks[f.index]
	knee := rim + m.radius + s.outer(f.index) + fanKnee
	if way > 0 {
		knee = max(knee, f.corner()-fanReach+fanKnee)
	}
	p.bend = onPage(way*(knee+further), f.at)
	deg := math.Atan2(m.at.Y-p.bend.Y, p.bend.X-m.at.X) * 180 / math.Pi
	sin, cos := math.Sincos(deg * math.Pi / 180)
	out := m.shape.rim(deg) * (m.radius + s.outer(f.index))
	p.from = scene.Point{X: m.at.X + out*cos, Y: m.at.Y - out*sin}
	return p
}

// pushOut moves sorted values away from 0 until they are at least apart from
// each other, so that no leader runs back along the circle.
func pushOut(values []float64, apart float64) {
	middle, _ := slices.BinarySearch(values, 0)
	if 0 < middle && middle < len(values) {
		if short := apart - (values[middle] - values[middle-1]); short > 0 {
			values[middle] += short / 2
			values[middle-1] -= short / 2
		}
	}
	for k := middle + 1; k < len(values); k++ {
		values[k] = max(values[k], values[k-1]+apart)
	}
	for k := middle - 2; k >= 0; k-- {
		values[k] = min(values[k], values[k+1]-apart)
	}
}

// spacedOut moves sorted values by the least total amount until they are at
// least apart from each other. Values that are pushed together move as a block
// around their mean.
func spacedOut(values []float64, apart float64) []float64 {
	type block struct {
		sum   float64 // of the positions its first value would have
		count int
	}
	var blocks []block
	mean := func(b block) float64 { return b.sum / float64(b.count) }
	for k, v := range values {
		b := block{v - float64(k)*apart, 1}
		for len(blocks) > 0 && mean(blocks[len(blocks)-1]) > mean(b) {
			last := blocks[len(blocks)-1]
			b.sum, b.count = b.sum+last.sum, b.count+last.count
			blocks = blocks[:len(blocks)-1]
		}
		blocks = append(blocks, b)
	}
	out := make([]float64, 0, len(values))
	for _, b := range blocks {
		for range b.count {
			out = append(out, mean(b)+float64(len(out))*apart)
		}
	}
	return out
}
