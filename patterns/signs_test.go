package patterns

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"drawdown/patterns/machine"
	"drawdown/patterns/measured"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/wrenches"
)

const soundBody = `fasteners: [{id: A, at: [0, 0]}, {id: B, at: [50, 0]}]
tighten: {stages: [{torque: 20 N·m}]}
`

// problemsOf reads a text as a file of the given sort.
func problemsOf(sort, text string) problem.List {
	from := FromBytes("text", []byte(text))
	var problems problem.List
	switch sort {
	case "survey":
		_, problems = measured.Read(from)
	case "machine":
		from = Machines.FromBytes("text", []byte(text))
		_, problems = machine.Read(from)
	case "wrenches":
		_, problems = wrenches.Read(from, time.Time{})
	default:
		_, problems = Read(from)
	}
	return said(problems)
}

// First principles: in YAML a # after a space begins a comment, so only quotes
// keep such a text whole. The problem is reported on its line and ends with the
// corrected line.
func TestAHashInATextIsShownInQuotes(t *testing.T) {
	const survey = "drawdown: 1\ntitle: %s\nholes: {A: 8, B: 8}\nmeasured: [[A, B, 95]]\n"
	for _, c := range []struct {
		sort, text string
		line       int
		want       string // end of the problem; empty for a comment
	}{
		{"", lid + "machine: Pump #2 rear\n" + soundBody, 3, `machine: "Pump #2 rear"`},
		{"", lid + "view: from  above #2\n" + soundBody, 3, `view: "from  above #2"`},
		{"", lid + "revision: B # first\n" + soundBody, 3, `revision: "B # first"`},
		{"", lid + "machine: Pump #\"2\"\n" + soundBody, 3, `machine: 'Pump #"2"'`},
		{"", lid + "machine: #2\n" + soundBody, 3, `machine: "#2"`},
		{"", lid + "machine: &m Pump #2\nview: *m\n" + soundBody, 3, `machine: &m "Pump #2"`},
		{"", lid + "cautions:\n  - Bolt #7 is 5 mm longer\n" + soundBody, 4, `- "Bolt #7 is 5 mm longer"`},
		{"", lid + "cautions:\n  - #7 is longer\n" + soundBody, 4, `- "#7 is longer"`},
		{"", lid + "cautions:\n  - Bolt\n    #7 is longer\n" + soundBody, 0, ""}, // a comment on its own line
		{"", lid + "cautions:\n  - Hold the cap while\n    bolt #7 is out\n" + soundBody, 4, `- "Hold the cap while bolt #7 is out"`},
		{"", lid + "cautions:\n  - Hold the cap while\n    bolt #7 is out\n    of the block\n" + soundBody, 4, `- "Hold the cap while bolt #7 is out of the block"`},
		{"", lid + "cautions:\n  - tighten: Bolt #7 first\n" + soundBody, 4, `- tighten: "Bolt #7 first"`},
		{"", lid + "cautions: [Bolt #7 is longer]\n" + soundBody, 3, `cautions: ["Bolt #7 is longer"]`},
		{"", lid + "cautions: [Bolt #7 is longer,\n  another]\n" + soundBody, 3, `cautions: ["Bolt #7 is longer",`},
		{"", lid + "cautions: [Bolt #7,\n]\n" + soundBody, 3, `cautions: ["Bolt #7",`},
		{"", lid + "features:\n  - {label: Pump #2, at: [0, 0]}\n" + soundBody, 4, `- {label: "Pump #2", at: [0, 0]}`},
		{"", lid + "features: [\n  {label: Pump 2, at: [0, 0]},\n  {label: Pump #3, at: [0, 9]},\n]\n" + soundBody, 5, `{label: "Pump #3", at: [0, 9]},`},
		{"", lid + "kinds:\n  main #2: {thread: M8}\n" + soundBody, 4, `"main #2": {thread: M8}`},
		{"", lid + "kinds:\n  main #2:\n    thread: M8\n" + soundBody, 4, `"main #2":`},
		{"", lid + "kinds:\n  main: {thread: M8, lubricant: oil #3}\n" + soundBody, 4, `main: {thread: M8, lubricant: "oil #3"}`},
		{"", lid + "clusters:\n  - name: cap #1\n    of: [A, B]\n" + soundBody, 4, `- name: "cap #1"`},
		{"", lid + "stations:\n  - {id: T1, at: [9, 9], label: in #1}\n" + soundBody, 4, `- {id: T1, at: [9, 9], label: "in #1"}`},
		{"", lid + "fasteners:\n- id: A\n  at: [0, 0]\n  mark: a #2\ntighten: {stages: [{torque: 20 N·m}]}\n", 6, `mark: "a #2"`},
		{"", lid + "fasteners:\n- id: Bolt #2\n  at: [0, 0]\ntighten: {stages: [{torque: 20 N·m}]}\n", 4, "letters, digits, - _ ."},
		{"", lid + "fasteners: [{id: A, at: [0, 0]}]\ntighten:\n  source: manual #4\n  stages:\n  - torque: 20 N·m\n    note: with bolt #7\n", 5, `source: "manual #4"`},
		{"machine", "drawdown: 1\nmachine: P4 #2\nstrip: [p4-cover]\n", 2, `machine: "P4 #2"`},
		{"machine", "drawdown: 1\nmachine: P4\ntools:\n- hoist #2\nstrip: [p4-cover]\n", 4, `- "hoist #2"`},
		{"machine", "drawdown: 1\nmachine: P4\nstrip:\n- {part: gear #2}\n- p4-cover\n", 4, `- {part: "gear #2"}`},
		{"survey", fmt.Sprintf(survey, "Cover #2"), 2, `title: "Cover #2"`},
		{"wrenches", "wrenches:\n- {name: no #2, to: 60 N·m}\n", 2, `- {name: "no #2", to: 60 N·m}`},
		{"wrenches", "wrenches:\n- name: no #2\n  to: 60 N·m # of torque\n", 2, `- name: "no #2"`},

		{"", "drawdown: 1 # version\ntitle: Lid  # two blanks\n# a line of its own\nunits: mm # of lengths\nrevision: 3 # first\ndate: 2026-03-14 # today\nview: \"from above\" # quoted\n" + soundBody, 0, ""},
		{"", lid + "machine: P4\t# a tab\nextends: p4-head # built in\n", 0, ""},
		{"", lid + "kinds: # all\n  main: # the long ones\n    thread: M8 # coarse\n    length: 40 mm # under the head\n" + soundBody, 0, ""},
		{"machine", "drawdown: 1 # one\nmachine: P4\nstrip: # all of it\n- p4-cover # a joint\n", 0, ""},
		{"survey", fmt.Sprintf(survey, "Cover  # 2"), 0, ""},
	} {
		problems := problemsOf(c.sort, c.text)
		if c.want == "" {
			if problems.Stops() {
				t.Errorf("%s\n%s", c.text, problems.Detail())
			}
			continue
		}
		if len(problems) == 0 || problems[0].Line != c.line || !strings.HasSuffix(problems[0].String(), c.want) {
			t.Errorf("%s\n%s\nwant %s on line %d", c.text, problems.Detail(), c.want, c.line)
		}
		if len(problems) > 1 && problems[1].Code != nodes.HashInText && problems[1].Severity == problem.Error {
			t.Errorf("%s\n%s", c.text, problems.Detail())
		}
	}
}

