package exercise_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/sequence"
	"drawdown/sequence/exercise"
	"drawdown/sequence/plan"
)

var names = exercise.Names{Title: "Part", Machine: "Fernhollow P4 pump engine", View: "from above", Main: "main", Small: "small"}

func parts(t *testing.T, seed uint64, n int) []exercise.Exercise {
	t.Helper()
	made, err := exercise.Make(seed, n)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// The same seed gives the same parts, a shorter list is the start of a longer
// one, and another seed gives other parts.
func TestSeeds(t *testing.T) {
	many := parts(t, 7, 20)
	if diff := cmp.Diff(fmt.Sprint(many[:5]), fmt.Sprint(parts(t, 7, 5))); diff != "" {
		t.Errorf("five of seed 7 are not the first of twenty:\n%s", diff)
	}
	if cmp.Equal(fmt.Sprint(many[:5]), fmt.Sprint(parts(t, 8, 5))) {
		t.Error("seeds 7 and 8 give the same parts")
	}
}

// All parts of a seed differ, every family occurs, and every part gives a plan
// with the usual way of the trade for its family.
func TestPartsOfAClass(t *testing.T) {
	ways := map[exercise.Family]sequence.Way{ // the ways of package sequence for the layouts
		exercise.Head: sequence.Spiral, exercise.Cover: sequence.Balanced,
		exercise.Flange: sequence.Star, exercise.Caps: sequence.RowWay,
	}
	for seed := range uint64(25) {
		seen, families := map[string]int{}, map[exercise.Family]int{}
		for k, e := range parts(t, seed, exercise.Most) {
			key := fmt.Sprint(e.Joint)
			if twin, twice := seen[key]; twice {
				t.Errorf("seed %d: parts %d and %d are the same", seed, twin+1, k+1)
			}
			seen[key] = k
			families[e.Family]++
			p, err := plan.Build(e.Input("sheet", names))
			if err != nil {
				t.Fatalf("seed %d, part %d (%s): %v", seed, k+1, e.Family, err)
			}
			if got := p.Groups[0].Way; got != ways[e.Family] {
				t.Errorf("seed %d, part %d (%s) goes by %s", seed, k+1, e.Family, got)
			}
			checkIDs(t, p)
		}
		for _, family := range exercise.Families {
			if families[family] != exercise.Most/len(exercise.Families) {
				t.Errorf("seed %d: %d parts are a %s", seed, families[family], family)
			}
		}
	}
}

// checkIDs checks that ids are single letters, all different, not confusable
// with digits, and that small bolts come last.
func checkIDs(t *testing.T, p plan.Plan) {
	t.Helper()
	ids := p.IDs(p.Tighten.Order)
	for _, id := range ids {
		if len(id) != 1 || id < "A" || id > "Z" || id == "I" || id == "O" {
			t.Errorf("%s: the letter %q", p.Title, id)
		}
	}
	if slices.Sort(ids); len(slices.Compact(ids)) != len(p.Joint.Fasteners) {
		t.Errorf("a letter stands twice: %q", ids)
	}
	small := false
	for _, i := range p.Tighten.Order {
		is := p.Joint.Fasteners[i].Kind == names.Small
		if small && !is {
			t.Error("a main bolt comes after a small one")
		}
		small = small || is
	}
}

func TestHowMany(t *testing.T) {
	for _, n := range []int{-1, 0, exercise.Most + 1} {
		if _, err := exercise.Make(1, n); err == nil {
			t.Errorf("%d parts are made", n)
		}
	}
}
