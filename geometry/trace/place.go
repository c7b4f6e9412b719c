package trace

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
)

// View brings places of the traced part back to the picture.
type View struct {
	frame    Frame
	turnDeg  float64
	mirrored bool
	origin   geometry.Point // on the glass, turned and mirrored
}

// part returns the place in the part of a place on the glass.
func (v View) part(glass geometry.Point) geometry.Point {
	if v.mirrored {
		glass.X = -glass.X
	}
	return turned(glass, v.turnDeg).Sub(v.origin)
}

// Pixel returns the place in the picture, from its top left corner, of a place in
// the part.
func (v View) Pixel(p geometry.Point) geometry.Point {
	glass := turned(p.Add(v.origin), -v.turnDeg)
	if v.mirrored {
		glass.X = -glass.X
	}
	return v.frame.Pixel(glass)
}

func turned(p geometry.Point, deg float64) geometry.Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return geometry.Point{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y}
}

// outlineToleranceMm is how far the simplified outline may lie off the edge.
const (
	outlineToleranceMm = 0.2
	straightMm         = 0.3 // how far a straight side may bend
	mostOutlinePoints  = 300
	mostPortPoints     = 60
)

// place lays the part level with its middle at [0, 0], and numbers what was
// found.
func (t *tracer) place(found *Found, outline []geometry.Point) {
	v := View{frame: t.frame, mirrored: t.options.Mirrored}
	if !t.options.AsScanned {
		var holes []geometry.Point
		for _, s := range found.Shapes {
			if s.Round() {
				holes = append(holes, v.part(s.At))
			}
		}
		v.turnDeg, found.Straightened = straightTurn(holes, simplified(mapped(outline, v.part), straightMm, len(outline)))
	}
	found.TurnedDeg = v.turnDeg
	v.turnDeg += t.options.TurnDeg
	v.origin = middle(found.Shapes, mapped(outline, v.part), v)
	found.View = v
	found.Outline = simplified(withoutNicks(simplified(mapped(outline, v.part), outlineToleranceMm, len(outline))), outlineToleranceMm, mostOutlinePoints)
	found.SeenSpecks = mapped(found.SeenSpecks, v.part)
	for i := range found.Shapes {
		s := &found.Shapes[i]
		s.Pixel, s.At = v.frame.Pixel(s.At), v.part(s.At)
		s.Edge = simplified(mapped(s.Edge, v.part), outlineToleranceMm, mostPortPoints)
	}
}

// middle is the middle of the box round the fasteners, or of the outline where
// there are fewer than three.
func middle(shapes []Shape, outline []geometry.Point, v View) geometry.Point {
	var places []geometry.Point
	for _, s := range shapes {
		if s.Role == Fastener {
			places = append(places, v.part(s.At))
		}
	}
	if len(places) < 3 {
		places = outline
	}
	b := geometry.Bounds(places)
	return b.Min.Add(b.Max).Scale(0.5)
}

func mapped(points []geometry.Point, to func(geometry.Point) geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[i] = to(p)
	}
	return out
}

var roles = []Role{Fastener, Dowel, Bore, Hole, Port, Spot, Candidate}

// initial is the letter that the ids of a role begin with.
func initial(role Role) string { return strings.ToUpper(string(role[:1])) }

// number sorts the shapes by role and in reading order, and names them by the
// first letter of their role, and their doubts.
func (f *Found) number() {
	var sorted []Shape
	for _, role := range roles {
		some := keep(f.Shapes, func(i int) bool { return f.Shapes[i].Role == role })
		inReadingOrder(some)
		for i := range some {
			some[i].ID = initial(role) + strconv.Itoa(i+1)
		}
		sorted = append(sorted, some...)
	}
	f.Shapes = sorted
	f.doubtLoners()
	for _, s := range f.Shapes {
		for i := range s.Doubts {
			s.Doubts[i].At.IDs = []string{s.ID}
		}
	}
}

// rowMm is how far places of one row may lie apart in height.
const rowMm = 2

func inReadingOrder(shapes []Shape) {
	slices.SortStableFunc(shapes, func(a, b Shape) int { return cmp.Compare(b.At.Y, a.At.Y) })
	for from := 0; from < len(shapes); {
		to := from + 1
		for to < len(shapes) && shapes[to-1].At.Y-shapes[to].At.Y < rowMm && shapes[from].At.Y-shapes[to].At.Y < 2*rowMm {
			to++
		}
		slices.SortStableFunc(shapes[from:to], func(a, b Shape) int { return cmp.Compare(a.At.X, b.At.X) })
		from = to
	}
}

// doubtLoners doubts a hole that is alone of its size and much smaller than the
// others: round dirt looks like that.
func (f *Found) doubtLoners() {
	count, sizes := map[int]int{}, []float64{}
	for _, s := range f.Shapes {
		if s.Role == Fastener {
			count[s.Group]++
			sizes = append(sizes, s.DiameterMm)
		}
	}
	usual := median(sizes)
	for i := range f.Shapes {
		s := &f.Shapes[i]
		if s.Role == Fastener && count[s.Group] == 1 && s.DiameterMm < 0.65*usual {
			s.doubt(Alone, nil)
		}
	}
}
