package geometry

import (
	"math"
	"slices"
	"testing"
)

// Filled rows have at least two rows and columns, at most a tenth of the places
// missing (at least one), and places inside if there are more than two rows and
// columns.
func TestFilledRows(t *testing.T) {
	t.Parallel()
	grid := func(columns, rows int, without ...int) Layout {
		l := Layout{Columns: columns, Rows: rows}
		for k := range columns * rows {
			if !slices.Contains(without, k) {
				l.Points = append(l.Points, Point{float64(k % columns), float64(k / columns)})
				l.Column, l.Row = append(l.Column, k%columns), append(l.Row, k/columns)
			}
		}
		return l
	}
	for _, c := range []struct {
		name string
		l    Layout
		want bool
	}{
		{"one row", grid(5, 1), false}, {"one column", grid(1, 5), false}, {"two by two", grid(2, 2), true},
		{"two rows", grid(5, 2), true}, {"two columns", grid(2, 5), true}, {"two rows, one missing", grid(5, 2, 3), true}, {"two rows, two missing", grid(5, 2, 3, 6), false},
		{"three by three", grid(3, 3), true}, {"three by three, nothing inside", grid(3, 3, 4), false}, {"five by four, two missing", grid(5, 4, 0, 19), true}, {"three missing", grid(5, 4, 0, 1, 19), false},
		{"four by three with one inside", grid(4, 3, 5), true}, {"upright, one inside", grid(3, 4, 4), true},
	} {
		if got := c.l.Filled(); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	open := grid(3, 3, 1, 8)
	if got := open.gaps([]float64{10, 20, 30}, []float64{1, 2, 3}); !slices.Equal(got, []Point{{20, 1}, {30, 3}}) {
		t.Errorf("gaps %v", got)
	}
	for _, c := range []struct {
		columns, rows []int
		want          bool
	}{{[]int{0, 1, 0}, []int{0, 0, 1}, false}, {[]int{0, 1, 0}, []int{0, 0, 0}, true}} {
		if got := shared(c.columns, c.rows); got != c.want {
			t.Errorf("%v, %v: shared %v", c.columns, c.rows, got)
		}
	}
	for _, c := range []struct {
		a, b Layout
		want bool
	}{
		{Layout{Columns: 3, Rows: 2}, Layout{Columns: 3, Rows: 2}, true}, {Layout{Columns: 3, Rows: 2}, Layout{Columns: 2, Rows: 3}, true},
		{Layout{Columns: 3, Rows: 2}, Layout{Columns: 4, Rows: 2}, false}, {Layout{Columns: 3, Rows: 2}, Layout{Columns: 3, Rows: 1}, false},
	} {
		if got := sameShape(c.a, c.b); got != c.want {
			t.Errorf("%v, %v: the same %v", c.a, c.b, got)
		}
	}
}

// First principles, on a part of 100 by 60 mm with an opening of 20 by 20 mm.
func TestOnAPart(t *testing.T) {
	t.Parallel()
	box := func(x0, y0, x1, y1 float64) []Point { return []Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }
	part := [][]Point{box(0, 0, 100, 60), box(40, 20, 60, 40), box(200, 0, 220, 20), nil}
	for k, want := range []bool{false, true, false, false} {
		if got := Opening(part, k); got != want {
			t.Errorf("outline %d is an opening: %v", k, got)
		}
	}
	for _, c := range []struct {
		p       Point
		in      bool
		on      bool
		fromRim float64
	}{
		{Point{10, 10}, true, true, 10}, {Point{50, 30}, true, false, 28.5}, {Point{-3, 30}, false, false, 3}, {Point{-1, 30}, false, true, 1},
		{Point{103, 64}, false, false, 5}, {Point{50, 59}, true, true, 1}, {Point{210, 10}, false, true, 110}, {Point{41, 30}, true, true, 30},
	} {
		if got := Inside(c.p, part[0]); got != c.in {
			t.Errorf("%v inside: %v", c.p, got)
		}
		if got := OnPart(c.p, part[:3], 2); got != c.on {
			t.Errorf("%v on the part: %v", c.p, got)
		}
		if want := c.fromRim; c.p != (Point{50, 30}) {
			if got := FromEdge(c.p, part[0]); math.Abs(got-want) > 1e-9 {
				t.Errorf("%v is %g mm from the edge, want %g", c.p, got, want)
			}
		}
	}
}

// Five places on one circle make a round part; four may be on one by chance.
// The edge is half a spacing away, or 10 mm around a single place.
func TestOwnEdge(t *testing.T) {
	t.Parallel()
	circle := Circle(5, 100, Point{}, 0, true)
	if _, round := RoundPart(circle); !round {
		t.Error("five on a circle are not round")
	}
	if _, round := RoundPart(Circle(4, 100, Point{}, 0, true)); round {
		t.Error("four on a circle are round")
	}
	if one, two := EdgeAllowance([]Point{{}}), EdgeAllowance([]Point{{}, {60, 0}}); one != 10 || two != 30 {
		t.Errorf("edges %g and %g mm away", one, two)
	}
	allowance := EdgeAllowance(circle)
	if got := InsideOwnEdge(Point{}, circle); math.Abs(got-50-allowance) > 1e-9 {
		t.Errorf("the middle lies %g mm inside", got)
	}
	if got := InsideOwnEdge(Point{30, 10}, []Point{{0, 0}, {60, 0}, {60, 60}, {0, 60}}); math.Abs(got-40) > 1e-9 {
		t.Errorf("10 mm from a side with an edge 30 mm away: %g mm inside", got)
	}
	j := Joint{Fasteners: []Fastener{{ID: "A", At: Point{1, 2}}, {ID: "B", At: Point{3, 4}}}}
	if !slices.Equal(j.IDs([]int{1, 0}), []string{"B", "A"}) || !slices.Equal(j.PointsOf([]int{1}), []Point{{3, 4}}) {
		t.Errorf("%v, %v", j.IDs([]int{1, 0}), j.PointsOf([]int{1}))
	}
}
