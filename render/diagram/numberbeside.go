package diagram

import (
	"math"
	"slices"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// placement is a position for a text beside a mark, or further away on a
// leader.
type placement struct {
	box      scene.Box
	from, to scene.Point // of the leader: from the rim of the mark to the text
	bend     scene.Point // where the leader bends, if bent
	led      bool
	bent     bool
	upward   bool    // the text reads from below to above
	cost     float64 // in millimetres of leader; lower is better
}

// everyLine calls does for each straight line of the leader until it returns
// false.
func (p *placement) everyLine(does func(from, to scene.Point) bool) bool {
	switch {
	case !p.led:
		return true
	case p.bent:
		return does(p.from, p.bend) && does(p.bend, p.to)
	}
	return does(p.from, p.to)
}

const (
	besideGap   = 0.6  // mm from a mark to a text that needs no leader
	mostBeside  = 1.05 // most mm from a mark to a text without a leader: 1.5 on a card enlarged to A3
	leastLeader = 2.0  // mm from a mark to a text that needs one
	leaderGap   = 0.4  // mm from a text to the end of its leader
	leaderAir   = 0.3  // least mm from a leader to anything but its own mark and text
	turnCost    = 0.06 // cost of one step down the list of directions
)

// reaches are the distances from the rim of a mark to its text, in millimetres,
// in the order of the search. The first needs no leader.
var reaches = [][]float64{{besideGap}, {3, 5}, {7.5, 10.5, 14}, {18, 22.5, 27.5}}

// Costs of turning a text, and of little clearance around it.
const (
	upwardCost  = 4.0
	crampedCost = 1.5
)

// directions are the directions from a mark to its text, best first: the eight
// main ones, then those between them.
var directions = func() []float64 {
	deg := []float64{0, 180, 90, 270, 45, 135, 315, 225}
	for d := 22.5; d < 360; d += 45 {
		deg = append(deg, d)
	}
	return deg
}()

// spokes are the directions of leaders for fasteners on a string, relative to
// straight out or, turned by 180°, straight in.
var spokes = []float64{0, 8, -8, 16, -16, 26, -26, 38, -38}

// leaning returns the directions for a fastener's text, best first. Around the
// rim of a part they point away from its middle. In a field they are the same
// for all, so that the numbers look alike.
func (s *sketch) leaning(i int) []float64 {
	if !s.mostlyStrung() || !s.atRim(i) {
		return plainField
	}
	away := s.away(i)
	off := func(deg float64) float64 { return math.Abs(math.Remainder(deg-away, 360)) }
	sorted := slices.Clone(directions)
	slices.SortStableFunc(sorted, func(a, b float64) int { return int(off(a)/45.1) - int(off(b)/45.1) })
	return sorted
}

// plainField are the directions for a fastener among others: above first, like
// a heading.
var plainField = func() []float64 {
	deg := []float64{90, 270, 0, 180, 45, 135, 315, 225}
	return append(deg, directions[8:]...)
}()

// middle is the middle of the part on the page. In a section it can be out of
// sight.
func (s *sketch) middle() scene.Point {
	if s.req.piece != nil {
		return s.view.at(s.req.piece.middle)
	}
	return s.view.centre
}

// away is the direction from the middle of the part to a fastener, in degrees.
func (s *sketch) away(i int) float64 {
	m, c := s.marks[i].at, s.middle()
	return math.Atan2(c.Y-m.Y, m.X-c.X) * 180 / math.Pi
}

// atRim reports whether no other fastener lies further out in the same direction.
func (s *sketch) atRim(i int) bool {
	if s.rimmed == nil {
		s.rimmed = make([]bool, len(s.marks))
		for k := range s.marks {
			s.rimmed[k] = !s.shielded(k)
		}
	}
	return s.rimmed[i]
}

func (s *sketch) shielded(i int) bool {
	at, c := s.marks[i].at, s.middle()
	out := scene.Point{X: at.X - c.X, Y: at.Y - c.Y}
	for k, m := range s.marks {
		dx, dy := m.at.X-at.X, m.at.Y-at.Y
		along := dx*out.X + dy*out.Y
		if k != i && along > 0 && 2*along*along > (dx*dx+dy*dy)*(out.X*out.X+out.Y*out.Y) {
			return true // within 45° of the outward direction
		}
	}
	return false
}

// candidates lists the placements for a text at some reaches that no fixed
// thing blocks.
func (s *sketch) candidates(i int, extent scene.Point, reaches []float64) []placement {
	var places []placement
	_, strung := s.across(i)
	for _, reach := range reaches {
		if reach < leastLeader {
			for k, deg := range s.leaning(i) {
				places = append(places, s.beside(i, extent, deg, reach, float64(k)*turnCost))
			}
			continue
		}
		for k, deg := range s.spokesOf(i) {
			cost := 2 + reach + float64(k)*3*turnCost
			places = append(places, s.beside(i, extent, deg, reach, cost))
			if strung {
				places = append(places, s.upward(i, extent, deg, reach, cost+upwardCost))
			}
		}
	}
	return s.fitting(i, places)
}

// fitting keeps the placements that no fixed thing blocks.
func (s *sketch) fitting(i int, places []placement) (free []placement) {
	for _, p := range places {
		if s.fits(i, p, comfortable) {
			free = append(free, p)
		} else if s.fits(i, p, cramped) {
			p.cost += crampedCost
			free = append(free, p)
		}
	}
	return free
}

// spokesOf returns the directions of leaders for a fastener: both ways across
// its string, or the main directions if it is on none.
func (s *sketch) spokesOf(i int) []float64 {
	across, strung := s.across(i)
	if !strung {
		return s.leaning(i)
	}
	if math.Abs(math.Remainder(across-s.away(i), 360)) > 90 {
		across += 180 // outwards first
	}
	var all []float64
	for _, turn := range spokes {
		all = append(all, across+turn, across+180+turn)
	}
	return all
}

// beside returns the placement in one direction at one distance from the rim of
// the mark.
func (s *sketch) beside(i int, extent scene.Point, deg, reach, cost float64) placement {
	m := s.marks[i]
	sin, cos := math.Sincos(deg * math.Pi / 180)
	rim := m.shape.rim(deg) * (m.radius + s.outer(i))
	out := pushed(extent, math.Abs(cos), math.Abs(sin), rim+reach)
	c := scene.Point{X: m.at.X + out*cos, Y: m.at.Y - out*sin}
	p := placement{
		box:  scene.BoxAbout(c, extent.X, extent.Y),
		from: scene.Point{X: m.at.X + rim*cos, Y: m.at.Y - rim*sin},
		led:  reach >= leastLeader,
		cost: cost,
	}
	p.to = along(p.box.Nearest(p.from), p.from, leaderGap)
	return p
}

// pushed returns how far the middle of a box must move in a direction until its
// near side is at the distance. cos and sin of the direction must be at least
// 0.
func pushed(extent scene.Point, cos, sin, distance float64) float64 {
	w, h := extent.X/2, extent.Y/2
	if out := (distance + w) / cos; out*sin <= h {
		return out // to the near side, straight across
	}
	if out := (distance + h) / sin; out*cos <= w {
		return out // straight up or down
	}
	// To the near corner: (out·cos − w)² + (out·sin − h)² = distance².
	half := w*cos + h*sin
	return half + math.Sqrt(math.Max(0, half*half-w*w-h*h+distance*distance))
}

func (s *sketch) upward(i int, extent scene.Point, deg, reach, cost float64) placement {
	p := s.beside(i, scene.Point{X: extent.Y, Y: extent.X}, deg, reach, cost)
	p.upward = true
	return p
}

// elbowRoom is the clearance that a text and its leader need, in millimetres.
type elbowRoom struct {
	line     float64 // from a text to a line of the part, or another text
	mark     float64 // from a text to another mark
	nearerBy float64 // how much closer a text without a leader is to its own mark than to others
	leader   float64 // from a leader to anything but its own mark and text
}

var (
	comfortable = elbowRoom{line: plentyAir, mark: 1.0, nearerBy: 1.0, leader: 0.6}
	cramped     = elbowRoom{line: 0.15, mark: 0.45, nearerBy: 0.25, leader: leaderAir}
)

func (s *sketch) fits(i int, p placement, keep elbowRoom) bool {
	m := s.marks[i]
	near := p.box.Nearest(m.at)
	gap := math.Hypot(near.X-m.at.X, near.Y-m.at.Y)
	if gap < m.shape.inner()*(m.radius+s.outer(i))+0.3 || m.cornerIn(p.box.Grown(0.2), s.outer(i)) {
		return false
	}
	fromOthers := keep.mark
	if !p.led {
		deg := math.Atan2(m.at.Y-near.Y, near.X-m.at.X) * 180 / math.Pi
		fromOwn := gap - m.shape.rim(deg)*(m.radius+s.outer(i))
		if fromOwn > mostBeside {
			return false
		}
		fromOthers = math.Max(fromOthers, fromOwn+keep.nearerBy)
	}
	return s.space.FreeNumber(p.box, s.name(i), keep.line, fromOthers) && (p.led || !s.inHoleOf(p.box, m.at)) &&
		p.everyLine(func(from, to scene.Point) bool { return s.space.FreeLine(from, to, s.name(i), keep.leader) })
}

// inHoleOf reports whether a text without a leader would be in a bore that does
// not contain its mark. It would be read as the name of the bore.
func (s *sketch) inHoleOf(text scene.Box, mark scene.Point) bool {
	return slices.ContainsFunc(s.holes, func(h hole) bool {
		return h.at.Distance(text.Centre()) < h.radius && h.at.Distance(mark) > h.radius
	})
}

// textExtent is the size of a text beside a mark, as the layout check measures
// it.
func textExtent(content string, weight scene.Weight, em float64) scene.Point {
	b := scene.Text{Size: em, Width: font.Width(content, weight, em), Content: content}.Box()
	return scene.Point{X: b.Width(), Y: b.Height()}
}
