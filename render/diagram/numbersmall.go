package diagram

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/scene"
)

// besideReaches are the distances of a small number from its mark: clear of it,
// closer if there is no more room, or beyond the line around a cluster.
var besideReaches = [][]float64{{0.9, besideGap}, {clusterGap + 0.4}}

// drawWords places the small numbers and the words on the part. If one side
// leaves room for the words, all small numbers go on that side of their marks,
// so that none is mistaken for its neighbour's. Otherwise most do.
func (s *sketch) drawWords() {
	small, words := s.besided(), s.labels(s.stations())
	if len(small) == 0 {
		s.setLabels(words, s.mixed(nil, words, nil))
		return
	}
	var items []item
	var best func(i int) float64
	most := -1
	for _, side := range s.sides() {
		if items = s.alike(small, words, side); standing(items) == len(items) {
			s.out.Alike = true
			break
		}
		if n := standing(items); n > most {
			most, best = n, side
		}
	}
	if !s.out.Alike {
		items = s.mixed(small, words, best)
	}
	s.setBesides(small, items)
	s.setLabels(words, items[len(small):])
}

// besided lists the fasteners that have a small number.
func (s *sketch) besided() (all []int) {
	for i, small := range s.req.Beside {
		if small != "" {
			all = append(all, i)
		}
	}
	return all
}

// alike places the small numbers on one side of their marks, and words near
// their positions.
func (s *sketch) alike(small []int, words []word, side func(i int) float64) []item {
	return s.together(small, words, nearTiers, func(i, tier int) []placement {
		if tier > 0 {
			return nil
		}
		return s.fitting(i, s.ways(i, side(i)))
	})
}

// mixed places the small numbers wherever they fit, with a preference for one
// side.
func (s *sketch) mixed(small []int, words []word, side func(i int) float64) []item {
	return s.together(small, words, len(labelTiers), func(i, tier int) []placement {
		if tier >= len(besideReaches) {
			return nil
		}
		return s.besides(i, besideReaches[tier], side)
	})
}

func (s *sketch) together(small []int, words []word, tiers int, besides func(i, tier int) []placement) []item {
	q := newSearch(s.req.Box, len(small)+len(words), tiers, 100*len(small)+1500*len(words), func(item, tier int) []placement {
		if item < len(small) {
			return besides(small[item], tier)
		}
		return s.choices(words, item-len(small), tier)
	})
	q.run()
	return q.items
}

func standing(items []item) (n int) {
	for _, it := range items {
		if it.chosen != nowhere {
			n++
		}
	}
	return n
}

func (s *sketch) setBesides(small []int, items []item) {
	for k, i := range small {
		it := &items[k]
		if it.chosen == nowhere {
			s.out.BesideLeftOut++
			continue
		}
		p := it.choices[it.chosen]
		s.add(textIn(p, s.req.SmallEm, scene.Regular, s.req.Beside[i], s.name(i)))
		s.space.TakeBox(p.box)
	}
}

// sides are the sides for small numbers to try, best first. Each returns the
// direction for a fastener, in degrees.
func (s *sketch) sides() []func(i int) float64 {
	always := func(deg float64) func(int) float64 { return func(int) float64 { return deg } }
	turned := func(side func(int) float64) func(int) float64 { return func(i int) float64 { return side(i) + 180 } }
	out := s.upOrDown
	if s.allAtRim() {
		out = s.outwards
	}
	return []func(int) float64{always(90), always(270), out, turned(out), always(0), always(180)}
}

// allAtRim reports whether all fasteners are along the rim of the part.
func (s *sketch) allAtRim() bool {
	points := s.req.Plan.Joint.Points()
	rim := s.view.all(geometry.Hull(points))
	within := s.closest() * s.view.scale / 4
	return !slices.ContainsFunc(s.marks, func(m mark) bool { return toRim(m.at, rim) > within })
}

func toRim(at scene.Point, rim []scene.Point) float64 {
	least := math.Inf(1)
	for k := range rim {
		least = min(least, scene.SquareToLine(at, rim[k], rim[(k+1)%len(rim)]))
	}
	return math.Sqrt(least)
}

// upOrDown is up for fasteners in the upper half of the part, and down for
// those in the lower half.
func (s *sketch) upOrDown(i int) float64 {
	if s.off(i).Y < 0 {
		return 270
	}
	return 90
}

// outwards is the direction away from the middle of the fasteners, in degrees:
// radial on a round part, otherwise level or upright, whichever side is nearer.
func (s *sketch) outwards(i int) float64 {
	points := s.req.Plan.Joint.Points()
	if _, round := geometry.RoundPart(points); round {
		return s.away(i)
	}
	box, off := geometry.Bounds(points), s.off(i)
	switch level := math.Abs(off.X)*box.Height() > math.Abs(off.Y)*box.Width(); {
	case !level:
		return s.upOrDown(i)
	case off.X < 0:
		return 180
	}
	return 0
}

// off is the offset of a fastener from the middle of all.
func (s *sketch) off(i int) geometry.Point {
	points := s.req.Plan.Joint.Points()
	box := geometry.Bounds(points)
	return points[i].Sub(box.Min.Add(box.Max).Scale(0.5))
}

// ways lists the placements for a small number in a direction, clear of its
// mark or of the line around its cluster.
func (s *sketch) ways(i int, deg float64) (places []placement) {
	extent := textExtent(s.req.Beside[i], scene.Regular, s.req.SmallEm)
	for k, reach := range slices.Concat(besideReaches...) {
		places = append(places, s.beside(i, extent, deg, reach, float64(k)))
	}
	if line := s.clusterOf(i); line != nil {
		places = slices.DeleteFunc(places, func(p placement) bool { return scene.Inside(p.box.Centre(), line) })
	}
	return places
}

// Costs of a small number on another side than most, and between the fasteners
// of its cluster, in millimetres of leader.
const (
	otherSideCost = 2.0
	insideCost    = 3.0
)

// besides lists the placements for a small number, those on the given side
// first. In a cluster, placements inside and outside the line around it
// compete.
func (s *sketch) besides(i int, reaches []float64, side func(i int) float64) []placement {
	line := s.clusterOf(i)
	if line != nil {
		reaches = slices.Concat(besideReaches...)
	}
	places := s.candidates(i, textExtent(s.req.Beside[i], scene.Regular, s.req.SmallEm), reaches)
	for k := range places {
		places[k].cost += otherSideCost
		if line != nil && scene.Inside(places[k].box.Centre(), line) {
			places[k].cost += insideCost
		}
	}
	return append(s.fitting(i, s.ways(i, side(i))), places...)
}

// clusterOf is the line around the cluster of a fastener; nil if it is in none.
func (s *sketch) clusterOf(i int) []scene.Point {
	for k, c := range s.req.Plan.Joint.Clusters {
		if slices.Contains(c.Of, s.name(i)) {
			return s.aroundCluster(k, clusterGap).Flatten()[0]
		}
	}
	return nil
}
