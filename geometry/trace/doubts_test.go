package trace

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
)

func doubts(s Shape) (codes []finding.Code) {
	for _, f := range s.Doubts {
		codes = append(codes, f.Code)
	}
	return codes
}

// What an eye has to judge of a round hole, one limit at a time: an edge that is round
// for less than 85 %, one more oval than it was drawn, less than 60 % of the contrast,
// fewer than 12 pixels across (limits of the design: common practice, no source).
func TestDoubtsOfAHole(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name           string
		kept, contrast float64
		diameter, oval float64
		side           float64
		want           []finding.Code
	}{
		{"sound", 0.85, 0.6, 8, 0.06, 0.1, nil},
		{"torn", 0.849, 0.6, 8, 0.06, 0.1, []finding.Code{Torn}},
		{"oval", 0.85, 0.6, 8, 0.061, 0.1, []finding.Code{NotRound}},
		{"oval, but within a share of a large hole", 0.85, 0.6, 40, 0.29, 0.1, nil}, // 0.75 · 0.02 · 40 / 2
		{"more", 0.85, 0.6, 40, 0.31, 0.1, []finding.Code{NotRound}},
		{"oval, but within a coarse pixel", 0.85, 0.6, 8, 0.24, 0.5, nil},
		{"faint", 0.85, 0.599, 8, 0.06, 0.1, []finding.Code{Faint}},
		{"coarse", 0.85, 0.6, 5.9, 0.06, 0.5, []finding.Code{Coarse}},
		{"just fine enough", 0.85, 0.6, 6, 0.06, 0.5, nil},
		{"all of it", 0.5, 0.1, 1, 0.9, 0.5, []finding.Code{Torn, NotRound, Faint, Coarse}},
	} {
		s := Shape{Kept: c.kept, Contrast: c.contrast, DiameterMm: c.diameter}
		if s.doubtful(c.oval, c.side); !slices.Equal(doubts(s), c.want) {
			t.Errorf("%s: %v, want %v", c.name, doubts(s), c.want)
		}
	}
	s := Shape{Kept: 0.7, Contrast: 1, DiameterMm: 8}
	s.doubtful(0.5, 0.1)
	if v := s.Doubts[1].Values; v["shortest"] != unit.Length(7) || v["longest"] != unit.Length(9) || s.Doubts[0].Values["round"] != 0.7 || s.Doubts[0].Severity != finding.Warning {
		t.Errorf("%v", s.Doubts)
	}
}

// ellipse has half axes long and short, turned.
func ellipse(long, short, deg float64) []geometry.Point {
	var edge []geometry.Point
	for k := range 720 {
		sin, cos := math.Sincos(float64(k) * math.Pi / 360)
		p := geometry.Point{X: long * cos, Y: short * sin}
		edge = append(edge, geometry.Polar(geometry.Point{X: 40, Y: -7}, p.Distance(geometry.Point{}), deg+p.AngleFrom(geometry.Point{})))
	}
	return edge
}

// slotOf is two half circles and the straights between.
func slotOf(length, width float64) []geometry.Point {
	var edge []geometry.Point
	for _, side := range []float64{1, -1} {
		for k := range 181 {
			edge = append(edge, geometry.Polar(geometry.Point{X: side * (length - width) / 2}, width/2, 90-90*side-90+float64(k)))
		}
	}
	return edge
}

// First principles: the moments of an ellipse, whichever way it lies.
func TestMomentsOfAnEllipse(t *testing.T) {
	t.Parallel()
	for _, deg := range []float64{0, 35, 90, 160} {
		m := momentsOf(ellipse(12, 5, deg))
		if math.Abs(m.area/(math.Pi*60)-1) > 1e-4 || m.centre.Distance(geometry.Point{X: 40, Y: -7}) > 1e-9 || math.Abs(m.long-12) > 1e-3 || math.Abs(m.short-5) > 1e-3 {
			t.Errorf("turned by %g: %+v", deg, m)
		}
		if along := geometry.Polar(geometry.Point{}, 1, deg); math.Abs(math.Abs(m.axis.Dot(along))-1) > 1e-6 {
			t.Errorf("turned by %g: axis %v", deg, m.axis)
		}
		if got := extent(ellipse(12, 5, deg), m.axis); math.Abs(got-24) > 1e-3 {
			t.Errorf("turned by %g: %g mm long", deg, got)
		}
	}
	if m := momentsOf([]geometry.Point{{X: 3}, {X: 5}}); m != (moments{}) {
		t.Errorf("two points: %+v", m)
	}
	if m := momentsOf([]geometry.Point{{X: 3}, {X: 5}, {X: 9}}); m.area != 0 || m.centre != (geometry.Point{X: 3}) {
		t.Errorf("a line: %+v", m)
	}
}

