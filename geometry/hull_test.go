package geometry

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// As documented: anticlockwise from the leftmost place (the lowest of several),
// without places on the edges and without duplicates.
func TestHull(t *testing.T) {
	tests := []struct {
		name         string
		points, want []Point
	}{
		{"none", nil, nil},
		{"one", []Point{{4, 5}}, []Point{{4, 5}}},
		{"two", []Point{{4, 5}, {-1, 7}}, []Point{{-1, 7}, {4, 5}}},
		{"one, three times", []Point{{4, 5}, {4, 5}, {4, 5}}, []Point{{4, 5}}},
		{"a slanting line", []Point{{3, 6}, {1, 2}, {2, 4}, {1, 2}}, []Point{{1, 2}, {3, 6}}},
		{"an upright line", []Point{{3, 6}, {3, 2}, {3, 4}}, []Point{{3, 2}, {3, 6}}},
		{"triangle with a place on an edge", []Point{{0, 0}, {2, 0}, {6, 0}, {1, 5}}, []Point{{0, 0}, {6, 0}, {1, 5}}},
		{"grid", Grid(4, 3, 20, 15, Point{31, -8}), []Point{{1, -23}, {61, -23}, {61, 7}, {1, 7}}},
		{"doubled corner and one inside", []Point{{0, 0}, {9, 1}, {9, 1}, {7, 8}, {-2, 6}, {4, 4}}, []Point{{-2, 6}, {0, 0}, {9, 1}, {7, 8}}},
	}
	for _, tt := range tests {
		given := slices.Clone(tt.points)
		if got := Hull(tt.points); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
		if !slices.Equal(given, tt.points) {
			t.Errorf("%s: the given places changed", tt.name)
		}
	}
}

// First principles: a place is a corner of the hull unless a triangle or
// segment of other places contains it.
func TestHullAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Whole coordinates, so that every product is exact.
		points := make([]Point, rapid.IntRange(1, 14).Draw(t, "count"))
		for i := range points {
			points[i] = Point{float64(rapid.IntRange(-9, 12).Draw(t, "x")), float64(rapid.IntRange(-4, 6).Draw(t, "y"))}
		}
		corners := slices.DeleteFunc(slices.Clone(points), func(p Point) bool { return heldByOthers(p, points) })
		slices.SortFunc(corners, compare)
		corners = slices.Compact(corners)
		hull := Hull(points)
		for i := range hull {
			n := len(hull)
			if n > 2 && cross(hull[i], hull[(i+1)%n], hull[(i+2)%n]) <= 0 {
				t.Fatalf("%v does not turn left at %v", hull, hull[(i+1)%n])
			}
		}
		if len(hull) > 0 && slices.MinFunc(hull, compare) != hull[0] {
			t.Fatalf("%v does not begin at the left", hull)
		}
		sorted := slices.Clone(hull)
		slices.SortFunc(sorted, compare)
		if !slices.Equal(sorted, corners) {
			t.Fatalf("%v: corners %v, want %v", points, sorted, corners)
		}
	})
}

func heldByOthers(p Point, points []Point) bool {
	others := slices.DeleteFunc(slices.Clone(points), func(q Point) bool { return q == p })
	for i, a := range others {
		for j, b := range others[:i] {
			if cross(a, b, p) == 0 && p.Sub(a).Dot(p.Sub(b)) < 0 {
				return true
			}
			for _, c := range others[:j] {
				turns := []float64{cross(a, b, p), cross(b, c, p), cross(c, a, p)}
				if cross(a, b, c) != 0 && (slices.Min(turns) >= 0 || slices.Max(turns) <= 0) {
					return true
				}
			}
		}
	}
	return false
}

// First principles: the smallest disc has two places on a diameter or three on
// its rim. Of all such discs that contain every place it is the smallest.
func TestEncloseAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := anyPoints(t, 1, 12)
		got := Enclose(points)
		for _, p := range points {
			if p.Distance(got.Centre) > got.Radius+1e-8 {
				t.Fatalf("%v leaves out %v of %v", got, p, points)
			}
		}
		best := smallestDisc(points)
		if math.Abs(got.Radius-best.Radius) > 1e-7 || !closeTo(got.Centre, best.Centre, 1e-3) {
			t.Fatalf("%v: %v, want %v", points, got, best)
		}
	})
}

func smallestDisc(points []Point) Disc {
	best := Disc{Radius: math.Inf(1)}
	consider := func(centre Point, rim Point) {
		radius := rim.Distance(centre)
		for _, p := range points {
			if p.Distance(centre) > radius+1e-8 {
				return
			}
		}
		if radius < best.Radius {
			best = Disc{centre, radius}
		}
	}
	for i, a := range points {
		consider(a, a)
		for j, b := range points[:i] {
			consider(a.Add(b).Scale(0.5), a)
			for _, c := range points[:j] {
				if centre, ok := middleOfRim(a, b, c); ok {
					consider(centre, a)
				}
			}
		}
	}
	return best
}

