package geometry

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// regularParts are layouts with rows and columns, or on one circle, off centre
// and with different pitches.
func regularParts() map[string][]Point {
	parts := map[string][]Point{
		"row of 7":               Row(7, 60, Point{3, 4}, 0),
		"circle, two missing":    slices.Delete(slices.Delete(Circle(12, 260, Point{5, -8}, 20, true), 7, 8), 2, 3),
		"grid, one missing":      slices.Delete(Grid(6, 3, 70, 55, Point{11, 2}), 8, 9),
		"grid, a corner missing": slices.Delete(Grid(6, 4, 70, 55, Point{11, 2}), 0, 1),
		"grid with a gap": slices.DeleteFunc(Grid(7, 2, 60, 110, Point{11, 2}), func(p Point) bool { // the fourth column
			return p.X == 11
		}),
	}
	for _, n := range []int{3, 4, 5, 8, 13, 24} {
		parts[fmt.Sprintf("circle of %d", n)] = Circle(n, 240, Point{7, -3}, 13, true)
	}
	for _, size := range [][2]int{{5, 2}, {3, 3}, {8, 5}, {2, 7}, {20, 4}} {
		parts[fmt.Sprintf("grid %v", size)] = Grid(size[0], size[1], 95, 72, Point{37, -11})
	}
	for _, size := range [][2]int{{5, 2}, {4, 3}, {9, 1}} {
		parts[fmt.Sprintf("perimeter %v", size)] = Rectangle(size[0], size[1], 304, 164, Point{-9, 6})
	}
	return parts
}

// jittered moves each place by up to a share of the spacing, in any direction.
func jittered(t *rapid.T, points []Point, share float64) []Point {
	spacing := Spacing(points)
	return Mapped(points, func(p Point) Point {
		off := share * spacing * rapid.Float64Range(0, 1).Draw(t, "off")
		return Polar(p, off, rapid.Float64Range(0, 360).Draw(t, "direction"))
	})
}

// meanAndWorst returns the root mean square and the largest distance of places
// from the true ones.
func meanAndWorst(got, truth []Point) (mean, worst float64) {
	for i := range truth {
		d := got[i].Distance(truth[i])
		mean, worst = mean+d*d/float64(len(truth)), math.Max(worst, d)
	}
	return math.Sqrt(mean), worst
}

// First principles: an exact part does not change.
func TestTruePartsStay(t *testing.T) {
	for name, points := range regularParts() {
		layout := NewLayout(points)
		if !layout.Regular {
			t.Errorf("%s: not regular", name)
		}
		if _, worst := meanAndWorst(layout.Points, points); worst > 1e-9 {
			t.Errorf("%s: a place moved by %v mm", name, worst)
		}
	}
}

// First principles: least squares moves the places closer to the truth on
// average: holes within 1 % of the spacing end up within 1 %. A single place at
// the end of a short row can get slightly worse, by the weights of the fit
// (5/6, 2/6 and -1/6 for three even steps add up to 4/3).
func TestMeasuredPartsAreStraightened(t *testing.T) {
	parts := regularParts()
	for _, name := range sortedNames(parts) {
		truth := parts[name]
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			limit := 0.01 * Spacing(truth)
			measured := jittered(t, truth, 0.01)
			layout := NewLayout(measured)
			if !layout.Regular {
				t.Fatal("not regular")
			}
			was, _ := meanAndWorst(measured, truth)
			mean, worst := meanAndWorst(layout.Points, truth)
			if mean > limit || worst > 4.0/3*limit {
				t.Fatalf("off the truth by %.3f %% on the mean (measured %.3f %%), %.3f %% at the worst",
					mean/limit, was/limit, worst/limit)
			}
		}))
	}
}

