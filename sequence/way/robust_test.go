package way

import (
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
)

// First principles: a head is still a head if measured up to a tenth of the
// pitch off in x and in y.
func TestHeadsMeasuredATenthOff(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(5, 10))
	off := func(pitch float64) float64 { return 0.1 * pitch * (2*r.Float64() - 1) }
	for _, pitch := range [][2]float64{{95, 90}, {60, 110}, {100, 63}, {92, 64}, {80, 80}} {
		for columns := 2; columns <= 8; columns++ {
			for rows := 1; rows <= 3; rows++ {
				head := geometry.Grid(columns, rows, pitch[0], pitch[1], geometry.Point{X: 31, Y: -17})
				if len(head) == 4 { // four corners are not a head
					continue
				}
				want, changed := Places(head, Auto, TurnDefault), 0
				for range 40 {
					measured := moved(head, func(p geometry.Point) geometry.Point {
						return geometry.Point{X: p.X + off(pitch[0]), Y: p.Y + off(pitch[min(1, rows-1)])}
					})
					if !slices.Equal(want, Places(measured, Auto, TurnDefault)) {
						changed++
					}
				}
				if changed > 0 {
					t.Errorf("grid %d×%d at %v: the order changed in %d of 40", columns, rows, pitch, changed)
				}
			}
		}
	}
}

// lacking returns the order without one place, and the order of the part on
// which that place is missing.
func lacking(points []geometry.Point, gone int) (before, after []int) {
	before = slices.DeleteFunc(Places(points, Auto, TurnDefault), func(i int) bool { return i == gone })
	after = Places(slices.Delete(slices.Clone(points), gone, gone+1), Auto, TurnDefault)
	for k, i := range after {
		if i >= gone {
			after[k]++
		}
	}
	return before, after
}

// First principles: a head with one bolt missing has the order of the head, and
// a circle that of the circle, unless the first bolt is missing.
func TestOneMissingFromHeadsAndCircles(t *testing.T) {
	t.Parallel()
	for columns := 4; columns <= 8; columns++ {
		for rows := 2; rows <= 3; rows++ {
			head := geometry.Grid(columns, rows, 95, 90, geometry.Point{X: 31, Y: -17})
			for gone := range head {
				if before, after := lacking(head, gone); !slices.Equal(before, after) {
					t.Errorf("grid %d×%d without place %d: %v, not %v", columns, rows, gone, after, before)
				}
			}
		}
	}
	for n := 8; n <= 24; n++ {
		circle := geometry.Circle(n, 300, geometry.Point{X: 31, Y: -17}, 90, true)
		for gone := 1; gone < n; gone++ {
			if before, after := lacking(circle, gone); !slices.Equal(before, after) {
				t.Errorf("circle of %d without place %d: %v, not %v", n, gone, after, before)
			}
		}
	}
}

// If one fastener of an edge is removed or added, those more than three pitches
// away keep their turn within two steps: on half of the parts all of them, on
// nine of ten at least three quarters. The balance must be restored somewhere.
// The shares are pinned from our own output.
func TestOneMissingFromAnEdge(t *testing.T) {
	t.Parallel()
	const far, near, parts = 3.0, 2, 100
	for name, kind := range map[string]func(*rand.Rand) outlined{
		"perimeter": randomPerimeter, "oval": randomOval, "D": dShape, "triangle": triangle, "timing cover": timingCover,
	} {
		r, moved := rand.New(rand.NewPCG(3, 3)), []float64(nil)
		for range parts {
			points := kind(r).points
			gone := r.IntN(len(points))
			before, after := lacking(points, gone)
			count := 0
			for k, i := range before {
				steps := slices.Index(after, i) - k
				if max(steps, -steps) > near && points[i].Distance(points[gone]) > far*geometry.Spacing(points) {
					count++
				}
			}
			moved = append(moved, float64(count)/float64(len(before)))
		}
		slices.Sort(moved)
		t.Logf("%s: of the fasteners %.0f %% are moved in the median, %.0f %% on one part of ten", name, 100*moved[parts/2], 100*moved[parts*9/10])
		if moved[parts/2] > 0 || moved[parts*9/10] > 0.25 {
			t.Errorf("%s: a missing fastener changes too much", name)
		}
	}
}
