package patterns

import (
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns/measures"
	"drawdown/patterns/problem"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

const measuredPart = `drawdown: 1
title: Caps
kinds:
  bolt: {thread: M8, class: "8.8", lubricant: engine oil}
  stud: {thread: M8, class: "8.8", lubricant: engine oil}
fasteners:
  - row: {count: 4, pitch: 60, from: [0, 0], kind: bolt, id: C}
  - {id: S1, at: [0, 60], kind: stud}
stations:
  - {id: T1, at: [10, 30], label: in 1}
features:
  - {bore: [60, 30], diameter: 20, label: cyl 1}
tighten:
  stages: [{of: [bolt, stud], torque: 20 N·m}]
  source: works manual 4.2
measure:
  - {what: valve clearance, at: [T1], unit: mm, from: 0.15, to: 0.25, shims: {from: 2.00, to: 3.20, step: 0.05}}
  - {what: length, of: [bolt], unit: mm, to: 50.5 mm}
  - {what: leak, at: [cyl 1, C2], unit: percent, to: 5, source: works manual 7.1}
  - {what: warp, unit: mm, to: "0,05"}
`

// readBeside reads one of several files in one folder.
func readBeside(t *testing.T, files map[string]string, name string) (plan.Input, problem.List) {
	t.Helper()
	folder := t.TempDir()
	for file, text := range files {
		writeFile(t, folder, file, text)
	}
	from, err := Open(filepath.Join(folder, name), nil)
	if err != nil {
		t.Fatal(err)
	}
	return Read(from)
}

func readMeasured(t *testing.T, files map[string]string, name string) []measure.Value {
	t.Helper()
	in, problems := readBeside(t, files, name)
	if problems.Stops() {
		t.Fatal(said(problems).Error())
	}
	return in.Measures
}

// First principles: the values of the file, with their decimals.
func TestMeasures(t *testing.T) {
	got := readMeasured(t, map[string]string{"caps.yaml": measuredPart}, "caps.yaml")
	if len(got) != 4 {
		t.Fatalf("%d values", len(got))
	}
	clearance, length, leak, warp := got[0], got[1], got[2], got[3]
	if clearance.From.String() != "0.15" || clearance.Shims.To.String() != "3.20" || clearance.Shims.Count() != 25 || clearance.Unit != "mm" {
		t.Errorf("%+v", clearance)
	}
	want := []measure.Place{{Fastener: "C1"}, {Fastener: "C2"}, {Fastener: "C3"}, {Fastener: "C4"}}
	if diff := cmp.Diff(want, length.At); diff != "" || length.To.String() != "50.5" || length.From != nil {
		t.Errorf("%+v %s", length, diff)
	}
	if diff := cmp.Diff([]measure.Place{{Label: "cyl 1"}, {Fastener: "C2"}}, leak.At); diff != "" || leak.Unit != "%" || leak.Source != "works manual 7.1" {
		t.Errorf("%+v %s", leak, diff)
	}
	if warp.To.String() != "0.05" || len(warp.At) != 0 {
		t.Errorf("%+v", warp)
	}
}

// A file that extends another measures at its own places: what it leaves out is
// not measured, what it renames is measured under the new name, and a mirror
// changes no name.
func TestMeasuresOfTheOtherBank(t *testing.T) {
	got := readMeasured(t, map[string]string{
		"caps.yaml":  measuredPart,
		"other.yaml": "drawdown: 1\nextends: caps.yaml\nmirror: x\ntitle: Caps, right\nomit: [C2]\nrelabel: {cyl 1: cyl 5, T1: T5, C1: R1}\n",
	}, "other.yaml")
	want := [][]measure.Place{{{Station: "T5"}}, {{Fastener: "R1"}, {Fastener: "C3"}, {Fastener: "C4"}}, {{Label: "cyl 5"}}, nil}
	for i, v := range got {
		if diff := cmp.Diff(want[i], v.At); diff != "" {
			t.Errorf("%s: %s", v.What, diff)
		}
	}
	got = readMeasured(t, map[string]string{
		"caps.yaml":  measuredPart,
		"other.yaml": "drawdown: 1\nextends: caps.yaml\ntitle: Caps, short\nomit: [C2]\nmeasure:\n  - {what: leak, at: [C3], unit: bar, from: 1}\n",
	}, "other.yaml")
	if len(got) != 1 || got[0].Unit != "bar" {
		t.Errorf("a list of its own replaces that of the base: %+v", got)
	}
}

// If all places of a value are left out, it is not measured on the whole part
// instead.
func TestMeasureWithoutAPlaceLeft(t *testing.T) {
	got := readMeasured(t, map[string]string{
		"caps.yaml":  measuredPart,
		"other.yaml": "drawdown: 1\nextends: caps.yaml\ntitle: Caps, no studs\nomit: [S1, C2]\nmeasure: [{what: leak, at: cyl 1, unit: percent}]\n",
		"third.yaml": "drawdown: 1\nextends: other.yaml\ntitle: Caps, one\nomit: [C4]\n",
	}, "third.yaml")
	if len(got) != 1 {
		t.Fatalf("%+v", got)
	}
	got = readMeasured(t, map[string]string{
		"caps.yaml":  measuredPart + "  - {what: stud, at: [S1], unit: mm, to: 3}\n",
		"other.yaml": "drawdown: 1\nextends: caps.yaml\ntitle: Caps, no studs\nomit: [S1]\n",
	}, "other.yaml")
	if _, there := measure.Find(got, "stud", measure.Place{}); there || len(got) != 4 {
		t.Errorf("%+v", got)
	}
}

// An absurdly long list is refused before it is read.
func TestTooManyMeasures(t *testing.T) {
	text := measuredPart
	for range measures.Most {
		text += "  - {what: x, unit: mm}\n"
	}
	_, problems := readBeside(t, map[string]string{"caps.yaml": text}, "caps.yaml")
	if !problems.Stops() {
		t.Error("204 values are read")
	}
}