// Slots up to two and a half times as long as wide, and 25 mm wide, take a bolt; what is
// two and a half times the smallest hole is an opening, doubtful below 25 mm; the rest
// is dirt (limits of the design: common practice, no source).
func TestSlotsOpeningsAndSpots(t *testing.T) {
	t.Parallel()
	tr := &tracer{options: Options{SmallestMm: 4}}
	cross := []geometry.Point{{X: 1, Y: 5}, {X: -1, Y: 5}, {X: -1, Y: 1}, {X: -5, Y: 1}, {X: -5, Y: -1}, {X: -1, Y: -1}, {X: -1, Y: -5}, {X: 1, Y: -5}, {X: 1, Y: -1}, {X: 5, Y: -1}, {X: 5, Y: 1}, {X: 1, Y: 1}}
	scaled := func(by float64) []geometry.Point {
		return geometry.Mapped(cross, func(p geometry.Point) geometry.Point { return p.Scale(by) })
	}
	for _, c := range []struct {
		name string
		edge []geometry.Point
		role Role
		slot bool
		want []finding.Code
	}{
		{"slot", slotOf(14, 8), "", true, []finding.Code{Long}},
		{"long slot", slotOf(19, 8), "", true, []finding.Code{Long}},
		{"longer", slotOf(23, 8), Port, false, []finding.Code{PerhapsPort}},
		{"wide slot", slotOf(38, 22.5), "", true, []finding.Code{Long}},
		{"wider", slotOf(40, 24.5), Port, false, nil},
		{"cross", scaled(1.35), Spot, false, []finding.Code{Dirt}},              // as large as a disc of 9.1 mm
		{"larger cross", scaled(1.5), Port, false, []finding.Code{PerhapsPort}}, // of 10.2 mm
		{"large cross", scaled(3.6), Port, false, []finding.Code{PerhapsPort}},  // of 24.4 mm
		{"largest cross", scaled(3.8), Port, false, nil},                        // of 25.7 mm
	} {
		m := momentsOf(c.edge)
		s := Shape{DiameterMm: 2 * math.Sqrt(m.area/math.Pi), Group: -1, Edge: c.edge}
		tr.notRound(&s, m)
		if s.Role != c.role || s.slot != c.slot || !slices.Equal(doubts(s), c.want) || s.slot != (s.Group == 0) {
			t.Errorf("%s: %q, slot %v, %v", c.name, s.Role, s.slot, doubts(s))
		}
		if c.name == "slot" {
			if v := s.Doubts[0].Values; math.Abs(float64(v["width"].(unit.Length))-8) > 0.01 || math.Abs(float64(v["length"].(unit.Length))-14) > 0.01 || math.Abs(s.DiameterMm-8) > 0.01 {
				t.Errorf("slot: %v, %g mm", v, s.DiameterMm)
			}
		}
	}
}

