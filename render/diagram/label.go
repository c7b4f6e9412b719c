package diagram

import (
	"slices"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// drawLabels sets the words on the part: labels of bores and stations first,
// since they belong to a place, then the free ones.
func (s *sketch) drawLabels() {
	joint := s.req.Plan.Joint
	for _, b := range joint.Bores {
		s.label(b.Label, s.view.at(b.Centre), scene.Grey)
	}
	for _, st := range joint.Stations {
		s.station(st)
	}
	for _, l := range joint.Labels {
		s.label(l.Text, s.view.at(l.At), scene.Black)
	}
}

// nudges are the steps, in millimetres, by which a label may leave its place:
// up and down first, then aside.
var nudges = func() []scene.Point {
	var all []scene.Point
	for _, y := range []float64{0, 2, -2, 4, -4, 6, -6, 8, -8, 11, -11, 14, -14} {
		for _, x := range []float64{0, 3, -3, 6, -6, 10, -10, 15, -15, 20, -20, 30, -30, 45, -45} {
			all = append(all, scene.Point{X: x, Y: y})
		}
	}
	slices.SortStableFunc(all, func(a, b scene.Point) int {
		return int(a.X*a.X+4*a.Y*a.Y) - int(b.X*b.X+4*b.Y*b.Y)
	})
	return all
}()

// label sets a word as near to its place as there is room.
func (s *sketch) label(word string, at scene.Point, ink scene.Ink) {
	if word == "" {
		return
	}
	for _, step := range nudges {
		t := font.Set(scene.Text{
			At:   scene.Point{X: at.X + step.X, Y: at.Y + step.Y + SmallEm*font.CapHeight/2},
			Size: SmallEm, Anchor: scene.Middle, Ink: ink, Content: word,
		})
		if s.space.freeBox(t.Box(), plentyAir) {
			s.add(t)
			s.space.takeBox(t.Box())
			return
		}
	}
	s.out.Dropped = append(s.out.Dropped, word)
}

// station draws the place of a part that must go home: a small dashed ring
// and its name.
func (s *sketch) station(st geometry.Station) {
	const radius = 1.2
	at := s.view.at(st.At)
	ring := scene.Box{Left: at.X, Top: at.Y, Right: at.X, Bottom: at.Y}.Grown(radius + 0.2)
	word := st.Label
	if word == "" {
		word = st.ID
	}
	if s.space.freeBox(ring, plentyAir) {
		s.add(scene.Shape{Path: scene.Circle(at.X, at.Y, radius), Fill: scene.White, Stroke: scene.Grey, Width: 0.3})
		s.space.takeDisc(at, radius, "station "+st.ID)
		at.Y += radius + SmallEm*0.75
	}
	s.label(word, at, scene.Grey)
}

// drawClusters joins the fasteners that go down together by a line round them,
// dashed where no spring pushes against them.
func (s *sketch) drawClusters() {
	joint := s.req.Plan.Joint
	index := map[string]int{}
	for i, f := range joint.Fasteners {
		index[f.ID] = i
	}
	for _, c := range joint.Clusters {
		var points []geometry.Point
		reach := 0.0
		for _, id := range c.Of {
			i := index[id]
			points = append(points, joint.Fasteners[i].At)
			reach = max(reach, s.reach(i))
		}
		shape := scene.Shape{Path: around(s.view.all(geometry.Hull(points)), reach+0.6), Stroke: scene.Grey, Width: 0.35}
		if c.Unloaded {
			shape.Dash = 1.2
		}
		s.add(shape)
	}
}
