package survey

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

func turned(points []geometry.Point, deg float64) []geometry.Point {
	return geometry.Mapped(points, func(p geometry.Point) geometry.Point {
		return geometry.Polar(geometry.Point{}, p.Distance(geometry.Point{}), deg+p.AngleFrom(geometry.Point{}))
	})
}

// A pitch is rounded to the coarsest step that moves no place further off than
// the accuracy. Of two columns, each moves by half the change of the pitch
// (first principles; the choice of steps is common practice, no source).
func TestPitchSteps(t *testing.T) {
	t.Parallel()
	type rounding struct{ pitch, accuracy, want float64 }
	cases := []rounding{
		{68, 1.2, 70}, {64.2, 0.5, 65}, {63.8, 0.15, 64}, {63.36, 0.08, 63.5}, {63.7, 0.03, 63.75}, {63.13, 0.02, 63.1}, {63.17, 0.012, 63.15}, {63.17, 0.009, 63.17},
	}
	check := func(c rounding, steps []float64) {
		t.Helper()
		for _, across := range []bool{true, false} {
			x, y := c.pitch, 200.
			if !across {
				x, y = y, x
			}
			got, ok := Recognise(geometry.Grid(2, 3, x, y, geometry.Point{X: 3, Y: 4}), 5, c.accuracy, steps)
			size := got.X
			if !across {
				size = got.Y
				c.accuracy = 2.1 * c.accuracy // with three rows the outer ones move by the full change
			}
			if !ok || got.Shape != Grid || across && math.Abs(size-c.want) > 1e-9 {
				t.Errorf("%g mm, to %g mm: %+v, want %g", c.pitch, c.accuracy, got, c.want)
			}
		}
	}
	for _, c := range cases {
		check(c, MillimetreSteps)
	}
	for k, step := range InchSteps {
		m := 2*math.Round(30/step) + 1 // odd, so not a multiple of a coarser step
		if k == 0 {
			m = 3
		}
		check(rounding{(m + 0.3) * step, 0.16 * step, m * step}, InchSteps)
	}
	for _, c := range []rounding{{90.6, 1.2, 90}, {91.3, 0.6, 91}, {91.4, 0.2, 91.5}, {91.44, 0.08, 91.4}, {91.44, 0.06, 91.44}, {359.7, 0.6, 0}} {
		got, ok := Recognise(geometry.Circle(12, 200, geometry.Point{}, c.pitch, true), 2, c.accuracy, MillimetreSteps)
		if !ok || got.Shape != Circle || math.Abs(got.AngleDeg-c.want) > 1e-6 || got.X != 200 {
			t.Errorf("first place at %g°, to %g mm: %+v, want %g", c.pitch, c.accuracy, got, c.want)
		}
	}
	// A row keeps its middle when its pitch is rounded.
	got, ok := Recognise(geometry.Row(5, 60.04, geometry.Point{}, 0), 2, 0.1, MillimetreSteps)
	if !ok || got.X != 60 || math.Abs(got.Centre.X-0.08) > 1e-9 || got.Centre.Y != 0 || math.Abs(got.OffMm-0.08) > 1e-9 {
		t.Errorf("row: %+v", got)
	}
	if got, _ = Recognise(geometry.Row(4, 60.04, geometry.Point{}, 0), 2, 0.1, MillimetreSteps); math.Abs(got.Centre.X-0.06) > 1e-9 {
		t.Errorf("row of four: %+v", got)
	}
}

// The result is within the tolerance.
func TestTolerance(t *testing.T) {
	t.Parallel()
	for out, want := range map[float64]bool{0.1: true, 0.42: true, 0.52: false} {
		points := geometry.Grid(3, 2, 60, 50, geometry.Point{})
		points[1].Y += out // a middle place: a row of three takes up a third of it
		if got, ok := Recognise(points, 0.3, 0, MillimetreSteps); ok != want || ok && got.OffMm > 0.3 {
			t.Errorf("%g mm out: %+v, %v", out, got, ok)
		}
	}
	if _, ok := Recognise(geometry.Grid(2, 1, 60, 50, geometry.Point{}), 1, 1, MillimetreSteps); ok {
		t.Error("two places are a layout")
	}
}