// What sizes were taken for, where that may surprise.
func TestTakenFor(t *testing.T) {
	t.Parallel()
	bolts, dowels := holes.Range{FromMm: 8, ToMm: 9}, holes.Range{FromMm: 4, ToMm: 7}
	many := func(n int, d float64) []float64 { return slices.Repeat([]float64{d}, n) }
	for _, c := range []struct {
		name  string
		sizes []float64
		rule  holes.Rule
		want  []string // code, count
	}{
		{"one size", many(8, 8.4), holes.Rule{}, nil},
		{"two smaller may be dowels", slices.Concat(many(8, 8.4), many(2, 6)), holes.Rule{}, []string{"trace not numbered 2"}},
		{"three smaller", slices.Concat(many(8, 8.4), many(3, 6)), holes.Rule{}, []string{"trace not numbered 3"}},
		{"four smaller may be bolts too", slices.Concat(many(8, 8.4), many(4, 6)), holes.Rule{}, []string{"trace not numbered 8", "trace not numbered 4"}},
		{"four printed dots", slices.Concat(many(8, 8.4), []float64{3, 3.25, 3.5, 3.75}), holes.Rule{}, []string{"trace not numbered 4"}},
		{"two larger", slices.Concat(many(8, 8.4), many(2, 12)), holes.Rule{}, []string{"trace not numbered 2"}},
		{"dowels are named", slices.Concat(many(8, 8.4), many(2, 6)), holes.Rule{Dowels: dowels}, nil},
		{"bolts are named, larger", slices.Concat(many(8, 8.4), many(2, 12)), holes.Rule{Fasteners: holes.Ranges{bolts}}, []string{"trace taken for bores 2"}},
		{"bolts and bores are named", slices.Concat(many(8, 8.4), many(2, 12)), holes.Rule{Fasteners: holes.Ranges{bolts}, Bores: holes.Range{FromMm: 11, ToMm: 13}}, nil},
		{"bolts are named, smaller", slices.Concat(many(8, 8.4), many(2, 6)), holes.Rule{Fasteners: holes.Ranges{bolts}}, []string{"trace taken for openings 2"}},
	} {
		var f Found
		for _, d := range c.sizes {
			f.Shapes = append(f.Shapes, Shape{DiameterMm: d})
		}
		f.Shapes = append(f.Shapes, Shape{DiameterMm: 50, Group: -1}) // what is not round has no say
		f.sort(c.rule)
		var got []string
		for _, taken := range f.Taken {
			said := string(taken.Code)
			if n, counted := taken.Values["holes"]; counted {
				said += fmt.Sprint(" ", n)
			}
			got = append(got, said)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if len(f.GroupsMm) == 0 || f.GroupsMm[0] != 8.4 || (f.Shapes[0].Role == Fastener) != (c.name != "four smaller may be bolts too") {
			t.Errorf("%s: groups %v, the first is a %s", c.name, f.GroupsMm, f.Shapes[0].Role)
		}
	}
	// A slot is an opening, whatever its width.
	f := Found{Shapes: []Shape{{DiameterMm: 8.4}, {DiameterMm: 8.4, slot: true}, {DiameterMm: 12, slot: true}}}
	f.sort(holes.Rule{Fasteners: holes.Ranges{bolts}})
	if f.Shapes[1].Role != Port || f.Shapes[1].Group != -1 || f.Shapes[2].Role != Port || f.Shapes[2].Group != -1 || len(f.Taken) != 0 {
		t.Errorf("slots: %+v, %v", f.Shapes, f.Taken)
	}
}

// bayOf is a stretch of an edge that runs round a circle of a diameter for some degrees,
// one point every half degree, and how far it lies off it.
func bayOf(diameter, deg float64) []geometry.Point {
	var edge []geometry.Point
	for k := 0.0; k <= deg; k += 0.5 {
		edge = append(edge, geometry.Polar(geometry.Point{X: 20, Y: 30}, diameter/2, k))
	}
	return edge
}

// A bay is a torn hole where the circle follows it for 60 % of the turn, and is as
// wide as a hole.
func TestTornHole(t *testing.T) {
	t.Parallel()
	tr := &tracer{options: Options{SmallestMm: 4}}
	for _, c := range []struct {
		diameter, deg float64
		want          bool
	}{{8, 300, true}, {8, 222, true}, {8, 210, false}, {8, 100, false}, {3.9, 300, false}, {4.1, 300, true}, {39.9, 300, true}, {40.1, 300, false}} {
		edge := edge{mm: bayOf(c.diameter, c.deg), side: 0.1, contrast: 0.8}
		s, ok := tr.tornHole(edge, bay{from: 0, to: len(edge.mm)})
		if ok != c.want {
			t.Errorf("%g mm, %g degrees: %v", c.diameter, c.deg, ok)
		}
		if ok && (math.Abs(s.DiameterMm-c.diameter) > 1e-6 || s.At.Distance(geometry.Point{X: 20, Y: 30}) > 1e-6 || !slices.Equal(doubts(s), []finding.Code{Open}) || math.Abs(s.Kept-c.deg/360) > 0.02 || s.Contrast != 0.8) {
			t.Errorf("%g mm, %g degrees: %+v", c.diameter, c.deg, s)
		}
	}
	if a := signedArea(bayOf(8, 359.5)); math.Abs(a-math.Pi*16) > 0.01 {
		t.Errorf("area %g", a)
	}
}
