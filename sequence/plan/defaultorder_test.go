package plan

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// numbered is bolts in a row, each as "kind number"; number 0 means none.
func numbered(of ...string) Input {
	in := Input{}
	for k, text := range of {
		f := geometry.Fastener{ID: fmt.Sprint("F", k), At: geometry.Point{X: float64(40 * k)}}
		if _, err := fmt.Sscan(text, &f.Kind, &f.Cast); err != nil {
			panic(err)
		}
		in.Joint.Fasteners = append(in.Joint.Fasteners, f)
		if (Plan{Kinds: in.Kinds}).Kind(f.Kind).Hole == 0 {
			in.Kinds = append(in.Kinds, Kind{Name: f.Kind, Hole: 9})
		}
	}
	return in
}

// If all bolts have cast numbers, the kinds come in the order of their numbers;
// if the numbers mix, all are one group (contract of the pattern file).
func TestGroupsOfACasting(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		of   []string
		want string
	}{
		{[]string{"a 3", "a 4", "b 2", "b 1"}, "[b] cast, [a] cast"},
		{[]string{"a 1", "b 2", "a 3", "b 4"}, "[a b] cast"},
		{[]string{"b 1", "a 2", "b 3"}, "[b a] cast"},
		{[]string{"a 1"}, "[a] cast"},
		{[]string{"a 1", "a 2", "b 2", "b 1"}, ""},
		{[]string{"a 0", "a 2", "b 3"}, ""},
	} {
		in := numbered(c.of...)
		if got := groupsInShort(castGroups(in)); got != c.want {
			t.Errorf("%v: %q, want %q", c.of, got, c.want)
		}
		in.Way = sequence.Spiral
		if got := castGroups(in); got != nil {
			t.Errorf("%v: the user's way comes to %v", c.of, got)
		}
	}
}

func groupsInShort(groups []sequence.Group) (text string) {
	for k, g := range groups {
		if k > 0 {
			text += ", "
		}
		text += fmt.Sprint(g.Kinds, " ", g.Way)
	}
	return text
}

// Kinds of one size are sorted by their distance from the middle, then by name;
// a kind with all numbers cast goes by its numbers (contract of the pattern
// file).
func TestKindsOfOneSize(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		of   []string
		want string
	}{
		{[]string{"a 0", "b 0", "b 0", "b 0", "a 0"}, "[b] auto, [a] auto"},
		{[]string{"b 0", "a 0", "a 0", "b 0"}, "[a] auto, [b] auto"},
		{[]string{"b 0", "a 0", "b 0", "a 0"}, "[a] auto, [b] auto"},
		{[]string{"a 1", "b 0", "b 0", "b 0", "a 2"}, "[b] auto, [a] cast"},
		// With one bolt in the middle and two at the ends the mean is 80 mm,
		// but not the sum.
		{[]string{"a 0", "b 0", "b 0", "a 0", "b 0", "b 0", "a 0"}, "[b] auto, [a] auto"},
	} {
		if got := groupsInShort(defaultGroups(numbered(c.of...))); got != c.want {
			t.Errorf("%v: %q, want %q", c.of, got, c.want)
		}
	}
	joint := numbered("a 0", "b 0", "a 0", "a 0").Joint
	for kind, want := range map[string]int{"a": 667, "b": 400, "none": 0} { // (0 + 80 + 120) / 3 mm from the first
		if got := meanDistance(joint, kind, geometry.Point{}); got != want {
			t.Errorf("%s: %d tenths of a millimetre, want %d", kind, got, want)
		}
	}
}

// What the user asks for overrides the file, and a maker's list over all kinds
// is split into groups by kind.
func TestAskedWayOverOneGroup(t *testing.T) {
	t.Parallel()
	in := numbered("a 0", "a 0", "b 0", "b 0")
	in.Groups = []sequence.Group{{Way: sequence.List, List: []string{"F0", "F1", "F2", "F3"}}}
	if got := in.groups(); len(got) != 1 || got[0].Way != sequence.List {
		t.Errorf("the list has gone: %v", got)
	}
	in.Way = sequence.RowWay
	if got := in.groups(); len(got) != 2 || got[0].Way != sequence.RowWay || got[0].List != nil {
		t.Errorf("the user's way: %v", got)
	}
	in.Groups = []sequence.Group{{Kinds: []string{"b"}}, {Kinds: []string{"a"}}}
	if got := in.groups(); len(got) != 2 || got[0].Kinds[0] != "b" {
		t.Errorf("the order of the file's groups has gone: %v", got)
	}
}

