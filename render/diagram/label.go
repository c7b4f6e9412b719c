package diagram

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

type word struct {
	content string
	at      scene.Point
	ink     scene.Ink
	of      string // what it names; empty for a word on the part itself
	hole    int    // index of the hole that contains its position; −1 for none
}

// The name of a ring must be within nameNear of the ring's centre and at least
// nameNearer closer to it than to any other ring, in millimetres.
const (
	nameNear   = 7.5
	nameNearer = 0.6
	// wordAway is how far a word may be from its position on the part. Further
	// away, it seems to belong to something else.
	wordAway = 20.0
)

// choices lists the placements for one of the words.
func (s *sketch) choices(words []word, k, tier int) []placement {
	w, how := words[k], labelTiers[tier]
	places := s.labelPlaces(w, how.nudges, how.air)
	return slices.DeleteFunc(places, func(p placement) bool { return misread(p.from, w, words, how.nearer) })
}

func (s *sketch) setLabels(words []word, items []item) {
	s.worded = len(words) + len(s.out.Dropped)
	for k, w := range words {
		it := &items[k]
		if it.chosen == nowhere {
			s.out.Dropped = append(s.out.Dropped, w.content)
			continue
		}
		p := it.choices[it.chosen]
		t := font.Set(scene.Text{
			At:   scene.Point{X: p.from.X, Y: p.from.Y + s.req.SmallEm*font.CapHeight/2},
			Size: s.req.SmallEm, Anchor: scene.Middle, Ink: w.ink, Content: w.content, Tag: scene.Tag{Name: w.of},
		})
		if w.of != "" {
			t.Tag.Role = scene.Label
		}
		s.add(t)
		s.space.TakeBox(t.Box())
	}
}

// labels returns all words on the part.
func (s *sketch) labels(stations []word) []word {
	var words []word
	add := func(content string, at scene.Point, ink scene.Ink) {
		if content != "" {
			words = append(words, word{content, at, ink, "", s.holeAt(at)})
		}
	}
	joint := s.req.Plan.Joint
	for _, b := range joint.Bores {
		add(b.Label, s.view.at(b.Centre), scene.Black)
	}
	words = append(words, stations...)
	for _, l := range joint.Labels {
		add(l.Text, s.view.at(l.At), scene.Black)
	}
	return words
}

// labelTiers are the placements to try for a label: nearby with the preferred
// clearance, nearby with the least clearance, then further away.
var labelTiers = []struct {
	nudges []scene.Point
	air    float64 // in millimetres
	nearer float64 // it must be this many times closer to what it names than to anything else
}{{nudges, plentyAir, 1.3}, {nudges, 0.2, 1.3}, {nudges, 0.2, 1}, {farNudges, plentyAir, 1}}

// nearTiers is the number of tiers that are nearby.
const nearTiers = 3

// labelPlaces lists the free placements for a word; from is the position of its
// middle.
func (s *sketch) labelPlaces(w word, nudges []scene.Point, air float64) []placement {
	var out []placement
	extent := textExtent(w.content, scene.Regular, s.req.SmallEm)
	capital := s.req.SmallEm * font.CapHeight
	for k, step := range nudges {
		at := scene.Point{X: w.at.X + step.X, Y: w.at.Y + step.Y}
		foot := at.Y + capital/2
		tail := scene.Text{Size: s.req.SmallEm, Content: w.content}.Box().Bottom
		box := scene.Box{Left: at.X - extent.X/2, Right: at.X + extent.X/2, Top: foot + tail - extent.Y, Bottom: foot + tail}
		if s.space.FreeBox(box, air) && s.nearEnough(w, box) && !s.inOtherHole(w, box) {
			out = append(out, placement{box: box, from: at, cost: float64(k) / 10})
		}
	}
	return out
}

// nearEnough reports whether a name is close enough to the ring it names. Words
// on the part itself may be further away.
func (s *sketch) nearEnough(w word, box scene.Box) bool {
	if w.of == "" {
		return true
	}
	own := math.Sqrt(scene.SquareToBox(s.rings[w.of], box))
	if own > nameNear {
		return false
	}
	for name, at := range s.rings {
		if name != w.of && math.Sqrt(scene.SquareToBox(at, box)) < own+nameNearer {
			return false
		}
	}
	return true
}

// holeAt returns the index of the bore or dowel that contains a point, or −1.
func (s *sketch) holeAt(at scene.Point) int {
	return slices.IndexFunc(s.holes, func(h hole) bool { return h.at.Distance(at) < h.radius })
}

// inOtherHole reports whether a word would be in a bore that it does not name,
// and be read as the name of that bore.
func (s *sketch) inOtherHole(w word, box scene.Box) bool {
	for k, h := range s.holes {
		if k != w.hole && scene.SquareToBox(h.at, box) < h.radius*h.radius {
			return true
		}
	}
	return false
}