func sortedNames(parts map[string][]Point) []string {
	var names []string
	for name := range parts {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// First principles: the result does not depend on how the part is turned in the
// picture. A tilt within the slack can be a measuring error and may be removed.
// Otherwise the straightened places are as close to the truth as without a
// tilt, with a small allowance because the direction is fitted too.
func TestTiltedPartsAreStraightened(t *testing.T) {
	parts := regularParts()
	for _, name := range sortedNames(parts) {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			tilt := rapid.OneOf(rapid.Float64Range(-1.5, 1.5), rapid.Float64Range(-180, 180)).Draw(t, "tilt")
			truth := rotated(parts[name], tilt)
			spacing := Spacing(truth)
			layout := NewLayout(jittered(t, truth, 0.01))
			if !layout.Regular {
				t.Fatal("not regular")
			}
			_, worst := meanAndWorst(layout.Points, truth)
			allowed := 0.02 * spacing
			if math.Abs(math.Remainder(tilt, 90)) < 1.5 {
				allowed = (LevelShare + 0.02) * spacing
			}
			if worst > allowed {
				t.Fatalf("tilt %v: off the truth by %.2f %% of the spacing", tilt, 100*worst/spacing)
			}
			upright := NewLayout(parts[name])
			if sizes := [2]int{layout.Columns, layout.Rows}; sizes != [2]int{upright.Columns, upright.Rows} && sizes != [2]int{upright.Rows, upright.Columns} {
				t.Fatalf("tilt %v: %v columns and rows, upright %d and %d", tilt, sizes, upright.Columns, upright.Rows)
			}
		}))
	}
}

// A long part at a slight angle in the picture keeps its rows. Half a degree
// moves the ends of twenty columns by far more than the width of a row. No
// place moves by more than the slack.
func TestCrookedLongPart(t *testing.T) {
	for _, size := range [][2]int{{20, 4}, {8, 5}, {5, 2}, {40, 1}} {
		for _, tilt := range []float64{0.2, 0.5, -0.5, 0.9, 1.1, -3} {
			truth := rotated(Grid(size[0], size[1], 72, 95, Point{37, -11}), tilt)
			layout := NewLayout(truth)
			_, worst := meanAndWorst(layout.Points, truth)
			if !layout.Regular || layout.Columns != size[0] || layout.Rows != size[1] || worst > LevelShare*72 {
				t.Errorf("%v at %v°: regular %v, %d × %d, off by %.2f mm", size, tilt, layout.Regular, layout.Columns, layout.Rows, worst)
			}
		}
	}
}

// First principles: no tilt remains if no two places share a row or column, or
// if the rows are level. Otherwise the angle remains.
func TestRemainingTilt(t *testing.T) {
	grid := Grid(6, 3, 60, 45, Point{17, -5})
	for _, deg := range []float64{0, 0.3, -0.7, 1.5} {
		if got := remainingTilt(rotated(grid, deg)); math.Abs(got-deg) > 1e-3 {
			t.Errorf("%v° left, found %v°", deg, got)
		}
	}
	if got := remainingTilt([]Point{{0, 0}, {50, 90}, {130, 30}, {210, 170}}); got != 0 {
		t.Errorf("scattered places are turned by %v°", got)
	}
}

// First principles: even steps are equal, however the holes were measured.
func TestStraightenedStepsAreEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layout := NewLayout(jittered(t, Grid(6, 4, 70, 55, Point{11, 2}), 0.02))
		if layout.Columns != 6 || layout.Rows != 4 {
			t.Fatalf("%d × %d", layout.Columns, layout.Rows)
		}
		acrossTop, down := layout.Points[1].Sub(layout.Points[0]), layout.Points[6].Sub(layout.Points[0])
		for i, p := range layout.Points {
			want := layout.Points[0].Add(acrossTop.Scale(float64(i % 6))).Add(down.Scale(float64(i / 6)))
			if !closeTo(p, want, 1e-9) {
				t.Fatalf("place %d is %v, want %v", i, p, want)
			}
		}
	})
}

