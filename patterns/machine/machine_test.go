package machine_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns"
	"drawdown/patterns/machine"
)

func readMachine(text string) (machine.Machine, string) {
	made, problems := machine.Read(patterns.FromBytes("m.yaml", []byte(text)))
	if len(problems) == 0 {
		return made, ""
	}
	return made, said(problems).Error()
}

func TestBuiltinMachines(t *testing.T) {
	for _, name := range patterns.Machines.Names() {
		source, err := patterns.Machines.Open(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		made, problems := machine.Read(source)
		if len(problems) > 0 {
			t.Error(said(problems).Error())
		}
		joints := 0
		for _, s := range made.Strip {
			if s.Pattern != nil {
				joints++
			}
		}
		if joints < 7 || made.Name != name {
			t.Errorf("%s: %d joints", made.Name, joints)
		}
	}
}

// Errors are reported with their line, and with what is allowed.
func TestBrokenMachines(t *testing.T) {
	head := "drawdown: 1\nmachine: P4\nstrip:\n"
	for _, c := range []struct{ name, text, want string }{
		{"no strip", "drawdown: 1\nmachine: P4\n", "needs strip"},
		{"no joint", head + "  - note: drain\n", "strip names no joint"},
		{"unknown joint", head + "  - p4-haed\n", `m.yaml:4:5: error: there is no pattern and no file "p4-haed" (did you mean p4-head?)`},
		{"twice", head + "  - p4-head\n  - p4-head\n", "the first is on line 4"},
		{"two at once", head + "  - {joint: p4-head, part: camshaft}\n", "joint and part at once"},
		{"unknown key", head + "  - {joint: p4-head, gasket: one}\n", "did you mean gaskets"},
		{"gasket of a part", head + "  - p4-head\n  - {part: camshaft, gaskets: [x]}\n", "gaskets belongs to a joint"},
		{"new of a joint", head + "  - {joint: p4-head, new: [x]}\n", "new belongs to a part, not to a joint"},
		{"manual of a note", head + "  - p4-head\n  - {note: a, manual: [x]}\n", "manual belongs to a part, not to a note"},
		{"tools", "tools: {a: b}\n" + head + "  - p4-head\n", "a tool"},
		{"side of a note", head + "  - p4-head\n  - {note: a, loosen: b}\n", "{note: {loosen: text}}"},
		{"comma", head + "  - p4-head\n  - caution: {loosen: Battery off, fuel shut}\n", "in quotes"},
		{"empty", head + "  -\n", "a joint is the name of a pattern"},
		{"a list", head + "  - [p4-head]\n", "a map of keys"},
		{"date", "date: yesterday\n" + head + "  - p4-head\n", "date"},
		{"no version", "machine: P4\nstrip: [p4-head]\n", "drawdown: 1"},
		{"unit of a value", head + "  - p4-head\nmeasure: [{what: compression, unit: furlong}]\n", `"furlong"; allowed: mm`},
		{"kinds of a value", head + "  - p4-head\nmeasure: [{what: compression, unit: bar, of: main}]\n", "a machine file has no kinds"},
		{"too many", head + strings.Repeat("  - note: x\n", machine.MostSteps+1), "at most 500"},
	} {
		made, got := readMachine(c.text)
		if !strings.Contains(got, c.want) {
			t.Errorf("%s: %q does not say %q", c.name, got, c.want)
		}
		if len(made.Strip) > 0 {
			t.Errorf("%s: a broken machine has steps", c.name)
		}
	}
}

// What only the manual states, what is new and what lies ready is read in full.
func TestNeedsOfAMachine(t *testing.T) {
	made, got := readMachine("drawdown: 1\nmachine: P4\ntools: [hoist, flywheel lock]\nstrip:\n  - p4-head\n" +
		"  - {part: pulley, new: [bolt, washer], manual: bolt, figures: [runout]}\n")
	if got != "" {
		t.Fatal(got)
	}
	pulley := made.Strip[1]
	if diff := cmp.Diff([][]string{{"hoist", "flywheel lock"}, {"bolt", "washer"}, {"bolt"}, {"runout"}}, [][]string{made.Tools, pulley.New, pulley.Manual, pulley.Figures}); diff != "" {
		t.Error(diff)
	}
}

// Values of the whole machine are measured at places of any name.
func TestMeasuresOfAMachine(t *testing.T) {
	made, got := readMachine("drawdown: 1\nmachine: P4\nstrip: [p4-head]\nmeasure:\n  - {what: compression, at: [cyl 1, cyl 2], unit: bar, from: 11.0}\n")
	if got != "" {
		t.Fatal(got)
	}
	v := made.Measures[0]
	if len(made.Measures) != 1 || v.From.String() != "11.0" || v.Unit != "bar" || len(v.At) != 2 || v.At[1].Label != "cyl 2" {
		t.Errorf("%+v", made.Measures)
	}
}

// Joints are searched beside the machine file.
func TestJointsBesideTheMachine(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("lid.yaml", "drawdown: 1\ntitle: Lid\n")
	path := write("m.yaml", "drawdown: 1\nmachine: P4\nstrip: [lid.yaml, p4-head]\n")
	source, err := patterns.Machines.Open(path, nil)
	if err != nil {
		t.Fatal(err)
	}
	made, problems := machine.Read(source)
	if problems.Stops() {
		t.Fatal(said(problems).Error())
	}
	if got := made.Strip[0].Pattern.File; got != filepath.Join(folder, "lid.yaml") {
		t.Errorf("the lid is %s", got)
	}
	if made.FingerprintWith([]string{"a"}) == made.FingerprintWith([]string{"b"}) {
		t.Error("the fingerprint does not see a joint that has changed")
	}
}

func FuzzMachine(f *testing.F) {
	for _, name := range patterns.Machines.Names() {
		text, _ := patterns.Machines.Text(name)
		f.Add(string(text))
	}
	f.Add("drawdown: 1\nmachine: P4\nstrip: [{joint: p4-head, part: x}, {note: {loosen: a}}, ~, [], {caution: }]\n")
	f.Fuzz(func(t *testing.T, text string) {
		made, problems := machine.Read(patterns.FromBytes("m.yaml", []byte(text)))
		if problems.Stops() == (len(made.Strip) > 0) {
			t.Errorf("%d steps and the problems %v", len(made.Strip), problems)
		}
	})
}