// First principles: ": " in a plain text turns the words before it into a key.
func TestAColonInATextIsShownInQuotes(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string // ends of the problems
	}{
		{"cautions:\n  - Note: pull the pin: it is sprung\n  - another\n", []string{`- "Note: pull the pin: it is sprung"`}},
		{"cautions:\n  - Note: pull the pin\n", []string{`- "Note: pull the pin"`}},
		{"cautions:\n  - pull the pin: it is: sprung\n", []string{`- "pull the pin: it is: sprung"`}},
		{"cautions: [Warning: hot, another]\n", []string{`cautions: ["Warning: hot", another]`}},
		{"cautions:\n  - tighten: pull the pin: it is sprung\n", []string{`- tighten: "pull the pin: it is sprung"`}},
		{"cautions:\n  - {loosen: pull the pin: it is sprung}\n", []string{`- {loosen: "pull the pin: it is sprung"}`}},
		{"machine: Pump: the rear one\n", []string{`machine: "Pump: the rear one"`}},
		{"machine: Pump: the rear one\nview: from above: left\n", []string{`machine: "Pump: the rear one"`, `view: "from above: left"`}},
		{"cautions: [{loosen: pull the pin: it is sprung}, \"b\" # c\n  , bolt #7,\n c]\n", []string{`cautions: [{loosen: "pull the pin: it is sprung"}, "b" # c`, `, "bolt #7",`}},
	} {
		problems := problemsOf("", lid+c.text+soundBody)
		ok := len(problems) == len(c.want)
		for i, want := range c.want {
			ok = ok && strings.HasSuffix(problems[i].String(), want)
		}
		if !ok {
			t.Errorf("%s\n%s\nwant %q", c.text, problems.Detail(), c.want)
		}
	}
	note := lid + "fasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{torque: 20 N·m, note: pull the pin: it is sprung}]}\n"
	if problems := problemsOf("", note); len(problems) != 1 || !strings.HasSuffix(problems[0].String(), `note: "pull the pin: it is sprung"}]}`) {
		t.Error(problems.Detail())
	}
}

