package interaction

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

func load(t testing.TB, name string, change func(string) string) plan.Plan {
	t.Helper()
	text, ok := patterns.BuiltinText(name)
	if !ok {
		t.Fatalf("no built-in %s", name)
	}
	input, problems := patterns.Read(patterns.FromBytes(name, []byte(change(string(text)))))
	if problems.Stops() {
		t.Fatal(problems.Detail())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func asItIs(text string) string { return text }

// Once around goes from neighbour to neighbour; the edge first within each
// kind, and the kinds in the same order as before (first principles).
func TestTheOtherOrder(t *testing.T) {
	for name, round := range map[string]bool{"p4-head": false, "p4-manifold": false, "p4-pump-flange": true, "p4-flywheel": true} {
		p := load(t, name, asItIs)
		other := otherOrder(p, round)
		if round {
			first := p.Joint.Fasteners[other[0]].At.Distance(p.Joint.Fasteners[other[1]].At)
			for k := 2; k < len(other); k++ {
				if step := p.Joint.Fasteners[other[k]].At.Distance(p.Joint.Fasteners[other[k-1]].At); step > first*1.01 {
					t.Errorf("%s: round the rim steps %g mm, then %g mm", name, first, step)
				}
			}
		} else {
			for k, i := range other {
				if was := p.Tighten.Order[k]; p.Joint.Fasteners[i].Kind != p.Joint.Fasteners[was].Kind {
					t.Errorf("%s: step %d is of kind %s, in the plan of %s", name, k+1, p.Joint.Fasteners[i].Kind, p.Joint.Fasteners[was].Kind)
				}
			}
			if first := p.Groups[0].Members; other[0] != p.Tighten.Order[len(first)-1] {
				t.Errorf("%s: edges first begins with %d", name, other[0])
			}
		}
		slices.Sort(other)
		if len(slices.Compact(other)) != len(p.Joint.Fasteners) {
			t.Errorf("%s: the other order is no order: %v", name, other)
		}
	}
}

// No bolt is loaded beyond what it bears. First principles: an M10 of class
// 10.9 yields at its stress area of 57.99 mm² (ISO 898-1, table 2: 58.0) times
// 940 MPa (table 3), which is 54.5 kN. A kind without a class has no such
// limit, and after an angle no figure either.
func TestFullLoadEndsAtYield(t *testing.T) {
	p := load(t, "p4-head", asItIs)
	model, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	targets, err := fullLoad(p, model)
	if err != nil {
		t.Fatal(err)
	}
	if got := slices.Max(targets); math.Abs(got-54_500) > 100 {
		t.Errorf("the greatest full load is %.0f N, want 54.5 kN", got)
	}
	classless := load(t, "p4-head", func(text string) string { return strings.Replace(text, "    class: \"10.9\"\n", "", 1) })
	if model, err = prediction.ModelOf(classless, setup.Setup{}); err != nil {
		t.Fatal(err)
	}
	if r := ReasonOf(classless, model, false); r != nil {
		t.Errorf("after an angle beyond a yield that nobody knows: %+v", r)
	}
}
