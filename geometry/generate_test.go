package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Contract of the pattern file: row by row, top left first; centre is the
// middle. First principles: arithmetic.
func TestGrid(t *testing.T) {
	samePoints(t, "3 columns, 2 rows", Grid(3, 2, 95, 40, Point{10, -4}), []Point{
		{-85, 16}, {10, 16}, {105, 16},
		{-85, -24}, {10, -24}, {105, -24},
	})
	samePoints(t, "2 columns, 3 rows", Grid(2, 3, 30, 50, Point{-7, 5}), []Point{
		{-22, 55}, {8, 55}, {-22, 5}, {8, 5}, {-22, -45}, {8, -45},
	})
	samePoints(t, "one place", Grid(1, 1, 30, 50, Point{-7, 5}), []Point{{-7, 5}})
}

// The contract: from the first place in the direction of the angle.
func TestRow(t *testing.T) {
	samePoints(t, "along x", Row(3, 60, Point{12, -5}, 0), []Point{{12, -5}, {72, -5}, {132, -5}})
	samePoints(t, "upwards", Row(3, 60, Point{12, -5}, 90), []Point{{12, -5}, {12, 55}, {12, 115}})
	samePoints(t, "downwards", Row(2, 60, Point{12, -5}, -90), []Point{{12, -5}, {12, -65}})
	// First principles: the 3-4-5 triangle.
	samePoints(t, "slanting", Row(3, 50, Point{1, 2}, math.Atan2(3, 4)*180/math.Pi), []Point{{1, 2}, {41, 32}, {81, 62}})
	samePoints(t, "one place", Row(1, 60, Point{12, -5}, 33), []Point{{12, -5}})
}

// The contract: first at the stated direction, clockwise in the view or not.
func TestCircle(t *testing.T) {
	samePoints(t, "clockwise from the top", Circle(4, 240, Point{7, -3}, 90, true), []Point{{7, 117}, {127, -3}, {7, -123}, {-113, -3}})
	samePoints(t, "anticlockwise from the top", Circle(4, 240, Point{7, -3}, 90, false), []Point{{7, 117}, {-113, -3}, {7, -123}, {127, -3}})
	// First principles: sin 30° = ½, cos 30° = √3/2.
	half := 50 * math.Sqrt(3)
	samePoints(t, "three from 30°", Circle(3, 200, Point{0, 10}, 30, true), []Point{{half, 60}, {0, -90}, {-half, 60}})
	samePoints(t, "one place", Circle(1, 200, Point{0, 10}, 180, true), []Point{{-100, 10}})
}

// The contract: columns along top and bottom with the corners, and rows more on
// each end, clockwise from the top left.
func TestRectangle(t *testing.T) {
	samePoints(t, "3 columns, 1 row", Rectangle(3, 1, 300, 160, Point{20, -6}), []Point{
		{-130, 74}, {20, 74}, {170, 74},
		{170, -6},
		{170, -86}, {20, -86}, {-130, -86},
		{-130, -6},
	})
	samePoints(t, "2 columns, 2 rows", Rectangle(2, 2, 90, 120, Point{5, 1}), []Point{
		{-40, 61}, {50, 61}, {50, 21}, {50, -19}, {50, -59}, {-40, -59}, {-40, -19}, {-40, 21},
	})
	samePoints(t, "corners alone", Rectangle(2, 0, 90, 120, Point{5, 1}), []Point{{-40, 61}, {50, 61}, {50, -59}, {-40, -59}})
	if n := len(Rectangle(5, 2, 300, 160, Point{})); n != 14 {
		t.Errorf("the contract's rectangle has %d places, want 14", n)
	}
}

func TestImpossibleCountsGiveNoPlaces(t *testing.T) {
	for what, points := range map[string][]Point{
		"grid without columns":       Grid(0, 2, 10, 10, Point{}),
		"grid with negative rows":    Grid(3, -2, 10, 10, Point{}),
		"row of none":                Row(0, 10, Point{}, 0),
		"row of a negative count":    Row(-3, 10, Point{}, 0),
		"circle of none":             Circle(0, 10, Point{}, 0, true),
		"circle of a negative count": Circle(-1, 10, Point{}, 0, true),
		"rectangle of one column":    Rectangle(1, 2, 10, 10, Point{}),
		"rectangle of negative rows": Rectangle(2, -1, 10, 10, Point{}),
	} {
		if len(points) != 0 {
			t.Errorf("%s: %v", what, points)
		}
	}
}

// First principles: even places on a circle have equal chords, and run the
// other way round in a mirror.
func TestCircleIsEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 60).Draw(t, "count")
		first := rapid.Float64Range(-400, 400).Draw(t, "first")
		centre := Point{31, -17}
		right, left := Circle(n, 240, centre, first, true), Circle(n, 240, centre, first, false)
		chord := 240 * math.Sin(math.Pi/float64(n))
		for i, p := range right {
			if d := p.Distance(centre); math.Abs(d-120) > 1e-9 {
				t.Fatalf("place %d is %v from the centre", i+1, d)
			}
			if d := p.Distance(right[(i+1)%n]); math.Abs(d-chord) > 1e-9 {
				t.Fatalf("chord %d is %v, want %v", i+1, d, chord)
			}
			if !closeTo(p, left[(n-i)%n], 1e-9) {
				t.Fatalf("place %d clockwise is not place %d anticlockwise", i+1, (n-i)%n+1)
			}
		}
		if n > 2 && cross(centre, right[0], right[1]) >= 0 {
			t.Fatalf("%v to %v is not clockwise", right[0], right[1])
		}
	})
}

// Multiples of 90° are exact after any number of whole turns.
func TestPolarIsExactAtRightAngles(t *testing.T) {
	for turns := -3; turns <= 3; turns++ {
		for quarter, want := range []Point{{107, -3}, {7, 97}, {-93, -3}, {7, -103}} {
			if got := Polar(Point{7, -3}, 100, float64(90*quarter+360*turns)); got != want {
				t.Errorf("%d°: %v, want %v", 90*quarter+360*turns, got, want)
			}
		}
	}
}
