package plan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns/patterntest"
	"drawdown/sequence/plan"
)

const bolts = "drawdown: 1\ntitle: Lid\nkinds: {big: {thread: M10}, small: {thread: M8}}\n"

// First principles: a bolt with a cast number goes by it on both sides, and
// bolts of a group without do not get a number that could be taken for one.
func TestCalled(t *testing.T) {
	for _, c := range []struct {
		name, text      string
		tighten, loosen []int
		up, down        []plan.Stretch
		kinds           []string
		all             bool
	}{
		{"all cast", bolts + "fasteners: [{id: A, at: [0, 0], kind: big, cast: 3}, {id: B, at: [80, 0], kind: big, cast: 1}, {id: C, at: [160, 0], kind: big, cast: 7}]\n",
			[]int{3, 1, 7}, []int{3, 1, 7}, []plan.Stretch{{1, 7}}, []plan.Stretch{{7, 1}}, []string{"big"}, true},
		{"one group cast", bolts + "fasteners: [{id: A, at: [0, 0], kind: big, cast: 2}, {id: B, at: [80, 0], kind: big, cast: 1}, {id: C, at: [0, 60], kind: small}]\n",
			[]int{2, 1, 3}, []int{2, 1, 3}, []plan.Stretch{{1, 3}}, []plan.Stretch{{3, 1}}, []string{"big"}, false},
		{"none cast", bolts + "fasteners: [{id: A, at: [0, 0], kind: big}, {id: B, at: [80, 0], kind: big}]\n",
			[]int{1, 2}, []int{2, 1}, []plan.Stretch{{1, 2}}, []plan.Stretch{{1, 2}}, nil, false},
		{"one lacks its number", bolts + "fasteners: [{id: A, at: [0, 0], kind: big, cast: 2}, {id: B, at: [80, 0], kind: big}]\n",
			[]int{1, 2}, []int{2, 1}, []plan.Stretch{{1, 2}}, []plan.Stretch{{1, 2}}, nil, false},
		{"an order across the numbers", bolts + "tighten: {order: [A, C, B, D], stages: [{torque: 8 N·m}]}\nfasteners: [{id: A, at: [0, 0], kind: big, cast: 1}, {id: B, at: [80, 0], kind: big, cast: 2}, {id: C, at: [160, 0], kind: big, cast: 3}, {id: D, at: [240, 0], kind: big, cast: 4}]\n",
			[]int{1, 2, 3, 4}, []int{1, 2, 3, 4}, nil, nil, []string{"big"}, true},
	} {
		p := patterntest.Plan(t, c.text)
		kinds, all := p.CalledByCast()
		for _, diff := range []string{
			cmp.Diff(c.tighten, p.Called(p.Tighten)), cmp.Diff(c.loosen, p.Called(p.Loosen)),
			cmp.Diff(c.up, p.Stretches(p.Tighten)), cmp.Diff(c.down, p.Stretches(p.Loosen)),
			cmp.Diff(c.kinds, kinds), cmp.Diff(c.all, all),
		} {
			if diff != "" {
				t.Errorf("%s: %s", c.name, diff)
			}
		}
	}
}

// First principles: a bolt goes by what is written on the part, and no two are
// the same.
func TestWritten(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{bolts + "fasteners: [{id: A, at: [0, 0], kind: big, cast: 2}, {id: B, at: [80, 0], kind: big, cast: 1}, {id: C, at: [0, 60], kind: small}]\n", []string{"2", "1", "C"}},
		{bolts + "fasteners: [{id: A, at: [0, 0], kind: big, cast: 2}, {id: B, at: [80, 0], kind: big}]\n", []string{"A", "B"}},
		{bolts + "fasteners: [{id: A, at: [0, 0], kind: big, cast: 4}, {id: B, at: [80, 0], kind: big, cast: 1}, {id: '4', at: [0, 60], kind: small}]\n", []string{"A", "B", "4"}},
	} {
		if diff := cmp.Diff(c.want, patterntest.Plan(t, c.text).Written()); diff != "" {
			t.Error(diff)
		}
	}
}
