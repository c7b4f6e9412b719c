package patterns

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const lid = "drawdown: 1\ntitle: Lid\n"

// Every number split by a decimal comma is one problem, which names the number
// (first principles).
func TestDecimalCommaIsOneProblem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole, tenths := rapid.IntRange(1, 500).Draw(t, "whole"), rapid.IntRange(1, 99).Draw(t, "fraction")
		stage := rapid.SampledFrom([]string{"torque: %s N·m", "torque: %s N·m, note: x", "angle: %s°", "torque: 5 N·m}, {wait: %s min"}).Draw(t, "stage")
		write := func(separator string) string {
			number := fmt.Sprintf("%d%s%d", whole, separator, tenths)
			return lid + "fasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{" + fmt.Sprintf(stage, number) + "}]}\n"
		}
		if _, problems := readText(write(".")); len(problems) > 0 {
			t.Fatal(problems)
		}
		_, problems := readText(write(","))
		if want := fmt.Sprintf("write %d.%d", whole, tenths); len(problems) != 1 || !strings.Contains(said(problems)[0].What, want) {
			t.Fatalf("%v, want one problem with %q", problems, want)
		}
	})
}

// A place with a decimal comma is one problem. Only [142,5] is ambiguous: it
// could mean either comma.
func TestPlaceWithDecimalComma(t *testing.T) {
	for at, want := range map[string]string{
		"[-142,5, 46]":   "write -142.5 with a point",
		"[46, -142,5]":   "write -142.5 with a point",
		"[-142 46]":      "one entry: -142 46",
		"[-142, 46, 12]": "not 3 numbers",
	} {
		_, problems := readText(lid + "fasteners: [{id: A, at: " + at + "}]\ntighten: {stages: [{torque: 5 N·m}]}\n")
		if len(problems) != 1 || !strings.Contains(said(problems)[0].What, want) {
			t.Errorf("%s: %v", at, problems)
		}
	}
}

// A colon without its space is one problem, and the rest is read.
func TestTightColonIsOneProblem(t *testing.T) {
	_, problems := readText(lid + "fasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{torque:30}]}\n")
	if len(problems) != 2 || !strings.Contains(said(problems)[0].What, "space after the colon: torque: 30") ||
		!errors.Is(problems[1].Found, unit.NoUnit) {
		t.Errorf("%v", problems)
	}
}

// The order of a manual by cast numbers: derived by hand from the file.
func TestMakersOrderByCastNumbers(t *testing.T) {
	const points = "fasteners: [{id: A, at: [0, 0], cast: 3}, {id: B, at: [30, 1], cast: 1}, {id: C, at: [12, 40], cast: 2}]\n"
	const numbered = "fasteners: [{id: 1, at: [0, 0], cast: 3}, {id: 2, at: [30, 1], cast: 1}, {id: 3, at: [12, 40], cast: 2}]\n"
	const kinds = "kinds: {big: {thread: M10}, small: {thread: M8}}\n" +
		"fasteners: [{id: A, at: [0, 0], cast: 2, kind: big}, {id: B, at: [30, 1], cast: 1, kind: big}, {id: C, at: [12, 40], kind: small}]\n"
	for name, test := range map[string]struct {
		text string
		want []sequence.Group
	}{
		"all":            {points + "tighten: {order: [2, 3, 1], ", []sequence.Group{{Way: sequence.List, List: []string{"C", "A", "B"}}}},
		"ids before":     {numbered + "tighten: {order: [2, 3, 1], ", []sequence.Group{{Way: sequence.List, List: []string{"2", "3", "1"}}}},
		"of one kind":    {kinds + "tighten: {order: [{kind: big, order: [2, 1]}, {kind: small}], ", []sequence.Group{{Kinds: []string{"big"}, Way: sequence.List, List: []string{"A", "B"}}, {Kinds: []string{"small"}, Way: sequence.Auto}}},
		"ids as letters": {points + "tighten: {order: [C, A, B], ", []sequence.Group{{Way: sequence.List, List: []string{"C", "A", "B"}}}},
	} {
		in, problems := readText(lid + test.text + "stages: [{torque: 5 N·m, way: circular, note: all}]}\n")
		if problems.Stops() {
			t.Errorf("%s: %v", name, problems)
		}
		same(t, name, in.Groups, test.want)
	}
}

