package patterns

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/patterns/relabel"
	"drawdown/sequence/plan"
)

// leftBank has a list and a generator, an order by ids, caps and stations.
const leftBank = `drawdown: 1
title: Left bank
kinds: {main: {thread: M10}, side: {thread: M8}}
fasteners:
  - grid: {columns: 3, rows: 2, pitch: [90, 60], centre: [0, 0], kind: main, id: M}
  - {id: F1, at: [-45, -80], kind: side, cast: 1}
  - {id: F2, at: [45, -80], kind: side, cast: 2}
clusters: [{name: cap 1, of: [M1, M4]}, {name: cap 3, of: [M3, M6]}]
features:
  - {bore: [-45, 0], diameter: 50, label: cyl 1}
  - {bore: [45, 0], diameter: 50, label: cyl 3}
  - {label: EXHAUST SIDE, at: [0, -60]}
  - {front: left}
stations: [{id: T1, at: [-60, 0], label: in 1a}]
tighten:
  order: [{kind: main, order: [M2, M5, M1, M4, M3, M6]}, {kind: side, order: [1, 2]}]
  stages: [{of: [main], torque: 40 N·m}, {of: [side], torque: 20 N·m}]
`

// chain writes files that extend each other, the first one extending the left
// bank, and reads the last.
func chain(t *testing.T, texts ...string) (plan.Input, problem.List) {
	t.Helper()
	folder, below := t.TempDir(), "left.yaml"
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(below, leftBank)
	for i, text := range texts {
		name := string(rune('a'+i)) + ".yaml"
		write(name, "drawdown: 1\ntitle: Part\nextends: "+below+"\n"+text)
		below = name
	}
	from, err := Open(filepath.Join(folder, below), nil)
	if err != nil {
		t.Fatal(err)
	}
	return Read(from)
}

func has(problems problem.List, code finding.Code, says string) bool {
	return slices.ContainsFunc(said(problems), func(p problem.Problem) bool { return p.Code == code && strings.Contains(p.What, says) })
}

func labelsOf(j geometry.Joint) string {
	var all []string
	for _, b := range j.Bores {
		all = append(all, b.Label)
	}
	for _, l := range j.Labels {
		all = append(all, l.Text)
	}
	for _, s := range j.Stations {
		all = append(all, s.ID+" "+s.Label)
	}
	for _, c := range j.Clusters {
		all = append(all, c.Name+" "+strings.Join(c.Of, "+"))
	}
	return strings.Join(all, ", ")
}

func idsOf(in plan.Input) string {
	return strings.Join(geometry.Mapped(in.Joint.Fasteners, func(f geometry.Fastener) string { return f.ID }), " ")
}

// First principles: derived by hand from the left bank.
func TestRelabel(t *testing.T) {
	for name, test := range map[string]struct{ text, labels, ids, order string }{
		"by name": {"mirror: x\nrelabel: {cyl 1: cyl 2, cyl 3: cyl 4, in 1a: in 2a, cap 1: cap 2, cap 3: cap 4, M1: R1, F2: G, T1: T9}\n",
			"cyl 2, cyl 4, EXHAUST SIDE, T9 in 2a, cap 2 R1+M4, cap 4 M3+M6", "R1 M2 M3 M4 M5 M6 F1 G", "M2 M5 R1 M4 M3 M6 F1 G"},
		"by rule": {"mirror: x\nrelabel: {all numbers: +1}\n",
			"cyl 2, cyl 4, EXHAUST SIDE, T1 in 2a, cap 2 M1+M4, cap 4 M3+M6", "M1 M2 M3 M4 M5 M6 F1 F2", "M2 M5 M1 M4 M3 M6 F1 F2"},
		"a name before the rule": {"mirror: x\nrelabel: {all numbers: +1, in 1a: in 8, cap 1: cap 1}\n",
			"cyl 2, cyl 4, EXHAUST SIDE, T1 in 8, cap 1 M1+M4, cap 4 M3+M6", "M1 M2 M3 M4 M5 M6 F1 F2", "M2 M5 M1 M4 M3 M6 F1 F2"},
		"two change places": {"mirror: x\nrelabel: {cyl 1: cyl 3, cyl 3: cyl 1, M1: M3, M3: M1, all numbers: -1}\n",
			"cyl 3, cyl 1, EXHAUST SIDE, T1 in 0a, cap 0 M3+M4, cap 2 M1+M6", "M3 M2 M1 M4 M5 M6 F1 F2", "M2 M5 M3 M4 M1 M6 F1 F2"},
		"new names in its own order": {"mirror: x\nrelabel: {all numbers: +1, F1: G1}\ntighten: {order: [{kind: main, order: [M1, M2, M3, M4, M5, M6]}, {kind: side, order: [F2, G1]}]}\n",
			"cyl 2, cyl 4, EXHAUST SIDE, T1 in 2a, cap 2 M1+M4, cap 4 M3+M6", "M1 M2 M3 M4 M5 M6 G1 F2", "M1 M2 M3 M4 M5 M6 F2 G1"},
		"its own labels stay": {"mirror: x\nrelabel: {all numbers: +1}\nfeatures: [{label: pump 1, at: [0, 0]}]\n",
			"pump 1, T1 in 2a, cap 2 M1+M4, cap 4 M3+M6", "M1 M2 M3 M4 M5 M6 F1 F2", "M2 M5 M1 M4 M3 M6 F1 F2"},
	} {
		in, problems := chain(t, test.text)
		if problems.Stops() || has(problems, meaning.MirrorLabels, "") {
			t.Errorf("%s: %v", name, said(problems))
			continue
		}
		made, err := plan.Build(in)
		if err != nil {
			t.Fatal(err)
		}
		if got := labelsOf(in.Joint); got != test.labels {
			t.Errorf("%s: labels %s, want %s", name, got, test.labels)
		}
		if got := idsOf(in); got != test.ids {
			t.Errorf("%s: ids %s, want %s", name, got, test.ids)
		}
		if got := strings.Join(made.IDs(made.Tighten.Order), " "); got != test.order {
			t.Errorf("%s: order %s, want %s", name, got, test.order)
		}
	}
}