// misread reports whether a word placed there would be read as the name of
// something else that is as close. Names of bores, names of stations and words
// on the part are different kinds and are not confused.
func misread(there scene.Point, own word, words []word, nearer float64) bool {
	far := nearer * there.Distance(own.at)
	return slices.ContainsFunc(words, func(other word) bool {
		return other != own && other.ink == own.ink && there.Distance(other.at) < far-0.01
	})
}

var (
	nudges    = nudged(0, 2, -2, 4, -4, 6, -6, 8, -8, 11, -11, 14, -14)
	farNudges = nudged(17, -17)
)

func nudged(down ...float64) []scene.Point {
	var all []scene.Point
	for _, y := range down {
		for _, x := range []float64{0, 3, -3, 6, -6, 10, -10, 15, -15, 20, -20} {
			if step := (scene.Point{X: x, Y: y}); math.Hypot(x, y) <= wordAway {
				all = append(all, step)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b scene.Point) int {
		return int(a.X*a.X+4*a.Y*a.Y) - int(b.X*b.X+4*b.Y*b.Y)
	})
	return all
}

// stations draws the rings of all stations and returns their names.
func (s *sketch) stations() []word {
	s.rings = map[string]scene.Point{}
	var names []word
	for _, st := range s.req.Plan.Joint.Stations {
		name := cmp.Or(st.Label, st.ID)
		if at, ok := s.station(st); ok {
			names = append(names, word{name, at, scene.Black, stationName(st), s.holeAt(at)})
		} else { // without its ring, a name would seem to belong to another one
			s.out.Dropped = append(s.out.Dropped, name)
		}
	}
	return names
}

// station draws a small ring at the position of a part that must go back to its
// own place, smaller where space is tight. It returns the position for the
// name.
func (s *sketch) station(st geometry.Station) (name scene.Point, ok bool) {
	at := s.view.at(st.At)
	for _, ring := range stationRings {
		if !s.space.FreeOfMarks(scene.BoxAbout(at, 2*ring.radius, 2*ring.radius), ring.air) {
			continue
		}
		s.add(scene.Shape{Path: scene.Circle(at.X, at.Y, ring.radius), Fill: scene.White, Stroke: scene.Grey, Width: 0.3, Tag: scene.Tag{Name: stationName(st), Role: scene.Spot}})
		s.space.TakeDisc(at, ring.radius, stationName(st))
		s.rings[stationName(st)] = at
		at.Y += ring.radius + s.req.SmallEm*0.75
		return at, true
	}
	return at, false
}

// stationRings are the ring sizes to try, best first, in millimetres.
var stationRings = []struct{ radius, air float64 }{{1.2, 0.7}, {0.9, 0.3}, {0.7, 0.2}}

func stationName(st geometry.Station) string { return "station " + st.ID }

// clusterGap is the distance from a mark to the line round its cluster.
const clusterGap = 0.6

// drawClusters draws a line around fasteners that are tightened together,
// dashed where no spring pushes against them.
func (s *sketch) drawClusters() {
	for k, c := range s.req.Plan.Joint.Clusters {
		shape := scene.Shape{Path: s.aroundCluster(k, clusterGap), Stroke: scene.Grey, Width: 0.35}
		if s.req.Plan.Unloaded(c) {
			shape.Dash = 1.2
		}
		s.add(shape)
		s.space.TakeEdge(shape.Path)
	}
}

// aroundCluster is the line around a cluster, at a distance from each of its
// marks.
func (s *sketch) aroundCluster(cluster int, gap float64) scene.Path {
	joint := s.req.Plan.Joint
	index := joint.Index()
	var points, rims []geometry.Point
	var reaches []float64
	for _, id := range joint.Clusters[cluster].Of {
		i := index[id]
		points, reaches = append(points, joint.Fasteners[i].At), append(reaches, s.reach(i)+gap)
		rims = append(rims, circle(s.marks[i].at, s.reach(i)+gap)...)
	}
	if slices.Min(reaches) == slices.Max(reaches) {
		return around(s.view.all(geometry.Hull(points)), reaches[0])
	}
	var line []scene.Point
	for _, p := range geometry.Hull(rims) {
		line = append(line, scene.Point(p))
	}
	return scene.Polyline(line, true)
}

// circle returns points on a circle on the page.
func circle(at scene.Point, radius float64) []geometry.Point {
	const count = 48
	points := make([]geometry.Point, count)
	for k := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / count)
		points[k] = geometry.Point{X: at.X + radius*cos, Y: at.Y + radius*sin}
	}
	return points
}
