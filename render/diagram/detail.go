package diagram

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// A part whose numbers do not fit on the paper is also drawn in sections. Each
// section enlarges what is inside a window and keeps the numbers of the whole
// part.

// cutout marks a request as a section of a part.
type cutout struct {
	window  geometry.Box
	whole   geometry.Joint
	numbers []int // of the section's fasteners, in the order of the whole
	of      int   // number of fasteners of the whole
	middle  geometry.Point
}

const (
	mostHalvings = 6 // of a part, to get sections
	fewest       = 4 // fasteners in a section that is not divided further

	looksInPiece = 800 // per fastener: one more section is better than a long search
)

// Detail is a drawing of one section of a part.
type Detail struct {
	Drawing
	window geometry.Box // on the part
}

// Details draws a part in sections, starting at the top left. In each section
// all numbers fit into the box. It returns none if the part has too many
// fasteners for any paper.
func Details(req Part, box scene.Box) []Detail {
	req.Box, req.Beside = box, nil
	if len(req.Plan.Joint.Fasteners) > hopeless {
		return nil
	}
	all := make([]int, len(req.Plan.Joint.Fasteners))
	for i := range all {
		all[i] = i
	}
	return req.parted(all, partBounds(req.Plan.Joint), mostHalvings)
}

// parted halves a window until all numbers of each half fit.
func (r Part) parted(fasteners []int, window geometry.Box, halvings int) []Detail {
	if len(fasteners) == 0 {
		return nil
	}
	points := make([]geometry.Point, len(fasteners))
	for k, i := range fasteners {
		points[k] = r.Plan.Joint.Fasteners[i].At
	}
	if halvings < mostHalvings {
		piece := r.section(fasteners, about(points, window))
		d := Draw(piece)
		if halvings == 0 || len(fasteners) <= fewest || len(d.Unplaced) == 0 {
			return []Detail{{d, piece.piece.window}}
		}
	}
	upright := window.Height()*r.Box.Width() > window.Width()*r.Box.Height()
	along := make([]float64, len(points))
	for k, p := range points {
		along[k] = p.X
		if upright {
			along[k] = p.Y
		}
	}
	at := halfway(along)
	low, high := window, window
	if upright {
		low.Max.Y, high.Min.Y = at, at
	} else {
		low.Max.X, high.Min.X = at, at
	}
	var below, above []int
	for k, i := range fasteners {
		if along[k] < at {
			below = append(below, i)
		} else {
			above = append(above, i)
		}
	}
	one, other := r.parted(below, low, halvings-1), r.parted(above, high, halvings-1)
	if upright {
		one, other = other, one // top one first
	}
	return append(one, other...)
}

// halfway returns where to cut between two fasteners: a wide gap near the
// middle.
func halfway(places []float64) float64 {
	at := slices.Sorted(slices.Values(places))
	first, last := at[0], at[len(at)-1]
	best, most := (first+last)/2, math.Inf(-1)
	for k := 1; k < len(at); k++ {
		middle := (at[k-1] + at[k]) / 2
		off := math.Abs(middle-(first+last)/2) / math.Max(last-first, 1e-9)
		if worth := (at[k] - at[k-1]) * (1 - 2.5*off); at[k] > at[k-1] && worth > most {
			best, most = middle, worth
		}
	}
	return best
}

func about(points []geometry.Point, window geometry.Box) geometry.Box {
	air := 10.0
	if spacing := geometry.Spacing(points); len(points) > 1 && spacing > 0 {
		air = 0.8 * spacing
	}
	b := geometry.Bounds(points).Grown(air)
	return geometry.Box{
		Min: geometry.Point{X: math.Max(b.Min.X, window.Min.X), Y: math.Max(b.Min.Y, window.Min.Y)},
		Max: geometry.Point{X: math.Min(b.Max.X, window.Max.X), Y: math.Min(b.Max.Y, window.Max.Y)},
	}
}