// Two files above each other: the upper one names what the lower one renamed.
func TestRelabelTwice(t *testing.T) {
	in, problems := chain(t, "relabel: {all numbers: +1, M1: R1}\nomit: [M2]\n", "relabel: {cyl 2: cyl 9, R1: S1}\nchange: {R1: {at: [-95, 35]}}\n")
	if problems.Stops() {
		t.Fatal(said(problems))
	}
	if got, want := labelsOf(in.Joint), "cyl 9, cyl 4, EXHAUST SIDE, T1 in 2a, cap 2 S1+M4, cap 4 M3+M6"; got != want {
		t.Errorf("labels %s, want %s", got, want)
	}
	if got, want := idsOf(in), "S1 M3 M4 M5 M6 F1 F2"; got != want || in.Joint.Fasteners[0].At != (geometry.Point{X: -95, Y: 35}) {
		t.Errorf("ids %s, want %s; %v", got, want, in.Joint.Fasteners[0])
	}
}

// A file that extends no other renames its own names, which a mirror turns into
// those of another part.
func TestRelabelOfItsOwn(t *testing.T) {
	in, problems := readText(leftBank + "mirror: x\nrelabel: {all numbers: +1, M1: R1}\n")
	if problems.Stops() || idsOf(in) != "R1 M2 M3 M4 M5 M6 F1 F2" || !strings.HasPrefix(labelsOf(in.Joint), "cyl 2, cyl 4,") {
		t.Errorf("%v, %s, %s", said(problems), idsOf(in), labelsOf(in.Joint))
	}
}

// First principles: derived by hand from the left bank.
func TestOmitAndChange(t *testing.T) {
	in, problems := chain(t, "omit: [M3, M6, F1]\nchange: {M5: {at: [3, -33]}, M2: {kind: side}, F2: {cast: 7, at: [50, -80]}}\n"+
		"tighten: {order: [{kind: main, order: [M1, M5, M4]}, {kind: side, way: row}]}\n")
	if problems.Stops() {
		t.Fatal(said(problems))
	}
	if got, want := idsOf(in), "M1 M2 M4 M5 F2"; got != want {
		t.Errorf("ids %s, want %s", got, want)
	}
	for _, want := range []geometry.Fastener{
		{ID: "M5", Kind: "main", At: geometry.Point{X: 3, Y: -33}},
		{ID: "M2", Kind: "side", At: geometry.Point{X: 0, Y: 30}},
		{ID: "F2", Kind: "side", At: geometry.Point{X: 50, Y: -80}, Cast: 7},
	} {
		if !slices.Contains(in.Joint.Fasteners, want) {
			t.Errorf("%v lacks %v", in.Joint.Fasteners, want)
		}
	}
	if got, want := labelsOf(in.Joint), "cyl 1, cyl 3, EXHAUST SIDE, T1 in 1a, cap 1 M1+M4"; got != want {
		t.Errorf("%s, want %s: a cap without bolts goes with them", got, want)
	}
	in, problems = chain(t, "omit: [M3, F1]\n") // both orders of the base lose the missing fasteners, one by ids and one by numbers
	if problems.Stops() || len(in.Groups) != 2 || strings.Join(in.Groups[0].List, " ") != "M2 M5 M1 M4 M6" || strings.Join(in.Groups[1].List, " ") != "F2" {
		t.Errorf("%v: %v", said(problems), in.Groups)
	}
}

