package family

import (
	"slices"
	"testing"

	"drawdown/geometry"
)

// How far places may be off a family, from both sides. The shares are those of
// the design (common practice, no source).
func TestLimitsOfFamilies(t *testing.T) {
	t.Parallel()
	middle := geometry.Point{X: 12, Y: -7}
	circle := func(n int, diameter float64) []geometry.Point { return geometry.Circle(n, diameter, middle, 17, true) }
	for _, c := range []struct {
		name    string
		points  []geometry.Point
		want    Family
		missing int
	}{
		{"circle of 8", circle(8, 240), Circle, 0},
		{"circle of 8, one missing", circle(8, 240)[1:], Circle, 1},
		{"circle of 10, two missing", slices.Delete(circle(10, 240)[1:], 3, 4), Circle, 2},
		{"two circles", append(circle(6, 100), circle(12, 240)...), Circles, 0},
		{"two circles, one of the outer missing", append(circle(6, 100), circle(12, 240)[1:]...), Circles, 1},
		{"circle and its middle", append(circle(8, 240), middle), Circles, 0},
		{"row of 5", geometry.Row(5, 60, middle, 20), Row, 0},
		{"grid of 5 by 2", geometry.Grid(5, 2, 95, 90, middle), Grid, 0},
		{"grid of 4 by 3", geometry.Grid(4, 3, 95, 90, middle), Grid, 0},
		{"perimeter of 5 by 3", geometry.Rectangle(5, 1, 304, 164, middle), Perimeter, 0},
		{"perimeter of 16", geometry.Rectangle(5, 3, 304, 164, middle), Perimeter, 0},
	} {
		seen := Of(c.points)
		if seen.Family != c.want || seen.Missing != c.missing {
			t.Errorf("%s: seen as %s, %d missing", c.name, seen.Family, seen.Missing)
		}
	}
}

// The places of concentric circles are moved to exact ones, ring by ring. The
// one in the middle does not move.
func TestRingsOfCircles(t *testing.T) {
	t.Parallel()
	middle := geometry.Point{X: 12, Y: -7}
	points := append(geometry.Circle(6, 100, middle, 0, true), geometry.Circle(12, 240, middle, 0, true)...)
	points = append(points, middle)
	true0 := slices.Clone(points)
	points[2].X += 1.5
	seen := Of(points)
	if seen.Family != Circles || len(seen.Rings) != 3 || !slices.Equal(seen.Rings[0], []int{18}) || len(seen.Rings[1]) != 6 || len(seen.Rings[2]) != 12 {
		t.Fatalf("%s in rings %v", seen.Family, seen.Rings)
	}
	if seen.OffMm <= 0 || seen.OffMm > 1.5 || !seen.Layout.Regular {
		t.Errorf("off by %g mm, regular %v", seen.OffMm, seen.Layout.Regular)
	}
	for i, p := range seen.Layout.Points {
		if p.Distance(true0[i]) > 0.6 {
			t.Errorf("place %d is brought to %v, true is %v", i, p, true0[i])
		}
	}
}

// First principles, on a rectangle of 304 by 164 mm: its corners and depths.
func TestRectangleRoundPlaces(t *testing.T) {
	t.Parallel()
	middle := geometry.Point{X: 12, Y: -7}
	points := geometry.Rectangle(5, 1, 304, 164, middle)
	r := smallestRectangle(points)
	if long, short := max(r.half.X, r.half.Y), min(r.half.X, r.half.Y); long != 152 || short != 82 || r.middle.Distance(middle) > 1e-9 {
		t.Errorf("%+v", r)
	}
	found := map[int]bool{}
	for corner := range 4 {
		i, apart := r.nearestTo(corner, points)
		found[i] = true
		if apart > 1e-9 {
			t.Errorf("corner %d is %g mm from place %d", corner, apart, i)
		}
	}
	if len(found) != 4 {
		t.Errorf("corners %v", found)
	}
	round := outline(points)
	for at, want := range map[geometry.Point]float64{middle: 82, {X: 12, Y: 75}: 0, {X: 12, Y: 65}: 10, {X: 154, Y: -7}: 10, {X: -140, Y: -7}: 0} {
		if r, o := r.depth(at), depthIn(round, at); abs(r-want) > 1e-9 || abs(o-want) > 1e-9 {
			t.Errorf("%v lies %g and %g mm deep, want %g", at, r, o, want)
		}
	}
	for edge, want := range map[int]int{6: 4, 9: 4, 10: 3, 20: 3} {
		if got := leastCorners(edge); got != want {
			t.Errorf("of %d places %d in corners, want %d", edge, got, want)
		}
	}
	s := &seer{points: append(slices.Clone(points), middle), spacing: geometry.Spacing(points)}
	edge, inner, offMm := s.parted(r.depth)
	if len(edge) != len(points) || !slices.Equal(inner, []int{len(points)}) || offMm > 1e-9 {
		t.Errorf("edge %v, inside %v, off %g mm", edge, inner, offMm)
	}
}

func abs(v float64) float64 { return max(v, -v) }

// Flanges are listed along the part, in any listing order of the places.
func TestFlangesAlongThePart(t *testing.T) {
	t.Parallel()
	var points []geometry.Point
	for _, x := range []float64{400, 0, 200} {
		points = append(points, geometry.Grid(2, 2, 50, 40, geometry.Point{X: x})...)
	}
	seen := Of(points)
	if seen.Family != Flanges || len(seen.Parts) != 3 {
		t.Fatalf("%s of %v", seen.Family, seen.Parts)
	}
	for k, want := range []int{4, 8, 0} {
		if part := slices.Sorted(slices.Values(seen.Parts[k])); part[0] != want || len(part) != 4 {
			t.Errorf("flange %d is %v, want the one that begins at %d", k, part, want)
		}
	}
}