// First principles: YAML fails at the first line with a dash, but the line
// before it lacks one. The lines below are read.
func TestALackingDashIsBlamed(t *testing.T) {
	for _, c := range []struct {
		text string
		line int
		want string
	}{
		{"cautions:\n  Fit a new gasket\n  - Mark the caps\n", 4, "- Fit a new gasket"},
		{"cautions:\n  - Mark the caps\n  Fit a new gasket\n  - another\n", 5, "- Fit a new gasket"},
		{"stations:\n  {id: T1, at: [9, 9]}\n  - {id: T2, at: [9, 19]}\n", 4, "- {id: T1, at: [9, 9]}"},
		{"stations:\n  id: T1\n  at: [9, 9]\n  - {id: T2, at: [9, 19]}\n", 4, "- id: T1"},
		{"stations:\n  - {id: T2, at: [9, 19]}\n  id: T1\n  at: [9, 9]\n", 5, "- id: T1"},
	} {
		problems := problemsOf("", lid+c.text+"view: 9\ndate: 5\n"+soundBody)
		if len(problems) != 2 || problems[0].Line != c.line || !strings.HasSuffix(problems[0].String(), c.want) || problems[1].Code != "reader no date" {
			t.Errorf("%s\n%s\nwant %s on line %d, and the date", c.text, problems.Detail(), c.want, c.line)
		}
	}
}

// First principles: the same text is the same pattern.
func TestUTF16IsRead(t *testing.T) {
	text := lid + "machine: größe 龍 𝕄\n" + soundBody
	want, problems := readText(text)
	if problems.Stops() {
		t.Fatal(problems)
	}
	for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
		var data []byte
		for _, unit := range append([]uint16{0xFEFF}, utf16.Encode([]rune(text))...) {
			data = order.AppendUint16(data, unit)
		}
		got, problems := Read(FromBytes("text", data))
		if problems.Stops() {
			t.Errorf("%v: %v", order, problems)
		}
		same(t, fmt.Sprint(order), got, want)
		opened, err := Open("-", bytes.NewReader(data))
		if err != nil || string(opened.Data) != text {
			t.Errorf("%v: from a stream %q, %v", order, opened.Data, err)
		}
		_, problems = Read(FromBytes("text", data[:len(data)-1]))
		if len(problems) != 1 || problems[0].Found.Code != nodes.UTF16 {
			t.Errorf("%v, broken: %v", order, problems)
		}
	}
	if big := append([]byte{0xFF, 0xFE}, make([]byte, source.MostBytes)...); len(FromBytes("text", big).Data) != len(big) {
		t.Error("a file that is too large is not taken apart")
	}
}
