package revision_test

import (
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/patterntest"
	"drawdown/render/words"
	"drawdown/sequence/revision"
)

const older = `drawdown: 1
title: Cover
revision: 1
kinds:
  main: {thread: M8, class: "8.8", lubricant: engine oil}
  side: {thread: M6, class: "8.8"}
fasteners:
  - {id: A, at: [0, 0], kind: main}
  - {id: B, at: [60, 0], kind: main}
  - {id: C, at: [60, 40], kind: main}
  - {id: D, at: [0, 40], kind: side}
outline: [[-20, -20], [80, -20], [80, 60], [-20, 60]]
tighten:
  order: [A, B, C, D]
  stages:
    - {of: [main], torque: 10 N·m}
    - {of: [main], torque: 20 N·m}
    - {of: [side], torque: 9 N·m}
`

// One change at a time, and what is said of it. The changes are the truth.
func TestBetween(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ replace, by, want string }{
		{"A", "A", ""},
		{"at: [60, 40]", "at: [60, 41.5]", "C moved by 1.50 mm, to 60.00, 41.50"},
		{"at: [60, 40]", "at: [60, 40.0001]", ""},
		{"  - {id: D, at: [0, 40], kind: side}\n", "  - {id: D, at: [0, 40], kind: side}\n  - {id: E, at: [30, 20], kind: side}\n", "added: E (side)"},
		{"id: B, at: [60, 0], kind: main", "id: B, at: [60, 0], kind: side", "B is of kind side, before main"},
		{"id: B, at", "id: B, mark: x, at", "B has the number or mark x, before none"},
		{"lubricant: engine oil", "lubricant: dry", "main, lubricant: dry, before engine oil"},
		{"M6, class", "M6x0.75, class", "side, thread: M6×0.75, before M6×1"},
		{"torque: 20 N·m", "torque: 25 N·m", "main, stage 2: 25 N·m, before 20 N·m"},
		{"    - {of: [side]", "    - {of: [main], angle: 60°}\n    - {of: [side]", "main, stages to tighten: 10 N·m, 20 N·m, +60°; before: 10 N·m, 20 N·m"},
		{"[A, B, C, D]\n", "[A, C, B, D]\n", "the order to tighten has changed: A, C, B and D; before: A, B, C and D"},
		{"[80, 60]", "[80, 62]", "outline: changed"},
		{"revision: 1", "revision: 2", "revision: 2, before 1"},
	} {
		newer := strings.Replace(older, c.replace, c.by, 1)
		if c.want == "added: E (side)" {
			newer = strings.Replace(newer, "[A, B, C, D]\n", "[A, B, C, D, E]\n", 1)
		}
		var said []string
		for _, f := range revision.Between(patterntest.Plan(t, older), patterntest.Plan(t, newer)) {
			said = append(said, words.English().Say(f))
		}
		if c.want == "" && len(said) > 0 || c.want != "" && !slices.Contains(said, c.want) {
			t.Errorf("%q: said %q, want %q", c.by, said, c.want)
		}
		if len(said) > 3 { // an order to loosen may follow the order to tighten
			t.Errorf("%q: one change, but %q", c.by, said)
		}
	}
}

// What one way was added is removed the other way.
func TestBetweenIsTheSameBackwards(t *testing.T) {
	t.Parallel()
	before, after := patterntest.Plan(t, "p4-head"), patterntest.Plan(t, "p4-cover")
	for _, c := range []struct{ from, to finding.Code }{{revision.Added, revision.Removed}, {revision.NewKind, revision.KindGone}} {
		if finding.Has(revision.Between(before, after), c.from) != finding.Has(revision.Between(after, before), c.to) {
			t.Errorf("%s one way, but not %s the other way", c.from, c.to)
		}
	}
	if found := revision.Between(before, before); len(found) > 0 {
		t.Errorf("a plan differs from itself: %v", found)
	}
}
