package patterns

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
)

const manyLines = `drawdown: 1
title: Lid of the pump
date: 2026-02-28
kinds:
  main:
    thread: M10
    class: "10.9"
    length: 110 mm
    into: aluminium
    lubricant: engine oil
    head: 16 mm
    reuse: once
  side: {thread: M8, friction: {thread: [0.10, 0.14], head: 0.12}}
  stud: {thread: M6, nut: 10 mm}
fasteners:
  - {id: A1, at: [0, 100], kind: main}
  - {id: A2, at: [100, 0], kind: main}
  - {id: A3, at: [0, -100], kind: main, cast: 3}
  - {id: A4, at: [-100, 0], kind: side}
  - row: {count: 3, pitch: 40, from: [-40, 20], kind: stud, id: S}
clusters:
  - {name: cap 1, of: [A1, A2], loaded: no}
  - {name: cap 2, of: [S1, S2], loaded: no}
outline: [[-150, -150], [150, -150], [150, 150], [-150, 150]]
features:
  - {label: PUMP, at: [20, 60]}
  - {dowel: [60, 60], diameter: 8}
stations:
  - {id: T1, at: [20, 50]}
joint:
  part: {material: aluminium, thickness: 60 mm}
  gasket: {kind: composite}
tighten:
  order:
    - {kind: main, way: spiral, turn: left}
    - {kind: side, way: row}
    - {kind: stud, order: [S2, S1, S3]}
  stages:
    - {of: [main], torque: 20 N·m}
    - {of: [main], angle: 90°, note: slowly}
    - {of: [side], torque: 15 N·m}
    - {of: [stud], torque: 8 N·m}
  source: manual
loosen:
  stages:
    - {of: [main, side, stud], turn: 90°}
    - {remove: true}
cautions:
  - Fit a new gasket
  - {loosen: Chain locked}
`

// slips are mistakes, each on its own line: the wrong and the right text. None
// of them removes what the other lines name.
var slips = [][2]string{
	{"title: Lid of the pump", "titel: Lid of the pump"}, {"title: Lid of the pump", "title: [Lid]"}, {"title: Lid", "title: Lid #2"},
	{"date: 2026-02-28", "date: 28.2.2026"}, {"date: 2026-02-28", "date:"},
	{"thread: M10", "thread: M1O"}, {"thread: M10", "thraed: M10"}, {"thread: M10", "thread: [M10]"},
	{`class: "10.9"`, `class: "10.7"`}, {"length: 110 mm", "length: 110 nm"}, {"length: 110 mm", "length: 0"},
	{"into: aluminium", "into: cheese"}, {"lubricant: engine oil", "lubricant: moon dust"}, {"head: 16 mm", "head: round"},
	{"reuse: once", "reuse: never"}, {"reuse: once", "reuse:"},
	{"head: 0.12}", "head: 1.2}"}, {"[0.10, 0.14]", "[0.14, 0.10]"}, {"friction: {thread", "friction: {tread"},
	{"nut: 10 mm", "nut: ten"}, {"stud: {thread: M6, nut: 10 mm}", "stud: [M6]"}, {"stud: {thread: M6, nut: 10 mm}", "stud: {thread: M6, nut: 10,5 mm}"},
	{"at: [0, 100]", "at: [0, x]"}, {"at: [0, 100]", "at: [0]"}, {"A2, at: [100, 0], kind: main", "A2, at: [100, 0], kind: mian"},
	{"cast: 3}", "cast: x}"}, {"cast: 3}", "cats: 3}"}, {"kind: side}", "kind: side, mark: ABCDE}"}, {"pitch: 40", "pitch: 40 kg"}, {"row: {count: 3", "row: {size: 1, count: 3"},
	{"name: cap 1", "name: [cap]"}, {"of: [S1, S2]", "of: [S1, Q2]"}, {"of: [S1, S2]", "of: []"},
	{"[150, 150],", "[150, wide],"}, {"label: PUMP", "label: PUMP #2"}, {"label: PUMP", "lable: PUMP"}, {"diameter: 8", "diameter: -8"},
	{"{id: T1,", "{id: T 1,"}, {"material: aluminium", "material: cheese"}, {"kind: composite", "kind: cheese"},
	{"turn: left", "turn: up"}, {"way: row", "way: rows"}, {"[S2, S1, S3]", "[S2, S1, S3, S3]"}, {"[S2, S1, S3]", "[S2, S1, S4]"},
	{"torque: 20 N·m", "torque: 20"}, {"angle: 90°", "angle: 900°"}, {"note: slowly", "note: slowly: now"}, {"of: [side]", "of: [sides]"}, {"torque: 8 N·m", "torque: 8 N·m, angle: 90°"},
	{"source: manual", "source: ''"}, {"turn: 90°", "turn: 90"}, {"remove: true", "remove: no"}, {"{remove: true}", "{remove: true, way: row}"},
	{"- Fit a new gasket", "- Note: fit: new"}, {"- Fit a new gasket", "- Fit #2"}, {"{loosen: Chain locked}", "{losen: Chain locked}"},
}

// slipped reads the file with some slips. It names each problem by its line.
func slipped(of ...int) (found map[string]bool, lines []int) {
	text := manyLines
	for _, i := range of {
		lines = append(lines, 1+strings.Count(text[:strings.Index(text, slips[i][0])], "\n"))
		text = strings.Replace(text, slips[i][0], slips[i][1], 1)
	}
	_, problems := readText(text)
	found = map[string]bool{}
	for _, p := range said(problems) {
		found[fmt.Sprintf("line %d, column %d: %s; %s", p.Line, p.Column, p.What, p.Allowed)] = true
	}
	return found, lines
}

// First principles: two mistakes on two lines give the problems of both, even
// if one line names something in the other.
func TestSlipsHideNoOthers(t *testing.T) {
	if _, problems := readText(manyLines); len(problems) > 0 {
		t.Fatal(said(problems).Detail())
	}
	random := rand.New(rand.NewPCG(1, 2))
	for a := range slips {
		alone, _ := slipped(a)
		if len(alone) == 0 {
			t.Errorf("%q is no slip", slips[a])
		}
		for b := range a {
			if random.IntN(15) > 0 && !testkit.Full() {
				continue // a fifteenth is enough to catch a regression
			}
			if strings.Contains(slips[a][0], slips[b][0]) || strings.Contains(slips[b][0], slips[a][0]) {
				continue
			}
			got, lines := slipped(a, b)
			if lines[0] == lines[1] {
				continue
			}
			want, _ := slipped(b)
			maps.Copy(want, alone)
			if !maps.Equal(got, want) {
				t.Errorf("%q and %q: got\n\t%s\nwant\n\t%s", slips[a], slips[b], sorted(got), sorted(want))
			}
		}
	}
}
