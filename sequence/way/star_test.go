package way

import (
	"os"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"

	"drawdown/geometry"
)

// published reads the cross-pattern lists; the file names their source.
func published(t *testing.T) map[int][]int {
	data, err := os.ReadFile("testdata/cross-pattern.yaml")
	if err != nil {
		t.Fatal(err)
	}
	lists := map[int][]int{}
	if err := yaml.Unmarshal(data, &lists); err != nil {
		t.Fatal(err)
	}
	return lists
}

// starOrder numbers the places of a circle from 1, clockwise from the first.
func starOrder(n int, firstDeg float64) []int {
	order := Places(geometry.Circle(n, 240, geometry.Point{X: 5, Y: -3}, firstDeg, true), Star, TurnDefault)
	for k := range order {
		order[k]++
	}
	return order
}

func TestStarIsTheCrossPattern(t *testing.T) {
	t.Parallel()
	for n, want := range published(t) {
		if diff := cmp.Diff(want, starOrder(n, 90)); diff != "" {
			t.Errorf("circle of %d (-published +got):\n%s", n, diff)
		}
	}
}

// The structure of the published lists, for every multiple of four: groups of
// four, two opposite, then two opposite at right angles.
func TestStarGroupsOfFour(t *testing.T) {
	t.Parallel()
	for n := 4; n <= 400; n += 4 {
		order := starOrder(n, 90)
		if order[0] != 1 {
			t.Errorf("circle of %d begins with %d", n, order[0])
		}
		for g := range slices.Chunk(order, 4) {
			apart := func(a, b int) int { return ((g[b]-g[a])%n + n) % n }
			if apart(0, 1) != n/2 || apart(2, 3) != n/2 || apart(0, 2) != n/4 {
				t.Errorf("circle of %d: group %v is not two opposite pairs at right angles", n, g)
			}
		}
	}
}

// First principles, for counts missing from the standard's table: opposite
// places follow each other if there are any, and no place follows its neighbour
// where avoidable.
func TestStarOfOtherCounts(t *testing.T) {
	t.Parallel()
	for n := 5; n <= 101; n++ {
		if n%4 == 0 {
			continue
		}
		order := starOrder(n, 90)
		for k := 1; k < n; k++ {
			step := ((order[k]-order[k-1])%n + n) % n
			step = min(step, n-step)
			switch {
			case n%2 == 0 && k%2 == 1 && step != n/2:
				t.Errorf("circle of %d: %d is followed by %d, which is not opposite", n, order[k-1], order[k])
			case n > 6 && step < 2:
				t.Errorf("circle of %d: neighbours %d and %d follow each other", n, order[k-1], order[k])
			}
		}
	}
}

// The five-pointed star of a wheel with five bolts (common practice, no source).
func TestStarOfFive(t *testing.T) {
	t.Parallel()
	if diff := cmp.Diff([]int{1, 3, 5, 2, 4}, starOrder(5, 90)); diff != "" {
		t.Error(diff)
	}
}

// A missing bolt leaves its place empty and changes nothing else.
func TestStarWithAMissingBolt(t *testing.T) {
	t.Parallel()
	for n := 8; n <= 32; n++ {
		circle := geometry.Circle(n, 240, geometry.Point{}, 90, true)
		const gone = 4 // index of place 5
		left := slices.Delete(slices.Clone(circle), gone, gone+1)
		var want []int
		for _, place := range starOrder(n, 90) {
			switch {
			case place-1 < gone:
				want = append(want, place-1)
			case place-1 > gone:
				want = append(want, place-2)
			}
		}
		if diff := cmp.Diff(want, Places(left, Star, TurnDefault)); diff != "" {
			t.Errorf("circle of %d without place 5 (-want +got):\n%s", n, diff)
		}
	}
}
