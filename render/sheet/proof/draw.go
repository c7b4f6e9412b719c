package proof

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// Lines over the picture are black with a white rim, so that they show on
// light and dark.
const (
	thin = 0.3
	rim  = 0.5
)

func (l *layout) stroke(path scene.Path, ink scene.Ink, width, dash float64, tag scene.Tag) {
	l.Add(scene.Shape{Path: path, Stroke: scene.White, Width: width + rim},
		scene.Shape{Path: path, Stroke: ink, Width: width, Dash: dash, Tag: tag})
}

func (l *layout) radius(s trace.Shape) float64 { return s.DiameterMm / 2 * l.scale }

// drawShape marks a shape by what it is taken for: a ring with a cross for a
// bolt, with a square round it for a dowel, with long centre lines for a bore;
// openings by their edge, spots by a cross. What is in doubt is dashed.
func (l *layout) drawShape(s trace.Shape) {
	c, r := l.at(s.At), l.radius(s)
	dash := 0.0
	if len(s.Doubts) > 0 {
		dash = 0.9
	}
	tag := scene.Tag{Name: s.ID}
	switch s.Role {
	case trace.Port, trace.Hole:
		if s.Round() {
			l.stroke(scene.Circle(c.X, c.Y, r), scene.Accent, thin, dash, tag)
		} else if len(s.Edge) > 2 {
			l.stroke(scene.Traced(s.Edge, l.at), scene.Accent, thin, dash, tag)
		}
	case trace.Spot:
		l.crossOut(c, max(r, 1), tag)
	case trace.Candidate:
		l.stroke(scene.Circle(c.X, c.Y, r), scene.Accent, thin, dash, tag)
		l.stroke(scene.Circle(c.X, c.Y, r+1.1), scene.Accent, thin, dash, scene.Tag{})
	case trace.Bore:
		l.stroke(scene.Circle(c.X, c.Y, r), scene.Black, thin, dash, tag)
		l.cross(c, 2.5)
	case trace.Dowel:
		l.stroke(scene.Circle(c.X, c.Y, r), scene.Black, thin, dash, tag)
		d := r + 0.8
		l.stroke(scene.Rect(c.X-d, c.Y-d, 2*d, 2*d, 0), scene.Black, thin, 0, tag)
		l.cross(c, min(0.6*r, 1.5))
	default:
		mark := scene.Tag{Name: s.ID, Role: scene.Mark} // the outermost ring is the mark
		if len(s.Doubts) > 0 {
			l.stroke(scene.Circle(c.X, c.Y, r+1.1), scene.Black, thin, 0, mark)
			mark = tag
		}
		l.stroke(scene.Circle(c.X, c.Y, r), scene.Black, thin, dash, mark)
		l.cross(c, min(0.6*r, 1.5))
	}
	if s.Role != trace.Port && s.Role != trace.Bore {
		l.taken = append(l.taken, scene.Box{Left: c.X, Top: c.Y, Right: c.X, Bottom: c.Y}.Grown(l.reach(s)))
	}
}

// crossOut marks what is left out.
func (l *layout) crossOut(c scene.Point, half float64, tag scene.Tag) {
	l.stroke(segment(c.X-half, c.Y-half, c.X+half, c.Y+half), scene.Black, thin, 0, tag)
	l.stroke(segment(c.X-half, c.Y+half, c.X+half, c.Y-half), scene.Black, thin, 0, tag)
}

const speckHalf = 0.7

// drawSpeck crosses a speck that an eye sees, and keeps labels off it.
func (l *layout) drawSpeck(at geometry.Point) {
	c := l.at(at)
	l.crossOut(c, speckHalf, scene.Tag{})
	l.taken = append(l.taken, scene.BoxAbout(c, 2*speckHalf, 2*speckHalf))
}

func (l *layout) reach(s trace.Shape) float64 {
	r := l.radius(s)
	switch {
	case s.Role == trace.Spot:
		return max(r, 1)
	case s.Role == trace.Dowel:
		return r + 0.8 + thin
	case len(s.Doubts) > 0:
		return r + 1.1 + thin
	}
	return r + thin
}