// Rows that bow by more than a measuring error are not rows, although each
// place is nearly level with the next. The same holds for columns.
func TestBowedRows(t *testing.T) {
	bowed := Mapped(Grid(11, 2, 60, 80, Point{}), func(p Point) Point {
		return Point{p.X, p.Y + 24*(1-math.Pow(p.X/300, 2))}
	})
	upright := Mapped(bowed, func(p Point) Point { return Point{p.Y, p.X} })
	for name, points := range map[string][]Point{"bowed rows": bowed, "bowed columns": upright} {
		if layout := NewLayout(points); layout.Regular || !slices.Equal(layout.Points, points) {
			t.Errorf("%s were straightened", name)
		}
	}
}

// Two pairs of rows, offset by a quarter of the pitch, have two sets of
// columns.
func TestOffsetRows(t *testing.T) {
	points := slices.Concat(Grid(5, 2, 60, 60, Point{0, 60}), Grid(5, 2, 60, 60, Point{15, -60}))
	layout := NewLayout(points)
	if _, worst := meanAndWorst(layout.Points, points); !layout.Regular || worst > 1e-9 {
		t.Errorf("regular %v, moved by %v", layout.Regular, worst)
	}
}

// Columns are numbered from the left and rows from below. A missing row or
// place keeps its number.
func TestColumnsAndRows(t *testing.T) {
	grid := Grid(4, 3, 60, 45, Point{17, -5})
	layout := NewLayout(grid)
	if layout.Columns != 4 || layout.Rows != 3 || !layout.Filled() {
		t.Fatalf("%d × %d", layout.Columns, layout.Rows)
	}
	for i := range grid {
		if layout.Column[i] != i%4 || layout.Row[i] != 2-i/4 {
			t.Errorf("place %d is in column %d, row %d", i, layout.Column[i], layout.Row[i])
		}
	}
	gap := NewLayout(regularParts()["grid with a gap"])
	if want := []int{0, 1, 2, 4, 5, 6, 0, 1, 2, 4, 5, 6}; gap.Columns != 7 || !slices.Equal(gap.Column, want) {
		t.Errorf("with a gap: %d columns, %v", gap.Columns, gap.Column)
	}
	perimeter := NewLayout(Rectangle(5, 2, 304, 165, Point{-9, 6}))
	if perimeter.Filled() {
		t.Error("a perimeter counts as filled")
	}
}

// At most a tenth of the places may be missing, but always one.
func TestFilled(t *testing.T) {
	for _, tt := range []struct {
		columns, rows, missing int
		want                   bool
	}{
		{5, 2, 0, true}, {5, 2, 1, true}, {5, 2, 2, false},
		{8, 5, 4, true}, {8, 5, 5, false},
		{4, 2, 1, true}, {9, 2, 1, true}, {9, 2, 2, false},
		{7, 1, 0, false}, {1, 7, 0, false}, // a row is not a grid
	} {
		layout := Layout{Columns: tt.columns, Rows: tt.rows, Points: make([]Point, tt.columns*tt.rows-tt.missing)}
		if got := layout.Filled(); got != tt.want {
			t.Errorf("%d × %d without %d: %v", tt.columns, tt.rows, tt.missing, got)
		}
	}
}