// Common practice, no source: usual practice causes no warning.
func TestUsualPracticeIsQuiet(t *testing.T) {
	circle := func(entry string) string {
		return "fasteners: [" + entry + "]\ntighten: {order: star, stages: [{torque: 5 N·m}]}\n"
	}
	const sizes = "kinds: {small: {thread: M8}, big: {thread: M10}, other: {}}\n" +
		"fasteners: [{id: A, at: [0, 0], cast: 1, kind: big}, {id: B, at: [30, 1], cast: 2, kind: small}, {id: C, at: [12, 40], kind: other}]\n"
	const stages = "], stages: [{of: [big, small, other], torque: 5 N·m}]}\n"
	for name, test := range map[string]struct {
		text     string
		warnings int
	}{
		"star on a circle":         {circle("{circle: {count: 8, diameter: 200}}"), 0},
		"star with a hole missing": {circle("{circle: {count: 8, diameter: 200, omit: 3}}"), 0},
		"star on an uneven circle": {circle("{id: A, at: [100, 0]}, {id: B, at: [0, 100]}, {id: C, at: [-60, 80]}, {id: D, at: [-60, -80]}, {id: E, at: [0, -100]}"), 0},
		"star on two circles":      {circle("{circle: {count: 8, diameter: 200, id: A}}, {circle: {count: 12, diameter: 300, id: B}}"), 0},
		"star on four":             {circle("{grid: {columns: 2, rows: 2, pitch: [90, 60]}}"), 0},
		"star on a grid":           {circle("{grid: {columns: 5, rows: 2, pitch: [95, 90]}}"), 1},
		"star on a row":            {circle("{row: {count: 7, pitch: 40}}"), 1},
		"star on a perimeter":      {circle("{rectangle: {columns: 7, rows: 2, size: [396, 180]}}"), 1},

		"large before small":   {sizes + "tighten: {order: [{kind: big}, {kind: small}, {kind: other}" + stages, 0},
		"size unknown":         {sizes + "tighten: {order: [{kind: other}, {kind: big}, {kind: small}" + stages, 0},
		"the maker says so":    {sizes + "tighten: {order: [{kind: small, order: [B]}, {kind: big}, {kind: other}" + stages, 0},
		"small before large":   {sizes + "tighten: {order: [{kind: small}, {kind: other}, {kind: big}" + stages, 1},
		"small among the rest": {sizes + "tighten: {order: [{kind: [small, other], way: auto}, {kind: big}" + stages, 1},
	} {
		_, problems := readText(lid + test.text)
		if problems.Stops() || len(problems) != test.warnings {
			t.Errorf("%s: %v, want %d warnings", name, problems, test.warnings)
		}
	}
}

// A file that reads without an error can be planned: no problem comes without a
// line.
func TestWhatReadsCanBePlanned(t *testing.T) {
	names, _ := filepath.Glob("testdata/good/*.yaml")
	for _, name := range append(names, Builtin()...) {
		if _, err := plan.Build(mustRead(t, name)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	// A share of the torque can be read exactly if the torque can be
	// calculated.
	for kind, stops := range map[string]bool{
		`{thread: M10, class: "10.9"}`:                              false,
		`{thread: M10, class: "10.9", hole: 30 mm}`:                 true,
		`{thread: M10, class: "10.9", head: 9 mm}`:                  true,
		`{thread: M10, class: "10.9", head: socket}`:                false,
		`{thread: M20, class: "10.9", head: flange}`:                true, // ISO 4162 ends at M16
		`{thread: M20, class: "10.9", head: flange, washer: 40 mm}`: false,
		`{thread: M10}`:   true,
		`{class: "10.9"}`: true,
		`{thread: M10, class: "10.9", lubricant: moon dust}`:       true,
		`{thread: M10, class: "10.9", lubricant: x, friction: .1}`: false,
	} {
		in, problems := readText(lid + "kinds: {main: " + kind + "}\nfasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{percent: 50}]}\n")
		if problems.Stops() != stops {
			t.Errorf("%s: %v", kind, problems)
		}
		for _, p := range problems {
			if p.Line == 0 {
				t.Errorf("%s: no line: %v", kind, p)
			}
		}
		if _, err := plan.Build(in); !stops && err != nil {
			t.Errorf("%s: %v", kind, err)
		}
	}
}
