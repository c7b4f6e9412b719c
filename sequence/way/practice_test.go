package way

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/sequence/way/waytest"
)

// worked returns the number of each place of a gallery part in the order.
func worked(t *testing.T, name string) []int {
	t.Helper()
	for _, p := range waytest.Parts() {
		if p.Name == name {
			return numbers(Places(p.Points, Auto, TurnDefault))
		}
	}
	t.Fatalf("no part %q", name)
	return nil
}

// Common practice, no source: on staggered rows the middles of the outer rows
// come before the places beside them.
func TestMiddlesOfStaggeredRows(t *testing.T) {
	t.Parallel()
	got := worked(t, "head of staggered rows")
	for _, middle := range []int{2, 11} {
		for _, other := range []int{0, 1, 3, 4, 5, 8, 9, 10, 12, 13} {
			if got[middle] > got[other] {
				t.Errorf("place %d is worked at %d, place %d before it at %d", middle, got[middle], other, got[other])
			}
		}
	}
}

// Common practice, no source: on a housing with two arms the corner of an end
// comes after the middle of that end, and after the place across the arm.
func TestCornersAfterTheMiddleOfTheirEnd(t *testing.T) {
	t.Parallel()
	got := worked(t, "L-shaped housing of 16")
	for corner, before := range map[int][]int{2: {1, 15}, 6: {7, 9}, 0: {1, 15}, 8: {7, 9}, 12: {11, 13}} {
		for _, place := range before {
			if got[corner] < got[place] {
				t.Errorf("corner %d is worked at %d, before place %d at %d", corner, got[corner], place, got[place])
			}
		}
	}
}

// Common practice, no source: the ends of two arms come after their long sides,
// so that a bulge there can spread outwards.
func TestEndsOfArmsAfterTheirSides(t *testing.T) {
	t.Parallel()
	got := worked(t, "L-shaped housing of 16")
	for _, end := range []int{1, 7} {
		for _, side := range []int{3, 4, 5, 9, 10, 11, 13, 14, 15} {
			if got[end] < got[side] {
				t.Errorf("end %d is worked at %d, before place %d of a side at %d", end, got[end], side, got[side])
			}
		}
	}
}

// Common practice, no source: of two places on opposite sides the one further
// in comes first while what is tight leans away from it.
func TestFurtherInComesFirstAcross(t *testing.T) {
	t.Parallel()
	if got := worked(t, "valve cover of 9"); got[1] < got[6] {
		t.Errorf("place 1 is worked at %d, before place 6 across at %d", got[1], got[6])
	}
}

// Common practice, no source: no two neighbours of a side row follow each
// other, though the edge alternates between it and the row before.
func TestSideRowByTurns(t *testing.T) {
	t.Parallel()
	got := worked(t, "head with a side row, all bolts alike")
	for place := 10; place < 13; place++ {
		if apart := got[place] - got[place+1]; apart == 1 || apart == -1 {
			t.Errorf("places %d and %d follow each other, at %d and %d", place, place+1, got[place], got[place+1])
		}
	}
}

// Common practice, no source: the ends alternate to the last.
func TestEndsTakeTurns(t *testing.T) {
	t.Parallel()
	for name, left := range map[string][]int{
		"pan without one corner": {0, 12, 13, 14}, "irregular oval of 21": {7, 8, 9, 10, 11, 12, 13},
	} {
		got := worked(t, name)
		n := len(got)
		order := make([]int, n)
		for i, number := range got {
			order[number-1] = i
		}
		for k := n - 2; k < n; k++ {
			if slices.Contains(left, order[k]) == slices.Contains(left, order[k-1]) {
				t.Errorf("%s: steps %d and %d are at one end", name, k, k+1)
			}
		}
	}
}

// Common practice, no source: a place clearly further in than both its
// neighbours does not come last of the three, because a bulge there could not
// spread outwards. On random parts this happens to at most one such place in a
// hundred.
func TestHardlyAnythingIsTrapped(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(7, 5))
	kinds := []func(*rand.Rand) outlined{randomPerimeter, randomOval, dShape, triangle, timingCover}
	trapped, all := 0, 0
	for k := range 600 {
		p := kinds[k%len(kinds)](r)
		got, c, reach := numbers(Places(p.points, Auto, TurnDefault)), geometry.Centroid(p.points), 0.0
		for _, q := range p.points {
			reach = max(reach, q.Distance(c))
		}
		for i, q := range p.points {
			last, next := (i+p.edge-1)%p.edge, (i+1)%p.edge
			nearer := min(p.points[last].Distance(c), p.points[next].Distance(c)) - q.Distance(c)
			if nearer < 0.03*reach {
				continue
			}
			all++
			if got[i] > got[last] && got[i] > got[next] {
				trapped++
			}
		}
	}
	if trapped > 0 || all < 500 {
		t.Errorf("%d of %d are trapped", trapped, all)
	}
}

// Common practice, no source: on a circle of 16 without places 5 and 10, bolt
// 2, which has none across, waits until bolt 13, which has none either, has
// others on its far side. The rest is the star without the missing places.
func TestStarWithTwoMissingBolts(t *testing.T) {
	t.Parallel()
	order := Places(slices.Delete(slices.Delete(geometry.Circle(16, 320, geometry.Point{}, 90, true), 9, 10), 4, 5), Star, TurnDefault)
	for k, i := range order {
		place := i + 1
		if place >= 5 {
			place++
		}
		if place >= 10 {
			place++
		}
		order[k] = place
	}
	if diff := cmp.Diff([]int{1, 9, 13, 3, 11, 7, 15, 6, 14, 4, 12, 2, 8, 16}, order); diff != "" {
		t.Error(diff)
	}
}

// First principles: whichever two bolts are missing, none is lost, and the rest
// pulls no further than two bolts do.
func TestStarWithAnyTwoMissing(t *testing.T) {
	t.Parallel()
	for n := 10; n <= 24; n += 2 {
		circle := geometry.Circle(n, 240, geometry.Point{}, 90, true)
		for gone := 1; gone < n; gone++ {
			left := slices.Delete(slices.Delete(slices.Clone(circle), gone, gone+1), 0, 1)
			order := Places(left, Star, TurnDefault)
			if sorted := slices.Sorted(slices.Values(order)); !slices.Equal(sorted, counted(len(left))) {
				t.Fatalf("circle of %d without 1 and %d: %v", n, gone+1, order)
			}
			var sum geometry.Point
			for k, i := range order {
				if sum = sum.Add(left[i]); sum.Distance(geometry.Point{}) > 2*240+1e-6 {
					t.Errorf("circle of %d without 1 and %d pulls like %.2f after step %d", n, gone+1, sum.Distance(geometry.Point{})/240, k+1)
				}
			}
		}
	}
}