// Columns that are symmetric but not even are made exactly symmetric. Others do
// not move.
func TestUnevenColumns(t *testing.T) {
	column := func(xs ...float64) (points []Point) {
		for _, x := range xs {
			points = append(points, Point{x, 40}, Point{x, -35})
		}
		return points
	}
	symmetric := NewLayout(column(-100, -33.5, 12, 58, 124)) // about 12: -100 … 124, -33.5 … 58
	var got []float64
	for i := 0; i < len(symmetric.Points); i += 2 {
		got = append(got, symmetric.Points[i].X)
	}
	if !symmetric.Regular || symmetric.Columns != 5 {
		t.Fatalf("regular %v, %d columns", symmetric.Regular, symmetric.Columns)
	}
	middle := (got[0] + got[4]) / 2
	if math.Abs(got[1]+got[3]-2*middle) > 1e-9 || math.Abs(got[2]-middle) > 1e-9 || math.Abs(middle-12.1) > 1e-9 {
		t.Errorf("columns at %v are not symmetric about the mean 12.1", got)
	}
	uneven := column(-100, -40, 12, 49, 150)
	if layout := NewLayout(uneven); !layout.Regular || layout.Columns != 0 || layout.Column != nil {
		t.Errorf("uneven columns: regular %v, %d columns", layout.Regular, layout.Columns)
	} else if _, worst := meanAndWorst(layout.Points, uneven); worst > 1e-9 {
		t.Errorf("uneven columns moved by %v", worst)
	}
}

// Columns one step apart and one far off: any distance is nearly a number of
// steps, so these do not count as even.
func TestFarColumn(t *testing.T) {
	points := []Point{{0, 40}, {0, -35}, {50, 40}, {50, -35}, {1012, 40}, {1012, -35}}
	if layout := NewLayout(points); layout.Columns != 0 || !closeTo(layout.Points[4], points[4], 1e-9) {
		t.Errorf("%d columns, the far one at %v", layout.Columns, layout.Points[4])
	}
}

// First principles: without regularity the given places are the truth.
func TestScatteredPartsAreLeftUntouched(t *testing.T) {
	touched := 0
	for seed := range uint64(400) {
		points := scattered(5+int(seed%40), 20, seed)
		given := slices.Clone(points)
		layout := NewLayout(points)
		if !slices.Equal(points, given) {
			t.Fatalf("seed %d: the given places changed", seed)
		}
		if layout.Regular || layout.Columns != 0 || !slices.Equal(layout.Points, given) {
			touched++
			t.Errorf("seed %d, %d places: taken for regular", seed, len(points))
		}
	}
	if touched > 0 {
		t.Errorf("%d of 400 scattered parts touched", touched)
	}
}

// Fewer than three places do not change.
func TestSmallLayouts(t *testing.T) {
	for _, points := range [][]Point{nil, {{3, 4}}, {{3, 4}, {9, 12}}, {{3, 4}, {3, 4}}} {
		if layout := NewLayout(points); layout.Regular || layout.Filled() || !slices.Equal(layout.Points, points) {
			t.Errorf("%v: %v", points, layout)
		}
	}
	// Holes in the same place are bad input, but must not stop the program.
	same := []Point{{3, 4}, {3, 4}, {3, 4}, {3, 4}}
	if _, worst := meanAndWorst(NewLayout(same).Points, same); worst != 0 {
		t.Errorf("places in one spot moved by %v", worst)
	}
}

// A hole 12 % of the spacing along its circle is more than a measuring error:
// the best circle takes up a third of it at most. (Eight holes are also on four
// rows and four columns.)
func TestCircleWithAHoleOff(t *testing.T) {
	centre := Point{7, -3}
	for _, n := range []int{5, 7, 9, 13} {
		for _, share := range []float64{0.02, 0.12} {
			circle := Circle(n, 240, centre, 13, true)
			turn := math.Asin(share*Spacing(circle)/120) * 180 / math.Pi
			circle[3] = Polar(centre, 120, circle[3].AngleFrom(centre)+turn)
			if got, want := NewLayout(circle).Regular, share < LevelShare; got != want {
				t.Errorf("circle of %d with a hole off by %v of the chord: regular %v", n, share, got)
			}
		}
	}
}

// Two holes so close that a grid would put them on one place are not a grid:
// every fastener keeps its own place.
func TestNoTwoPointsShareAPlace(t *testing.T) {
	points := []Point{{65.66, 30.61}, {60.20, 100.56}, {58.02, 32.24}, {125.85, 96.34}}
	if l := NewLayout(points); l.Regular {
		t.Errorf("taken for regular: %v", l.Points)
	}
}