func (r Part) section(fasteners []int, window geometry.Box) Part {
	whole := r.Plan.Joint
	s := &cutout{window: window, whole: whole, of: len(whole.Fasteners)}
	b := partBounds(whole)
	s.middle = b.Min.Add(b.Max).Scale(0.5)
	numbers := make([]int, len(whole.Fasteners))
	for k, i := range r.Order {
		numbers[i] = k + 1
	}
	joint := geometry.Joint{Front: whole.Front}
	in := map[string]bool{}
	called := r.Called
	r.Called = nil
	for _, i := range fasteners {
		joint.Fasteners = append(joint.Fasteners, whole.Fasteners[i])
		s.numbers = append(s.numbers, numbers[i])
		if called != nil {
			r.Called = append(r.Called, called[i])
		}
		in[whole.Fasteners[i].ID] = true
	}
	for _, c := range whole.Clusters {
		if !slices.ContainsFunc(c.Of, func(id string) bool { return !in[id] }) {
			joint.Clusters = append(joint.Clusters, c)
		}
	}
	holds := func(p geometry.Point, reach float64) bool {
		b := window.Grown(-reach)
		return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
	}
	joint.Bores = kept(whole.Bores, func(b geometry.Bore) bool { return holds(b.Centre, b.Diameter/2) })
	joint.Dowels = kept(whole.Dowels, func(d geometry.Dowel) bool { return holds(d.Centre, d.Diameter/2) })
	joint.Labels = kept(whole.Labels, func(l geometry.Label) bool { return holds(l.At, 0) })
	joint.Stations = kept(whole.Stations, func(st geometry.Station) bool { return holds(st.At, 0) })
	r.Plan = plan.Plan{Joint: joint, Kinds: r.Plan.Kinds}
	r.Order, r.piece = nil, s
	return r
}

func kept[T any](all []T, keep func(T) bool) []T {
	return slices.DeleteFunc(slices.Clone(all), func(one T) bool { return !keep(one) })
}

// drawCut draws the parts of the body and of large bores inside the window. The
// frame is dashed where the part continues.
func (s *sketch) drawCut(z size) {
	whole := *s
	whole.req.piece, whole.req.Plan.Joint = nil, s.req.piece.whole
	box := s.partBox()
	frame := box.Path()
	s.add(scene.Shape{Path: frame, Stroke: scene.Grey, Width: 0.25, Dash: 1.6})
	s.space.TakeEdge(frame)
	joint := s.req.piece.whole
	for k, path := range whole.outline(joint, size{radius: z.radius}) {
		s.addCut(path, box, bodyFill(joint, k), scene.Black, 0.5)
	}
	for _, b := range joint.Bores {
		if !slices.Contains(s.req.Plan.Joint.Bores, b) {
			c := s.view.at(b.Centre)
			s.addCut(scene.Circle(c.X, c.Y, b.Diameter/2*s.view.scale), box, scene.White, scene.Grey, 0.35)
		}
	}
}

func (s *sketch) addCut(path scene.Path, box scene.Box, fill, stroke scene.Ink, width float64) {
	for _, run := range path.Flatten() {
		if area := clippedArea(run, box); len(area) > 2 {
			s.add(scene.Shape{Path: scene.Polyline(area, true), Fill: fill})
		}
		var lines scene.Path
		for k := 1; k < len(run); k++ {
			if a, b, ok := box.Clipped(run[k-1], run[k]); ok {
				lines.Stroke(a.X, a.Y, b.X, b.Y)
			}
		}
		if len(lines) > 0 {
			s.add(scene.Shape{Path: lines, Stroke: stroke, Width: width})
			s.space.TakeEdge(lines)
		}
	}
}

// clippedArea clips a polygon to a box (Sutherland and Hodgman 1974).
func clippedArea(area []scene.Point, box scene.Box) []scene.Point {
	for _, side := range []func(p scene.Point) float64{
		func(p scene.Point) float64 { return p.X - box.Left },
		func(p scene.Point) float64 { return box.Right - p.X },
		func(p scene.Point) float64 { return p.Y - box.Top },
		func(p scene.Point) float64 { return box.Bottom - p.Y },
	} {
		var out []scene.Point
		for k, q := range area {
			p := area[(k+len(area)-1)%len(area)]
			a, b := side(p), side(q)
			if (a < 0) != (b < 0) {
				t := a / (a - b)
				out = append(out, scene.Point{X: p.X + (q.X-p.X)*t, Y: p.Y + (q.Y-p.Y)*t})
			}
			if b >= 0 {
				out = append(out, q)
			}
		}
		area = out
	}
	return area
}

// Place draws a small overview of the whole part in a box, with the section
// shaded.
func (one Detail) Place(whole Part, box scene.Box) []scene.Item {
	s := newSketch(whole)
	s.view = fit(s.bounds, geometry.Bounds(whole.Plan.Joint.Points()), box.Grown(-0.6), 0)
	var items []scene.Item
	for _, path := range s.outline(whole.Plan.Joint, size{}) {
		items = append(items, scene.Shape{Path: path, Fill: scene.Tint, Stroke: scene.Black, Width: 0.35})
	}
	return append(items, scene.Shape{Path: s.view.box(one.window).Path(), Fill: scene.Black, Stroke: scene.Black, Width: 0.35})
}

func (r *Part) wholeCount() int {
	if r.piece != nil {
		return r.piece.of
	}
	return len(r.Plan.Joint.Fasteners)
}
