package geometry

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// The rings of a filled grid, by the indices of the places (row by row from the
// top left). First principles: one column or row further out is one ring
// further out.
func TestGridRings(t *testing.T) {
	tests := []struct {
		name          string
		columns, rows int
		want          [][]int
	}{
		{"5 × 2", 5, 2, [][]int{{2, 7}, {1, 3, 6, 8}, {0, 4, 5, 9}}},
		{"4 × 2", 4, 2, [][]int{{1, 2, 5, 6}, {0, 3, 4, 7}}},
		{"3 × 3", 3, 3, [][]int{{4}, {0, 1, 2, 3, 5, 6, 7, 8}}},
		{"2 × 3", 2, 3, [][]int{{2, 3}, {0, 1, 4, 5}}},
	}
	for _, tt := range tests {
		layout := NewLayout(Grid(tt.columns, tt.rows, 95, 72, Point{12, -7}))
		got := layout.Rings(Enclose(layout.Points).Centre)
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s:\n%s", tt.name, diff)
		}
	}
}

// First principles: two bolt circles and a bolt in the hub are three rings, in
// any listing order.
func TestCircleRings(t *testing.T) {
	centre := Point{9, -4}
	points := slices.Concat(Circle(8, 300, centre, 10, true), []Point{centre}, Circle(4, 140, centre, 33, true))
	layout := NewLayout(points)
	if layout.Filled() {
		t.Fatal("two circles taken for a grid")
	}
	rings := layout.Rings(centre)
	var sizes []int
	for _, ring := range rings {
		sizes = append(sizes, len(ring))
	}
	if !slices.Equal(sizes, []int{1, 4, 8}) || rings[0][0] != 8 {
		t.Errorf("rings %v", rings)
	}
	if one := NewLayout(Circle(16, 300, centre, 10, true)).Rings(centre); len(one) != 1 || len(one[0]) != 16 {
		t.Errorf("one circle: %v", one)
	}
}

// Twelve places on an arc far from its centre, each further out than the one
// before by a share of the spacing. The tolerance is between 5 % and 18 %, in
// the middle of the widest interval without a jump. Rings wider than half a
// spacing are divided at their widest jump.
func TestDistanceRings(t *testing.T) {
	tests := []struct {
		name   string
		jumps  map[int]float64 // before which place, and by what share
		others float64
		want   []int
	}{
		{"two circles 30 % apart", map[int]float64{7: 0.3}, 0, []int{7, 5}},
		{"two circles 4 % apart", map[int]float64{7: 0.04}, 0, []int{12}},
		{"12 % and 40 %", map[int]float64{4: 0.12, 8: 0.4}, 0, []int{4, 4, 4}},
		{"many jumps, the least of them below 5 %", map[int]float64{2: 0.049, 4: 0.091, 6: 0.13, 9: 0.17}, 0, []int{4, 2, 3, 3}},
		{"running on, widest in the middle", map[int]float64{5: 0.08}, 0.06, []int{5, 7}},
	}
	for _, tt := range tests {
		const radius, spacing = 2000, 100.0
		points := make([]Point, 12)
		out := 0.0
		for k := range points {
			if share, ok := tt.jumps[k]; ok {
				out += share * spacing
			} else if k > 0 {
				out += tt.others * spacing
			}
			points[k] = Polar(Point{3, 8}, radius+out, float64(k)*2*math.Asin(spacing/2/radius)*180/math.Pi)
		}
		var sizes []int
		for _, ring := range distanceRings(points, Point{3, 8}) {
			sizes = append(sizes, len(ring))
		}
		if !slices.Equal(sizes, tt.want) {
			t.Errorf("%s: rings of %v, want %v (spacing %v)", tt.name, sizes, tt.want, Spacing(points))
		}
	}
}

func TestNoRings(t *testing.T) {
	if rings := NewLayout(nil).Rings(Point{}); len(rings) != 0 {
		t.Errorf("%v", rings)
	}
	if rings := NewLayout([]Point{{3, 4}}).Rings(Point{3, 4}); len(rings) != 1 || !slices.Equal(rings[0], []int{0}) {
		t.Errorf("one place: %v", rings)
	}
}

