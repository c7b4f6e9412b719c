package geometry

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// bruteNearest compares every place with all others.
func bruteNearest(points []Point) []float64 {
	nearest := make([]float64, len(points))
	for i, p := range points {
		nearest[i] = math.Inf(1)
		for k, q := range points {
			if k != i {
				nearest[i] = math.Min(nearest[i], p.Distance(q))
			}
		}
	}
	return nearest
}

// clustered returns places in tight clusters far apart, so that most cells are
// empty and a few are full.
func clustered(clusters, each int, seed uint64) []Point {
	var points []Point
	for k, centre := range scattered(clusters, 30, seed) {
		for _, p := range scattered(each, 3, seed+uint64(k)) {
			points = append(points, centre.Scale(17).Add(p.Scale(0.01)))
		}
	}
	return points
}

func TestNearestDistances(t *testing.T) {
	layouts := map[string][]Point{
		"none":             nil,
		"one":              {{3, 4}},
		"two":              {{3, 4}, {9, 12}},
		"two in one place": {{3, 4}, {3, 4}},
		"five in one":      {{3, 4}, {3, 4}, {3, 4}, {3, 4}, {3, 4}},
		"row":              Row(17, 60, Point{5, 9}, 0),
		"upright row":      Row(17, 60, Point{5, 9}, 90),
		"slanting row":     Row(300, 60, Point{5, 9}, 33),
		"uneven row":       {{0, 1}, {10, 1}, {17, 1}, {41, 1}, {50, 1}, {90, 1}},
		"grid":             Grid(13, 7, 60, 35, Point{-20, 4}),
		"long grid":        Grid(400, 2, 60, 3500, Point{-20, 4}),
		"circle":           Circle(48, 600, Point{7, 7}, 11, true),
		"perimeter":        Rectangle(9, 3, 400, 160, Point{1, 2}),
		"clustered":        clustered(7, 11, 3),
		"one far away":     append(Grid(6, 6, 10, 12, Point{}), Point{90000, -70000}),
		"scattered":        scattered(200, 1, 5),
	}
	for name, points := range layouts {
		got, want := NearestDistances(points), bruteNearest(points)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

// First principles: the nearest distance is the minimum of all distances.
func TestNearestAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := anyPoints(t, 0, 60)
		if rapid.Bool().Draw(t, "far one") {
			points = append(points, Point{rapid.Float64Range(-1e5, 1e5).Draw(t, "far x"), rapid.Float64Range(-1e5, 1e5).Draw(t, "far y")})
		}
		want := bruteNearest(points)
		if got := NearestDistances(points); !slices.Equal(got, want) {
			t.Fatalf("%v: %v, want %v", points, got, want)
		}
		for i, k := range nearestNeighbours(points) {
			if (k == i) != (len(points) == 1) || (k != i && points[i].Distance(points[k]) != want[i]) {
				t.Fatalf("%v: neighbour of %d is %d", points, i, k)
			}
		}
	})
}

// First principles: the median of the distances to the nearest.
func TestSpacing(t *testing.T) {
	tests := []struct {
		name   string
		points []Point
		want   float64
	}{
		{"none", nil, 0},
		{"one", []Point{{3, 4}}, 0},
		{"two", []Point{{3, 4}, {9, 12}}, 10},
		{"grid, by its shorter pitch", Grid(5, 2, 95, 90, Point{7, 1}), 90},
		{"grid turned on its side", Grid(2, 5, 90, 70, Point{7, 1}), 70},
		{"circle, by its chord", Circle(6, 240, Point{7, 1}, 5, true), 120},
		{"uneven row", []Point{{0, 1}, {10, 1}, {17, 1}, {41, 1}, {90, 1}}, 10},         // 10 7 7 24 49
		{"two middle ones: the larger", []Point{{0, 1}, {10, 1}, {30, 1}, {60, 1}}, 20}, // 10 10 20 30
	}
	for _, tt := range tests {
		if got := Spacing(tt.points); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}

// First principles: distances move with the part and scale with it.
func TestSpacingMovesWithThePart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points, m := anyPoints(t, 2, 40), anyMove(t)
		got, want := NearestDistances(m.points(points)), NearestDistances(points)
		for i := range want {
			if math.Abs(got[i]-m.scale*want[i]) > 1e-9*(1+m.scale) {
				t.Fatalf("place %d: %v, want %v × %v", i, got[i], m.scale, want[i])
			}
		}
		if a, b := Spacing(m.points(points)), m.scale*Spacing(points); math.Abs(a-b) > 1e-9*(1+m.scale) {
			t.Fatalf("spacing %v, want %v", a, b)
		}
	})
}

// BenchmarkNearestDistances measures the time per point. It hardly grows with
// the number of points that fill a plate. On one slanted line or a large
// circle, which leave most cells empty, it grows about fourfold from a hundred
// points to ten thousand.
func BenchmarkNearestDistances(b *testing.B) {
	for _, n := range []int{100, 1_000, 10_000} {
		layouts := []struct {
			name   string
			points []Point
		}{
			{"scattered", evenlyScattered(n)},
			{"grid", Grid(n/10, 10, 60, 45, Point{3, 4})},
			{"row", Row(n, 60, Point{3, 4}, 17)},
			{"circle", Circle(n, 60*float64(n)/math.Pi, Point{3, 4}, 0, true)},
		}
		for _, layout := range layouts {
			b.Run(fmt.Sprintf("%s-%d", layout.name, n), func(b *testing.B) {
				for b.Loop() {
					NearestDistances(layout.points)
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/point")
			})
		}
	}
}

// evenlyScattered returns n places of a grid, each moved far off, quickly.
func evenlyScattered(n int) []Point {
	offsets := scattered(100, 1, 9)
	points := Grid(n/10, 10, 60, 45, Point{3, 4})
	for i := range points {
		points[i] = points[i].Add(offsets[(i*37+i/100)%100].Scale(0.04))
	}
	return points
}
