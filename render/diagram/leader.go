package diagram

import (
	"math"
	"slices"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// directions in which a number may stand beside its mark, best first: the
// eight plain ones, then those between.
var directions = func() []float64 {
	deg := []float64{0, 180, 90, 270, 45, 135, 315, 225}
	for d := 22.5; d < 360; d += 45 {
		deg = append(deg, d)
	}
	return deg
}()

// distances from the rim of a mark to its number, in millimetres. Beyond the
// first a leader line joins the two.
var distances = []float64{0.6, 3, 6, 10, 15, 21}

// placement is a place for a text beside a mark.
type placement struct {
	box    scene.Box
	from   scene.Point // of the leader, on the rim
	to     scene.Point
	leader bool
}

// hopeless is the number of fasteners past which no paper has room for long
// leaders, and looking for them would take long.
const hopeless = 800

// placeLed finds a place for every number that stands outside its mark. Those
// with the least room choose first.
func (s *sketch) placeLed(z size) {
	if !z.led {
		return
	}
	s.air = littleAir
	var waiting []int
	for i := range s.marks {
		if s.text(i) != "" {
			waiting = append(waiting, i)
		}
	}
	choices := make(map[int]int, len(waiting))
	for _, i := range waiting {
		choices[i] = s.countFree(i, z)
	}
	slices.SortStableFunc(waiting, func(a, b int) int { return choices[a] - choices[b] })
	reach := distances
	if len(waiting) > hopeless {
		reach = distances[:1]
	}
	for _, i := range waiting {
		place, ok := s.find(i, s.numberSize(i, z), reach)
		if !ok {
			s.out.Unplaced = append(s.out.Unplaced, i)
			continue
		}
		s.drawLed(i, place, z)
	}
	slices.Sort(s.out.Unplaced)
}

func (s *sketch) numberSize(i int, z size) scene.Point {
	return scene.Point{X: font.Width(s.text(i), scene.Bold, z.em()), Y: z.capMm}
}

func (s *sketch) countFree(i int, z size) int {
	n := 0
	for _, distance := range distances[:2] {
		for _, deg := range directions {
			if s.fits(i, s.beside(i, s.numberSize(i, z), deg, distance)) {
				n++
			}
		}
	}
	return n
}

// find gives the nearest free place for a text of the given extent.
func (s *sketch) find(i int, extent scene.Point, distances []float64) (placement, bool) {
	for _, distance := range distances {
		for _, deg := range s.outwards(i) {
			if place := s.beside(i, extent, deg, distance); s.fits(i, place) {
				return place, true
			}
		}
	}
	return placement{}, false
}

// outwards sorts the directions so that a number rather stands away from the
// middle of the part, where there is room.
func (s *sketch) outwards(i int) []float64 {
	m, c := s.marks[i].at, s.view.centre
	away := math.Atan2(c.Y-m.Y, m.X-c.X) * 180 / math.Pi
	off := func(deg float64) float64 { return math.Abs(math.Remainder(deg-away, 360)) }
	sorted := slices.Clone(directions)
	slices.SortStableFunc(sorted, func(a, b float64) int {
		return int(off(a)/45.1) - int(off(b)/45.1)
	})
	return sorted
}

// beside gives the place in one direction at one distance from the mark.
func (s *sketch) beside(i int, extent scene.Point, deg, distance float64) placement {
	m := s.marks[i]
	sin, cos := math.Sincos(deg * math.Pi / 180)
	rim := m.radius*m.shape.rim(deg) + s.rim(i)
	at := func(reach float64) scene.Point { return scene.Point{X: m.at.X + reach*cos, Y: m.at.Y - reach*sin} }
	box := func(reach float64) scene.Box {
		c := at(reach)
		return scene.Box{Left: c.X - extent.X/2, Top: c.Y - extent.Y/2, Right: c.X + extent.X/2, Bottom: c.Y + extent.Y/2}
	}
	// Push the box out until its near side is at the distance.
	near, far := rim+distance, rim+distance+math.Hypot(extent.X, extent.Y)/2
	for range 10 {
		if middle := (near + far) / 2; distanceToBox(m.at, box(middle)) < rim+distance {
			near = middle
		} else {
			far = middle
		}
	}
	p := placement{box: box(far), from: at(rim), leader: distance > 1}
	p.to = along(nearestIn(m.at, p.box), m.at, 0.4)
	return p
}

// nearestIn gives the place of a box that is nearest to p.
func nearestIn(p scene.Point, b scene.Box) scene.Point {
	return scene.Point{X: math.Max(b.Left, math.Min(b.Right, p.X)), Y: math.Max(b.Top, math.Min(b.Bottom, p.Y))}
}

func (s *sketch) fits(i int, p placement) bool {
	if !s.space.freeBox(p.box, s.name(i), s.air) || distanceToBox(s.marks[i].at, p.box) < s.marks[i].radius*s.marks[i].shape.inner()+s.rim(i)+0.3 {
		return false
	}
	return !p.leader || s.space.freeLine(p.from, p.to, s.name(i))
}

// drawLed draws a number and its leader and keeps their places free.
func (s *sketch) drawLed(i int, p placement, z size) {
	tag := scene.Tag{Name: s.name(i), Role: scene.Trail}
	if p.leader {
		s.add(scene.Shape{Path: scene.Polyline([]scene.Point{p.from, p.to}, false), Stroke: scene.Grey, Width: 0.25, Tag: tag})
		s.space.takeLine(p.from, p.to)
	}
	s.add(numberText(p.box.Centre(), z, scene.Black, s.text(i), s.name(i)))
	s.space.takeBox(p.box)
}

// drawBesides puts the small second numbers beside their marks.
func (s *sketch) drawBesides() {
	for i, small := range s.req.Beside {
		if small == "" {
			continue
		}
		extent := scene.Point{X: font.Width(small, scene.Regular, SmallEm), Y: SmallEm * font.CapHeight}
		place, ok := s.find(i, extent, distances[:1])
		if !ok {
			s.out.BesideLeftOut++
			continue
		}
		s.add(font.Set(scene.Text{
			At: scene.Point{X: place.box.Centre().X, Y: place.box.Bottom}, Size: SmallEm, Anchor: scene.Middle,
			Ink: scene.Black, Content: small, Tag: scene.Tag{Name: s.name(i), Role: scene.Number},
		}))
		s.space.takeBox(place.box)
	}
}