// First principles: every place is in one ring, and rings run from the inside
// out. A ring of a layout without rows is at most half a spacing wide, and a
// jump separates it from the next.
func TestRings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []Point
		switch rapid.SampledFrom([]string{"scattered", "grid", "circles", "any"}).Draw(t, "layout") {
		case "scattered":
			points = scattered(rapid.IntRange(1, 60).Draw(t, "count"), 6, rapid.Uint64().Draw(t, "seed"))
		case "grid":
			points = Grid(rapid.IntRange(1, 8).Draw(t, "columns"), rapid.IntRange(1, 5).Draw(t, "rows"), 95, 72, Point{12, -7})
		case "circles":
			for k := range rapid.IntRange(1, 4).Draw(t, "circles") {
				points = append(points, Circle(rapid.IntRange(1, 12).Draw(t, "holes"), 100+150*float64(k), Point{5, 3}, 17, true)...)
			}
		default:
			points = anyPoints(t, 1, 40)
		}
		layout := NewLayout(points)
		centre := Enclose(layout.Points).Centre
		checkRings(t, layout, centre, layout.Rings(centre))
	})
}

func checkRings(t *rapid.T, layout Layout, centre Point, rings [][]int) {
	all := slices.Sorted(slices.Values(slices.Concat(rings...)))
	if len(all) != len(layout.Points) {
		t.Fatalf("%d places in the rings %v, want %d", len(all), rings, len(layout.Points))
	}
	for i, k := range all {
		if i != k {
			t.Fatalf("%v: place %d is missing or doubled", rings, i)
		}
	}
	if layout.Filled() {
		return // its rings are rectangles, not circles
	}
	outer, spacing := -1.0, Spacing(layout.Points)
	for n, ring := range rings {
		near, far := math.Inf(1), 0.0
		for _, i := range ring {
			d := layout.Points[i].Distance(centre)
			near, far = math.Min(near, d), math.Max(far, d)
		}
		if near < outer {
			t.Fatalf("ring %d begins at %v, the one before ends at %v", n, near, outer)
		}
		if far-near > spacing/2 && spacing > 0 {
			t.Fatalf("ring %d is %v wide, spacing %v", n, far-near, spacing)
		}
		outer = far
	}
}

// The tolerance keeps its promise: a hole 1 % of the spacing off does not
// change the rings of a regular part.
func TestMeasuredPartsKeepTheirRings(t *testing.T) {
	parts := regularParts()
	for _, name := range sortedNames(parts) {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			want := ringsOf(parts[name])
			if diff := cmp.Diff(want, ringsOf(jittered(t, parts[name], 0.01))); diff != "" {
				t.Fatal(diff)
			}
		}))
	}
}

// ringsOf returns the rings with sorted members. Places of one ring have no
// order.
func ringsOf(points []Point) [][]int {
	layout := NewLayout(points)
	rings := layout.Rings(Enclose(layout.Points).Centre)
	for _, ring := range rings {
		slices.Sort(ring)
	}
	return rings
}

// First principles: rings move with the part.
func TestRingsMoveWithThePart(t *testing.T) {
	parts := regularParts()
	for _, name := range sortedNames(parts) {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			if diff := cmp.Diff(ringsOf(parts[name]), ringsOf(anyMove(t).points(parts[name]))); diff != "" {
				t.Fatal(diff)
			}
		}))
	}
}

// First principles: the tolerance is in the widest gap between the jumps.
func TestQuietest(t *testing.T) {
	tests := []struct {
		values []float64
		want   float64
	}{
		{nil, 15},
		{[]float64{2, 9, 31}, 15},         // none inside
		{[]float64{12, 14}, 17},           // 14 … 20
		{[]float64{18, 17}, 13.5},         // 10 … 17
		{[]float64{11, 12, 18, 19}, 15},   // 12 … 18
		{[]float64{10, 20, 11, 13}, 16.5}, // 13 … 20
	}
	for _, tt := range tests {
		if got := quietest(tt.values, 10, 20); got != tt.want {
			t.Errorf("%v: %v, want %v", tt.values, got, tt.want)
		}
	}
}
