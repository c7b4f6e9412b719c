package geometry

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// First principles.
func TestApartAndAcross(t *testing.T) {
	for _, tt := range []struct{ a, b, apart float64 }{{0, 0, 0}, {10, 350, 20}, {350, 10, 20}, {90, 270, 180}, {-30, 100, 130}, {725, 5, 0}} {
		if got := Apart(tt.a, tt.b); got != tt.apart {
			t.Errorf("%g and %g are %g apart, want %g", tt.a, tt.b, got, tt.apart)
		}
		if got := Across(tt.a, tt.b); got != (tt.apart >= AcrossDeg) {
			t.Errorf("%g and %g lie across: %v", tt.a, tt.b, got)
		}
	}
}

// First principles: on a square grid the next in the row is a neighbour, and
// the one across the diagonal is not.
func TestNeighbours(t *testing.T) {
	if !Neighbours(Point{}, Point{50, 0}, 50) || Neighbours(Point{}, Point{50, 50}, 50) {
		t.Error("neighbours of a square")
	}
}

func TestOneLine(t *testing.T) {
	row := Row(7, 40, Point{3, 8}, 29)
	if !OneLine(row) || !OneLine(row[:2]) || !OneLine(nil) {
		t.Error("a row is one line")
	}
	row[3].Y += 0.2 * 40
	if OneLine(row) {
		t.Error("one lies a fifth of the pitch off the line")
	}
}

// First principles: along an edge the neighbours are the next on either side,
// on a grid those in the same row and column, however the part is turned.
func TestRelated(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 5))
	for range 20 {
		deg := 360 * r.Float64()
		for i, related := range Related(rotated(Circle(14, 300, Point{4, 2}, 0, false), deg)) {
			if slices.Sort(related); len(related) != 2 || !slices.Contains(related, (i+1)%14) {
				t.Fatalf("place %d of a circle has the neighbours %v", i, related)
			}
		}
		grid := Grid(5, 4, 60, 47, Point{})
		for i, related := range Related(rotated(grid, deg)) {
			want := 0
			for k := range grid {
				if dx, dy := i%5-k%5, i/5-k/5; dx*dx+dy*dy == 1 {
					want++
				}
			}
			if len(related) != want {
				t.Fatalf("place %d of a grid has the neighbours %v", i, related)
			}
		}
	}
}

// First principles: compared with the definition, pair by pair.
func TestRelatedByDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for range 30 {
		points := make([]Point, 3+r.IntN(30))
		for i := range points {
			points[i] = Point{100 * r.Float64(), 60 * r.Float64()}
		}
		related := Related(points)
		for i := range points {
			for k := range points {
				if want := i != k && !between(points, i, k); slices.Contains(related[i], k) != want {
					t.Fatalf("%d and %d of %v: want neighbours %v", i, k, points, want)
				}
			}
		}
	}
}

// First principles: the round of places along an edge is the path along it,
// anticlockwise, for any start and listing order.
func TestRound(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 5))
	edges := map[string][]Point{
		"circle":    Circle(17, 300, Point{4, 2}, 10, false),
		"rectangle": Rectangle(7, 3, 360, 200, Point{}),
		"waist": {{-70, 150}, {0, 165}, {70, 150}, {90, 90}, {60, 30}, {50, -30}, {80, -90}, {95, -150},
			{40, -185}, {-40, -185}, {-95, -150}, {-80, -90}, {-50, -30}, {-60, 30}, {-90, 90}},
		"three": {{0, 0}, {40, 5}, {12, 30}},
	}
	for name, edge := range edges {
		for range 10 {
			n, listing := len(edge), r.Perm(len(edge))
			points := make([]Point, n)
			for k, i := range listing {
				points[k] = edge[i]
			}
			round := Round(points)
			for k := range round {
				a, b := listing[round[k]], listing[round[(k+1)%n]]
				if d := (a - b + n) % n; d != 1 && d != n-1 {
					t.Fatalf("%s: %d follows %d", name, b, a)
				}
			}
			area := 0.0
			for k, i := range round {
				area += cross(Point{}, points[i], points[round[(k+1)%n]])
			}
			if area <= 0 {
				t.Errorf("%s goes clockwise", name)
			}
		}
	}
}

// First principles: rows measured with a rule are rows; random places are not.
func TestLooseRows(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 50 {
		columns, rows := 3+r.IntN(6), 2+r.IntN(2)
		grid := Grid(columns, rows, 95, 70, Point{3, 9})
		for i := range grid {
			grid[i] = grid[i].Add(Point{9.5 * (2*r.Float64() - 1), 7 * (2*r.Float64() - 1)})
		}
		if layout, ok := LooseRows(grid); !ok || layout.Columns != columns || layout.Rows != rows {
			t.Errorf("%d by %d is seen as %d by %d", columns, rows, layout.Columns, layout.Rows)
		}
		if layout, ok := LooseRows(rotated(grid, 30)); !ok || layout.Columns*layout.Rows != columns*rows {
			t.Errorf("%d by %d, turned, is seen as %d by %d", columns, rows, layout.Columns, layout.Rows)
		}
		strewn := make([]Point, 14)
		for i := range strewn {
			strewn[i] = Point{400 * r.Float64(), 300 * r.Float64()}
		}
		if layout, ok := LooseRows(strewn); ok {
			t.Errorf("strewn places are seen as %d by %d", layout.Columns, layout.Rows)
		}
	}
}