// The usual way of a row is from its middle outwards, whatever the file names.
func TestUsualWay(t *testing.T) {
	t.Parallel()
	in := numbered("a 3", "a 1", "a 2", "a 5", "a 4")
	p := build(t, in)
	if p.Groups[0].Way != sequence.Cast {
		t.Errorf("the file's way is %q", p.Groups[0].Way)
	}
	if got := p.UsualWay(p.Groups[0]); got != sequence.RowWay {
		t.Errorf("the usual way is %q", got)
	}
}

// First principles: in the mirror the row starts as far from the end as its
// last fastener was from the other: 400 - 30 - 300 mm.
func TestRowInTheMirror(t *testing.T) {
	t.Parallel()
	in := numbered("a 0", "a 0", "a 0")
	in.Joint.Fasteners[2].At.X = 300
	in.Clamped.Row = &Row{Length: 400, Start: 30}
	for axis, want := range map[geometry.Axis]unit.Length{geometry.NoAxis: 30, geometry.AxisX: 70, geometry.AxisY: 30} {
		in.Mirror = axis
		if got := build(t, in).Clamped.Row.Start; got != want {
			t.Errorf("mirror %q: the row starts at %v, want %v", axis, got, want)
		}
	}
	if in.Clamped.Row.Start != 30 {
		t.Error("the input was changed")
	}
}

// What is judged besides the bolts, and what is not.
func TestCovered(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		change func(in *Input)
		judged []finding.Code
		open   []finding.Code
	}{
		{"plain", func(*Input) {}, []finding.Code{OrderJudged}, []finding.Code{GasketNotJudged}},
		{"no stages", func(in *Input) { in.Tighten = nil }, []finding.Code{OrderJudged}, []finding.Code{NoStages, GasketNotJudged}},
		{"maker's order", func(in *Input) { in.Groups = []sequence.Group{{Way: sequence.Cast}} }, nil, []finding.Code{OrderOfMaker, GasketNotJudged}},
		{"no gasket", func(in *Input) { in.Clamped.Gasket.Kind = "none" }, []finding.Code{OrderJudged, NoGasketJudged}, nil},
		{"springs", func(in *Input) {
			in.Joint.Clusters = []geometry.Cluster{{Name: "cap", Of: []string{"F0", "F1"}, Unloaded: true}}
		}, []finding.Code{OrderJudged, SpringsJudged}, []finding.Code{GasketNotJudged}},
	} {
		in := numbered("a 1", "a 2", "a 3")
		in.Tighten = []StageInput{{Do: Tighten, Torque: unit.GivenTorque{Value: 9}}}
		in.Groups = []sequence.Group{{Way: sequence.RowWay}}
		c.change(&in)
		judged, open := build(t, in).Covered()
		for _, code := range []finding.Code{OrderJudged, OrderOfMaker, SpringsJudged, NoGasketJudged, GasketNotJudged, NoStages} {
			want := [2]bool{slices.Contains(c.judged, code), slices.Contains(c.open, code)}
			if got := [2]bool{finding.Has(judged, code), finding.Has(open, code)}; got != want {
				t.Errorf("%s: %q judged, open: %v, want %v", c.name, code, got, want)
			}
		}
	}
}

// A kind without fasteners adds no group, and so no stage that would seem to
// apply to all (first principles).
func TestKindWithoutFasteners(t *testing.T) {
	in := cylinderHead(t)
	in.Kinds = append(in.Kinds, Kind{Name: "spare", Thread: threadOf(t, "M5")})
	p := build(t, in)
	want := build(t, cylinderHead(t))
	if diff := cmp.Diff(want.Groups, p.Groups); diff != "" {
		t.Errorf("groups with an unused kind (-without, +with):\n%s", diff)
	}
	for _, s := range p.Loosen.Stages {
		if s.Do != Wait && len(s.Fasteners) == 0 {
			t.Errorf("loosening stage %d is for no fastener", s.Number)
		}
	}
	if len(p.Loosen.Stages) != len(want.Loosen.Stages) {
		t.Errorf("%d stages to loosen with an unused kind, %d without", len(p.Loosen.Stages), len(want.Loosen.Stages))
	}
}