// Names that nothing below has, repeated changes, and losses.
func TestChangesThatCannotBe(t *testing.T) {
	for name, test := range map[string]struct {
		text     string
		code     finding.Code
		severity problem.Severity
		says     string
	}{
		"labels of the other bank": {"mirror: x\n", meaning.MirrorLabels, problem.Warning, "cyl 1, cyl 3, in 1a, cap 1, cap 3"},
		"some of them":             {"mirror: x\nrelabel: {cyl 1: cyl 2}\n", meaning.MirrorLabels, problem.Warning, "one bank: cyl 3, in 1a, cap 1, cap 3"},
		"omit, unknown":            {"omit: [M33]\n", meaning.NotBelow, problem.Error, `no fastener "M33" (did you mean M3?)`},
		"omit twice":               {"omit: [M3, M3]\n", meaning.OmitTwice, problem.Error, "M3"},
		"omit, no list":            {"omit: M3\n", "reader no list", problem.Error, "omit"},
		"change, unknown":          {"change: {M9: {kind: side}}\n", meaning.NotBelow, problem.Error, `change: the extended file has no fastener "M9"`},
		"change nothing":           {"change: {M1: {}}\n", "reader no map", problem.Error, "the change of M1"},
		"change, no map":           {"change: [M1]\n", meaning.NoChanges, problem.Error, "change"},
		"change, unknown key":      {"change: {M1: {knd: side}}\n", "reader unknown key", problem.Error, "the change of M1 (did you mean kind?)"},
		"change, unknown kind":     {"change: {M1: {kind: sid}}\n", meaning.NoSuchKind, problem.Error, "side"},
		"omit and change":          {"omit: [M1]\nchange: {M1: {kind: side}}\n", meaning.OmittedAndChanged, problem.Error, "M1"},
		"one made to stand on one": {"change: {M1: {at: [0, 30]}}\n", meaning.OnAnother, problem.Error, "M1"},
		"relabel, unknown":         {"relabel: {cyl 9: cyl 2}\n", relabel.NamesNothing, problem.Error, `"cyl 9" (did you mean cyl 1?)`},
		"relabel gives alike":      {"relabel: {cyl 1: cyl 3}\n", relabel.MadeAlike, problem.Error, `"cyl 1" and "cyl 3" the same name`},
		"relabel gives ids alike":  {"relabel: {M2: M1}\n", relabel.MadeAlike, problem.Error, `the same name, "M1"`},
		"relabel to no id":         {"relabel: {M2: M 1}\n", "reader odd id", problem.Error, "M 1"},
		"relabel, no map":          {"relabel: [cyl 1]\n", relabel.NoRelabel, problem.Error, "a list"},
		"relabel, no number":       {"relabel: {all numbers: four}\n", relabel.NoAddend, problem.Error, `"four"`},
		"relabel by 0":             {"relabel: {all numbers: 0}\n", relabel.NoAddend, problem.Error, "+4"},
		"relabel no number":        {"features: []\nstations: [{id: T, at: [0, 0]}]\nclusters: [{name: cap, of: [M1]}]\nrelabel: {all numbers: 1}\n", relabel.NoNumbers, problem.Error, "no label"},
		"the old name in an order": {"relabel: {M1: R1}\ntighten: {order: [{kind: main, order: [M1, M2, M3, M4, M5, M6]}, {kind: side, way: row}]}\n", meaning.NoSuchFastener, problem.Error, "did you mean R1?"},
		"a list replaced":          {"fasteners: [{id: A, at: [0, 0], kind: main}]\nclusters: [{name: a, of: [A]}]\ntighten: {order: auto}\n", meaning.ListReplaced, finding.Note, "fasteners replaces the whole list of"},
		"how many it had":          {"features: [{front: left}]\n", meaning.ListReplaced, finding.Note, "loses 3 of its 4 entries"},
		"other units":              {"units: in\n", meaning.UnitsChanged, problem.Error, "is in mm"},
		"a list of its own":        {"omit: [A]\nfasteners: [{id: A, at: [0, 0], kind: main}]\nclusters: [{name: a, of: [A]}]\n", meaning.NotBelow, problem.Error, "A"},
	} {
		_, problems := chain(t, test.text)
		if !slices.ContainsFunc(said(problems), func(p problem.Problem) bool {
			return p.Code == test.code && p.Severity == test.severity && strings.Contains(p.What, test.says)
		}) {
			t.Errorf("%s:\n%v\nwant %s %q with %q", name, said(problems), test.severity, test.code, test.says)
		}
	}
	for _, key := range []string{"omit: [M1]\n", "change: {M1: {kind: side}}\n"} {
		if _, problems := readText(leftBank + key); !has(problems, meaning.NothingBelow, "extends none") {
			t.Errorf("%s: %v", key, problems)
		}
	}
}

// First principles: repeating the same units, new lists and merged maps need no
// warning.
func TestQuietExtends(t *testing.T) {
	_, problems := chain(t, "units: mm\ncautions: [Cold]\nkinds: {main: {class: \"10.9\"}}\noutline: [[-150, 90], [150, 90], [150, -110], [-150, -110]]\n")
	for _, p := range problems {
		t.Error(p)
	}
}