// Every regular layout is recognized as itself, in any listing order.
func TestEveryLayout(t *testing.T) {
	t.Parallel()
	middle := geometry.Point{X: 12, Y: -7}
	for _, want := range []Regular{
		{Shape: Grid, Columns: 5, Rows: 2, X: 95, Y: 90, Centre: middle},
		{Shape: Grid, Columns: 3, Rows: 3, X: 45, Y: 60, Centre: middle},
		{Shape: Grid, Columns: 2, Rows: 2, X: 70, Y: 50, Centre: middle},
		{Shape: Rectangle, Columns: 4, Rows: 1, X: 300, Y: 160, Centre: middle},
		{Shape: Rectangle, Columns: 5, Rows: 3, X: 320, Y: 170, Centre: middle},
		{Shape: Rectangle, Columns: 3, Rows: 3, X: 150, Y: 200, Centre: middle},
		{Shape: Circle, Count: 7, X: 200, Centre: middle, AngleDeg: 90, Clockwise: true},
		{Shape: Circle, Count: 8, X: 200, Centre: middle, AngleDeg: 15},
		{Shape: Circle, Count: 3, X: 200, Centre: middle, AngleDeg: 330, Clockwise: true},
		{Shape: Row, Count: 4, X: 60, Centre: middle, AngleDeg: 0},
		{Shape: Row, Count: 5, X: 60, Centre: middle, AngleDeg: 225},
		{Shape: Row, Count: 3, X: 60, Centre: middle, AngleDeg: 90},
	} {
		points := want.Points()
		got, ok := Recognise(points, 0.3, 0.01, MillimetreSteps)
		if !ok || got.Centre.Distance(want.Centre) > 1e-6 || math.Abs(got.X-want.X) > 1e-9 || math.Abs(got.Y-want.Y) > 1e-9 || got.OffMm > 1e-6 || geometry.Apart(got.AngleDeg, want.AngleDeg) > 1e-6 {
			t.Errorf("%+v comes back as %+v, %v", want, got, ok)
		}
		got.Centre, got.X, got.Y, got.OffMm, got.AngleDeg = want.Centre, want.X, want.Y, 0, want.AngleDeg
		if got != want {
			t.Errorf("%+v comes back as %+v", want, got)
		}
		mixed := slices.Clone(points)
		mixed[1], mixed[2] = mixed[2], mixed[1]
		if got, ok := Recognise(mixed, 0.3, 0.01, MillimetreSteps); !ok || got.Shape != want.Shape {
			t.Errorf("%+v, two places swapped, comes back as %+v, %v", want, got, ok)
		}
	}
}

// Four on a square: a grid if the sides are level, a circle if turned by nearly
// 45°.
func TestSquare(t *testing.T) {
	t.Parallel()
	square := geometry.Grid(2, 2, 60, 60, geometry.Point{})
	for deg, want := range map[float64]Shape{0: Grid, 30: "", 38: "", 42: Circle, 45: Circle, 48: Circle, 52: "", 90: Grid} {
		if got, _ := Recognise(turned(square, deg), 0.3, 0.05, MillimetreSteps); got.Shape != want {
			t.Errorf("turned by %g: %q, want %q", deg, got.Shape, want)
		}
	}
	two := quadrilateral(at(0, 0, 10, 0, 0.1, 10, 9, 9.9))
	if two.Columns != 2 || two.Rows != 2 || !slices.Equal(two.Column, []int{0, 1, 0, 1}) || !slices.Equal(two.Row, []int{0, 0, 1, 1}) {
		t.Errorf("%+v", two)
	}
	if got := quadrilateral(at(0, 0, 10, 0, 20, 10, 30, 10)); got.Columns == 2 && got.Rows == 2 {
		t.Errorf("two of four in one corner: %+v", got)
	}
}