func segment(x1, y1, x2, y2 float64) scene.Path {
	return scene.Polyline([]scene.Point{{X: x1, Y: y1}, {X: x2, Y: y2}}, false)
}

func (l *layout) cross(c scene.Point, half float64) {
	l.stroke(segment(c.X-half, c.Y, c.X+half, c.Y), scene.Black, 0.2, 0, scene.Tag{})
	l.stroke(segment(c.X, c.Y-half, c.X, c.Y+half), scene.Black, 0.2, 0, scene.Tag{})
}

func (l *layout) label(s trace.Shape) {
	words := s.ID
	if len(s.Doubts) > 0 {
		words += "?"
	}
	width := font.Width(words, scene.Bold, l.Paper.TextEm)
	const pad = 0.5
	capital := 0.72 * l.Paper.TextEm
	half := scene.Point{X: width/2 + pad, Y: capital/2 + pad}
	for _, c := range l.places(s, half) {
		box := scene.BoxAbout(c, 2*half.X, 2*half.Y)
		if !l.free(box) {
			continue
		}
		l.taken = append(l.taken, box.Grown(0.8))
		l.Add(scene.Shape{Path: scene.Rect(box.Left, box.Top, box.Width(), box.Height(), 0.5), Fill: scene.White, Tag: scene.Tag{Name: s.ID}})
		t := font.Set(scene.Text{At: scene.Point{X: c.X, Y: c.Y + capital/2}, Size: l.Paper.TextEm, Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black, Content: words})
		if s.Role == trace.Fastener {
			t.Tag = scene.Tag{Name: s.ID, Role: scene.Number}
		}
		l.Add(t)
		return
	}
	l.lost++
}

func (l *layout) places(s trace.Shape, half scene.Point) []scene.Point {
	c, r := l.at(s.At), l.reach(s)+0.4
	var places []scene.Point
	switch {
	case s.Role == trace.Bore || s.Role == trace.Port && s.Round():
		for _, step := range []float64{0, 5, -5, 10, -10, 15, -15} {
			places = append(places, scene.Point{X: c.X + half.X + 3.5, Y: c.Y + step + half.Y + 1})
		}
		if l.radius(s) > 2*half.X+5 {
			return places
		}
		places = nil
	case s.Role == trace.Port:
		places = l.within(s.Edge, half)
	}
	for _, away := range []float64{0, 0.25} {
		for _, deg := range []float64{0, 180, 90, 270, 45, 135, 225, 315} {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			places = append(places, scene.Point{X: c.X + cos*(r+away+half.X), Y: c.Y - sin*(r+away+half.Y)})
		}
	}
	return places
}

func (l *layout) within(edge []geometry.Point, half scene.Point) []scene.Point {
	around := geometry.Bounds(edge)
	const lines = 40
	type gap struct {
		at    scene.Point
		width float64
	}
	var gaps []gap
	for k := 1; k < lines; k++ {
		y := around.Min.Y + around.Height()*float64(k)/lines
		crossings := crossed(edge, y)
		for i := 0; i+1 < len(crossings); i += 2 {
			a, b := l.at(geometry.Point{X: crossings[i], Y: y}), l.at(geometry.Point{X: crossings[i+1], Y: y})
			if width := b.X - a.X; width > 2*half.X+1 {
				gaps = append(gaps, gap{scene.Point{X: (a.X + b.X) / 2, Y: a.Y}, width})
			}
		}
	}
	slices.SortStableFunc(gaps, func(a, b gap) int { return cmp.Compare(b.width, a.width) })
	places := make([]scene.Point, len(gaps))
	for i, g := range gaps {
		places[i] = g.at
	}
	return places
}

func crossed(edge []geometry.Point, y float64) []float64 {
	var xs []float64
	for i, a := range edge {
		b := edge[(i+1)%len(edge)]
		if (a.Y > y) != (b.Y > y) {
			xs = append(xs, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
		}
	}
	slices.Sort(xs)
	return xs
}

func (l *layout) free(box scene.Box) bool {
	return l.frame.Grown(-0.5).Holds(box) && !slices.ContainsFunc(l.taken, box.Meets)
}
