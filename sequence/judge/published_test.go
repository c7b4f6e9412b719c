package judge_test

import (
	"os"
	"testing"

	"gopkg.in/yaml.v3"

	"drawdown/geometry"
	"drawdown/sequence/judge"
)

// Published: the cross-pattern lists of ASME PCC-1, Table 4 (the file names
// their source). No rule may reject what the standard prints.
func TestPublishedStarListsAreSound(t *testing.T) {
	t.Parallel()
	data, err := os.ReadFile("../way/testdata/cross-pattern.yaml")
	if err != nil {
		t.Fatal(err)
	}
	lists := map[int][]int{}
	if err := yaml.Unmarshal(data, &lists); err != nil {
		t.Fatal(err)
	}
	if len(lists) < 6 {
		t.Fatalf("only %d lists", len(lists))
	}
	for n, list := range lists {
		order := make([]int, len(list))
		for k, number := range list {
			order[k] = number - 1
		}
		r := judged(geometry.Circle(n, 240, geometry.Point{X: 5, Y: -3}, 90, true), order)
		if r.Verdict != judge.Sound || len(r.Findings) > 0 {
			t.Errorf("circle of %d is %q: %q", n, r.Verdict, words(r))
		}
	}
}

// Value from memory: ASME PCC-1 also has a pattern by quarters, here for 16
// bolts. Four bolts a quarter apart are balanced without being opposite in
// pairs.
func TestQuartersAreSound(t *testing.T) {
	t.Parallel()
	order := make([]int, 0, 16)
	for _, start := range []int{0, 2, 1, 3} {
		for quarter := range 4 {
			order = append(order, start+4*quarter)
		}
	}
	wantVerdict(t, "round the quarters", judged(geometry.Circle(16, 240, geometry.Point{X: 5, Y: -3}, 90, true), order), judge.Sound)
}