// A circle needs one fastener at each place, all at the same distance from the
// middle.
func TestCircleFit(t *testing.T) {
	t.Parallel()
	circle := geometry.Circle(6, 200, geometry.Point{}, 90, true)
	twice := slices.Clone(circle)
	twice[5] = twice[4]
	out := slices.Clone(circle)
	out[5] = out[5].Scale(1.001)
	hardly := slices.Clone(circle)
	hardly[5] = hardly[5].Scale(1 + 5e-7)
	for name, c := range map[string]struct {
		points  []geometry.Point
		columns int
		regular bool
		want    bool
	}{
		"circle": {circle, 0, true, true}, "hardly out": {hardly, 0, true, true}, "one place twice": {twice, 0, true, false}, "one further out": {out, 0, true, false},
		"rows": {circle, 3, true, false}, "irregular": {circle, 0, false, false}, "two": {circle[:2], 0, true, false},
	} {
		f, ok := circleFit(c.points, geometry.Layout{Points: c.points, Columns: c.columns, Regular: c.regular})
		if ok != c.want || ok && (!slices.Equal(f.place, geometry.Count(6)) || math.Abs(f.exact.X-200) > 1e-4) {
			t.Errorf("%s: %v, %+v", name, ok, f)
		}
	}
}

// A rectangle has places along its sides only, and at least two columns or
// three rows.
func TestRectangleFit(t *testing.T) {
	t.Parallel()
	places := func(columns, rows int, cells ...[2]int) ([]geometry.Point, geometry.Layout) {
		layout := geometry.Layout{Regular: true, Columns: columns, Rows: rows}
		for _, c := range cells {
			layout.Points = append(layout.Points, geometry.Point{X: 40 * float64(c[0]), Y: 30 * float64(c[1])})
			layout.Column, layout.Row = append(layout.Column, c[0]), append(layout.Row, c[1])
		}
		return layout.Points, layout
	}
	if f, ok := rectangleFit(places(3, 3, [][2]int{{0, 2}, {1, 2}, {2, 2}, {2, 1}, {2, 0}, {1, 0}, {0, 0}, {0, 1}}...)); !ok || !slices.Equal(f.place, geometry.Count(8)) || math.Abs(f.exact.X-80)+math.Abs(f.exact.Y-60) > 1e-9 || f.exact.Rows != 1 {
		t.Errorf("three by three: %+v, %v", f, ok)
	}
	if _, ok := rectangleFit(places(3, 3, [][2]int{{0, 2}, {1, 2}, {2, 2}, {2, 1}, {2, 0}, {1, 0}, {0, 0}, {1, 1}}...)); ok {
		t.Error("one of the places lies inside")
	}
	if f, ok := rectangleFit(places(2, 3, [][2]int{{0, 2}, {1, 2}, {1, 1}, {1, 0}, {0, 0}, {0, 1}}...)); !ok || !slices.Equal(f.place, geometry.Count(6)) {
		t.Errorf("two columns: %+v, %v", f, ok)
	}
	if _, ok := rectangleFit(places(3, 2, [][2]int{{0, 1}, {1, 1}, {2, 1}, {2, 0}, {1, 0}, {0, 0}}...)); ok {
		t.Error("two rows are a grid")
	}
	if _, ok := rectangleFit(places(3, 3, [][2]int{{0, 2}, {1, 2}, {2, 2}, {2, 1}, {2, 0}, {1, 0}, {0, 0}}...)); ok {
		t.Error("one place is missing")
	}
}

// The finding gives the sizes to a thousandth.
func TestNamed(t *testing.T) {
	t.Parallel()
	for shape, code := range map[Shape]finding.Code{Grid: GridLayout, Rectangle: RectangleLayout, Circle: CircleLayout, Row: RowLayout} {
		named := Regular{Shape: shape, Columns: 4, Rows: 3, Count: 12, X: 60.00049, Y: 7.0006}.Named()
		if v := named.Values; named.Code != code || v["columns"] != 4 || v["rows"] != 3 || v["count"] != 12 || v["x"] != 60.0 || v["y"] != 7.001 {
			t.Errorf("%s: %v", shape, named)
		}
	}
}