// middleOfRim is the point equally far from a, b and c: two linear equations
// solved by Cramer's rule.
func middleOfRim(a, b, c Point) (Point, bool) {
	u, v := b.Sub(a), c.Sub(a)
	det := u.X*v.Y - u.Y*v.X
	if math.Abs(det) < 1e-9 {
		return Point{}, false
	}
	p, q := u.Dot(u)/2, v.Dot(v)/2
	return a.Add(Point{(p*v.Y - q*u.Y) / det, (u.X*q - v.X*p) / det}), true
}

// First principles: the centre for a right triangle is the middle of its
// hypotenuse; for a line, the middle of its ends.
func TestEnclose(t *testing.T) {
	tests := []struct {
		name   string
		points []Point
		want   Disc
	}{
		{"none", nil, Disc{}},
		{"one", []Point{{3, -4}}, Disc{Point{3, -4}, 0}},
		{"one, three times", []Point{{3, -4}, {3, -4}, {3, -4}}, Disc{Point{3, -4}, 0}},
		{"two", []Point{{1, 1}, {7, 9}}, Disc{Point{4, 5}, 5}},
		{"right triangle", []Point{{1, 1}, {7, 1}, {7, 9}}, Disc{Point{4, 5}, 5}},
		{"flat triangle", []Point{{0, 0}, {5, 1}, {10, 0}}, Disc{Point{5, 0}, 5}},
		{"slanting line", []Point{{2, 4}, {4, 8}, {1, 2}, {7, 14}}, Disc{Point{4, 8}, math.Hypot(3, 6)}},
		{"circle with three missing", Circle(12, 200, Point{9, -2}, 7, true)[:9], Disc{Point{9, -2}, 100}},
		{"grid with a place missing inside", slices.Delete(Grid(5, 3, 40, 30, Point{11, 6}), 7, 8), Disc{Point{11, 6}, math.Hypot(80, 30)}},
	}
	for _, tt := range tests {
		if got := Enclose(tt.points); !closeTo(got.Centre, tt.want.Centre, 1e-9) || math.Abs(got.Radius-tt.want.Radius) > 1e-9 {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}

// A row turned in the picture is a line except for rounding. The centre must
// not move off along its normal.
func TestEncloseTurnedRow(t *testing.T) {
	for deg := range 360 {
		points := Row(7, 60, Point{37, -11}, float64(deg))
		want := Disc{points[3], 180}
		if got := Enclose(points); !closeTo(got.Centre, want.Centre, 1e-6) || math.Abs(got.Radius-180) > 1e-6 {
			t.Errorf("%d°: %v, want %v", deg, got, want)
		}
	}
}

// First principles: three places on one line, exact or within rounding, have no
// circle through them. The segment between the outer two is the diameter.
func TestThroughPlacesOnALine(t *testing.T) {
	for _, off := range []float64{0, 1e-13, -1e-13} {
		for _, order := range [][3]int{{0, 1, 2}, {1, 2, 0}, {2, 0, 1}, {1, 0, 2}} {
			on := [3]Point{{10, 20}, {40 + off, 60}, {70, 100}}
			got := through(on[order[0]], on[order[1]], on[order[2]])
			if !closeTo(got.Centre, Point{40, 60}, 1e-9) || math.Abs(got.Radius-50) > 1e-9 {
				t.Errorf("off by %v, order %v: %v", off, order, got)
			}
		}
	}
}

// First principles: hull and disc move with the part.
func TestHullAndDiscMoveWithThePart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points, m := scattered(rapid.IntRange(3, 40).Draw(t, "count"), 6, rapid.Uint64().Draw(t, "seed")), anyMove(t)
		moved := m.points(points)
		disc, want := Enclose(moved), Enclose(points)
		if !closeTo(disc.Centre, m.point(want.Centre), 1e-6*m.scale) || math.Abs(disc.Radius-m.scale*want.Radius) > 1e-6*m.scale {
			t.Fatalf("disc %v, want %v moved by %v", disc, want, m)
		}
		got, corners := Hull(moved), m.points(Hull(points))
		if len(got) != len(corners) {
			t.Fatalf("%d corners, want %d", len(got), len(corners))
		}
		// The same round with another start.
		begin := slices.IndexFunc(corners, func(p Point) bool { return closeTo(p, got[0], 1e-6*m.scale) })
		for k := range got {
			if begin < 0 || !closeTo(got[k], corners[(begin+k)%len(corners)], 1e-6*m.scale) {
				t.Fatalf("hull %v, want %v", got, corners)
			}
		}
	})
}

// First principles: the listing order of the fasteners does not matter.
func TestHullAndDiscKnowNoListing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := anyPoints(t, 1, 20)
		shuffled := rapid.Permutation(points).Draw(t, "shuffled")
		if !slices.Equal(Hull(points), Hull(shuffled)) || Enclose(points) != Enclose(shuffled) {
			t.Fatalf("%v and %v differ", points, shuffled)
		}
	})
}
