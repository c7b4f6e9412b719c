package family_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way/waytest"
)

// Common practice, no source: the usual names for the parts of the gallery.
func TestGallery(t *testing.T) {
	other := map[string]family.Family{
		"small lid of 6": family.Grid, "pipe flange of 8": family.Circle, "flange of 16, two missing": family.Circle,
		"flange of 7 measured off": family.Circle, "circles of 8 and 12": family.Circles,
		"circles of 6 and 6 with a middle bolt": family.Circles, "manifold of four pairs": family.Grid,
		"two flanges of four": family.Flanges, "three flanges of three": family.Flanges,
		"head of 10 measured off": family.Grid, "head of three rows": family.Grid,
		"valve cover of 9": family.Perimeter, "plenum of 11": family.Perimeter, "head of staggered rows": family.Perimeter,
	}
	inside := map[string]int{
		"sump of 16 with two inside": 2, "plate of 18 with three inside": 3, "timing cover with two inside": 2,
		"gearbox half with three inside": 3, "head of staggered rows": 2,
	}
	for _, p := range waytest.Parts() {
		want, named := other[p.Name]
		switch {
		case named:
		case strings.Contains(p.Name, "sump"), strings.Contains(p.Name, "pan"), strings.Contains(p.Name, "lid"), strings.Contains(p.Name, "plate"):
			want = family.Perimeter
		default:
			want = family.Curve
		}
		seen := family.Of(p.Points)
		if seen.Family != want || len(seen.Inner) != inside[p.Name] {
			t.Errorf("%s is a %s with %d inside, want a %s with %d", p.Name, seen.Family, len(seen.Inner), want, inside[p.Name])
		}
		if p.Edge > 0 && seen.Edge != nil {
			checkEdge(t, p, seen)
		}
	}
}

// checkEdge compares the round along an edge with the one drawn.
func checkEdge(t *testing.T, p waytest.Part, seen family.Seen) {
	t.Helper()
	n, off := len(seen.Edge), 0
	for k, i := range seen.Edge {
		next := seen.Edge[(k+1)%n]
		if d := (next - i + p.Edge) % p.Edge; n != p.Edge || d != 1 && d != p.Edge-1 {
			off++
		}
	}
	if off > 0 && !strings.Contains(p.Name, "badly") {
		t.Errorf("%s: the edge goes %v", p.Name, seen.Edge)
	}
}

// First principles: the family does not depend on how the part is turned or
// listed, or on small measuring errors.
func TestFamilyBelongsToThePart(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for _, p := range waytest.Parts() {
		want, spacing := family.Of(p.Points), geometry.Spacing(p.Points)
		for range 20 {
			s, c := math.Sincos(2 * math.Pi * r.Float64())
			points := make([]geometry.Point, len(p.Points))
			for k, i := range r.Perm(len(points)) {
				q := geometry.Polar(p.Points[i], 0.005*spacing, 360*r.Float64())
				points[k] = geometry.Point{X: 0.4 * (c*q.X - s*q.Y), Y: 0.4 * (s*q.X + c*q.Y)}
			}
			seen := family.Of(points)
			if seen.Family != want.Family || len(seen.Inner) != len(want.Inner) || len(seen.Corners) != len(want.Corners) {
				t.Errorf("%s is a %s with %d inside and %d corners, turned a %s with %d and %d", p.Name,
					want.Family, len(want.Inner), len(want.Corners), seen.Family, len(seen.Inner), len(seen.Corners))
				break
			}
		}
	}
}

// First principles: the figures that decided. Two of sixteen places are
// missing; the places of the head were moved by at most a tenth of the pitch
// each way.
func TestFigures(t *testing.T) {
	for _, p := range waytest.Parts() {
		seen := family.Of(p.Points)
		switch p.Name {
		case "flange of 16, two missing":
			if seen.Missing != 2 || seen.OffMm > 1e-6 {
				t.Errorf("%s: %d missing, %g mm off", p.Name, seen.Missing, seen.OffMm)
			}
		case "head of 10 measured off":
			if seen.Layout.Columns != 5 || seen.Layout.Rows != 2 || seen.OffMm > 0.15*95 || seen.OffMm < 1 {
				t.Errorf("%s: %d by %d, %g mm off", p.Name, seen.Layout.Columns, seen.Layout.Rows, seen.OffMm)
			}
		case "circles of 6 and 6 with a middle bolt":
			if len(seen.Rings) != 3 {
				t.Errorf("%s: rings %v", p.Name, seen.Rings)
			}
		case "two flanges of four":
			if len(seen.Parts) != 2 || len(seen.Parts[0]) != 4 {
				t.Errorf("%s: parts %v", p.Name, seen.Parts)
			}
		}
	}
}

// A user may name any family for any places. Nothing fails, and every place is
// in the result.
func TestNamed(t *testing.T) {
	for _, p := range waytest.Parts() {
		for _, name := range family.All {
			for n := range min(6, len(p.Points)) {
				family.As(p.Points[:n], name)
			}
			seen := family.As(p.Points, name)
			if seen.Family != name || !seen.Named || len(seen.Layout.Points) != len(p.Points) {
				t.Errorf("%s as %s: %+v", p.Name, name, seen)
			}
			placed := slices.Concat(seen.Edge, seen.Inner)
			if (name == family.Perimeter || name == family.Curve) && len(placed) != len(p.Points) {
				t.Errorf("%s as %s: %d on the edge and %d inside", p.Name, name, len(seen.Edge), len(seen.Inner))
			}
		}
	}
}

// First principles: random places over an area belong to no family; a row and a
// few places do.
func TestFreeAndFew(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	strewn := make([]geometry.Point, 40)
	for k := range strewn {
		strewn[k] = geometry.Point{X: 500 * r.Float64(), Y: 300 * r.Float64()}
	}
	tests := map[string]struct {
		points []geometry.Point
		want   family.Family
	}{
		"strewn":          {strewn, family.Free},
		"none":            {nil, family.Row},
		"one":             {strewn[:1], family.Row},
		"two":             {strewn[:2], family.Row},
		"row":             {geometry.Row(6, 60, geometry.Point{X: 4}, 17), family.Row},
		"row off a tenth": {[]geometry.Point{{X: 0, Y: 5}, {X: 62, Y: -4}, {X: 115, Y: 6}, {X: 180, Y: -6}, {X: 244, Y: 2}}, family.Row},
	}
	for name, tt := range tests {
		if got := family.Of(tt.points).Family; got != tt.want {
			t.Errorf("%s: %s, want %s", name, got, tt.want)
		}
	}
}
