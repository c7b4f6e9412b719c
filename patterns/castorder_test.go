package patterns

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// numbered writes fasteners A, B, … from pairs of kind and cast number.
func numbered(kindsAndNumbers ...string) string {
	items := make([]string, len(kindsAndNumbers))
	for i, text := range kindsAndNumbers {
		kind, cast, found := strings.Cut(text, " ")
		if found {
			cast = ", cast: " + cast
		}
		items[i] = fmt.Sprintf("{id: %c, at: [%d, %d], kind: %s%s}", 'A'+i, 40*i, 7*i*i, kind, cast)
	}
	return lid + "kinds: {big: {thread: M10}, small: {thread: M8}}\nfasteners: [" + strings.Join(items, ", ") + "]\n"
}

// First principles: a number cast at every bolt gives the order, unless the
// file gives another. The orders are read off the numbers by hand.
func TestCastNumbersOrderWhatTheFileLeavesOpen(t *testing.T) {
	const stages = "stages: [{of: [big, small], torque: 5 N·m}]}\n"
	four := numbered("big 3", "big 1", "big 4", "big 2")
	kinds := numbered("big 2", "big 1", "small 4", "small 3")
	for name, test := range map[string]struct{ text, want string }{
		"no order":              {four + "tighten: {stages: [{torque: 5 N·m}]}\n", "B D A C"},
		"no tighten":            {four, "B D A C"},
		"a group without way":   {four + "tighten: {order: [{kind: big}, {kind: small}], " + stages, "B D A C"},
		"numbered through":      {kinds, "B A D C"},
		"small ones first":      {numbered("big 4", "big 3", "small 1", "small 2"), "C D B A"},
		"numbers mixed":         {numbered("big 1", "big 4", "small 2", "small 3"), "A C D B"},
		"each kind from 1":      {numbered("big 2", "big 1", "small 2", "small 1"), "B A D C"},
		"one kind only":         {numbered("big 2", "big 1", "small", "small"), "B A D C"},
		"the file's own way":    {four + "tighten: {order: row, stages: [{torque: 5 N·m}]}\n", "C B D A"},
		"the file's own list":   {four + "tighten: {order: [A, B, C, D], stages: [{torque: 5 N·m}]}\n", "A B C D"},
		"the way of its group":  {four + "tighten: {order: [{kind: big, way: row}, {kind: small}], " + stages, "C B D A"},
		"the list of its group": {four + "tighten: {order: [{kind: big, order: [D, C, B, A]}], stages: [{torque: 5 N·m}]}\n", "D C B A"},
	} {
		in, problems := readText(test.text)
		if problems.Stops() {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		made, err := plan.Build(in)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if got := strings.Join(made.IDs(made.Tighten.Order), " "); got != test.want {
			t.Errorf("%s: order %s, want %s", name, got, test.want)
		}
	}
}

// First principles: of n fasteners numbered from 1 the highest has n.
func TestCastNumbersThatCannotBe(t *testing.T) {
	for name, test := range map[string]struct {
		text string
		code finding.Code
		says string
	}{
		"5 of 4":         {numbered("big 3", "big 1", "big 5", "big 2"), meaning.CastGap, "C has cast number 5"},
		"the missing":    {numbered("big 3", "big 1", "big 5", "big 2"), meaning.CastGap, "none has 4"},
		"a double":       {numbered("big 3", "big 1", "big 3", "big 2"), meaning.CastTwice, "A and C both 3"},
		"one without":    {numbered("big 3", "big 1", "big", "big 2"), meaning.CastsIdle, "C"},
		"explicit gap":   {numbered("big 3", "big 1", "big 5", "big 2") + "tighten: {order: cast, stages: [{torque: 5 N·m}]}\n", meaning.CastGap, "C has cast number 5"},
		"group, without": {numbered("big 3", "big 1", "big", "big 2") + "tighten: {order: [{kind: big}], stages: [{torque: 5 N·m}]}\n", meaning.CastsIdle, "C"},
	} {
		_, problems := readText(test.text)
		found := slices.ContainsFunc(said(problems), func(p problem.Problem) bool { return p.Code == test.code && strings.Contains(p.What, test.says) })
		if !found {
			t.Errorf("%s: %v, want %s with %q", name, problems, test.code, test.says)
		}
	}
	for name, text := range map[string]string{
		"from 1":               numbered("big 3", "big 1", "big 4", "big 2"),
		"through two kinds":    numbered("big 3", "big 1", "small 4", "small 2"),
		"another kind's":       numbered("big", "big", "small 4", "small 3"),
		"some, the way stated": numbered("big 3", "big 1", "big", "big 2") + "tighten: {order: spiral, stages: [{torque: 5 N·m}]}\n",
		"one alone":            numbered("big 2", "small", "big 1"),
	} {
		_, problems := readText(text)
		for _, p := range problems {
			if code := p.Found.Code; code == meaning.CastGap || code == meaning.CastsIdle || code == meaning.CastTwice {
				t.Errorf("%s: %v", name, p)
			}
		}
	}
}
