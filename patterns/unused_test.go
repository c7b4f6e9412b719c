package patterns

import (
	"maps"
	"math/rand/v2"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/patterns/machine"
	"drawdown/patterns/measured"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/wrenches"
	"drawdown/sequence/plan"
)

// change replaces one text of a file by another.
type change struct {
	line, from, to int // columns from 1, by characters
	with           string
}

func (c change) in(text string) string {
	lines := strings.Split(text, "\n")
	line := []rune(lines[c.line-1])
	lines[c.line-1] = string(line[:c.from-1]) + c.with + string(line[c.to-1:])
	return strings.Join(lines, "\n")
}

var aNumber = regexp.MustCompile(`[0-9]+`)

// others maps words to words that can replace them.
var others = map[string]string{"left": "right", "right": "left", "yes": "no", "no": "yes", "true": "false", "spiral": "cross", "cross": "spiral",
	"row": "spiral", "star": "spiral", "circular": "spiral", "auto": "spiral", "once": "inspect", "inspect": "yes", "mm": "in", "in": "mm", "x": "y", "y": "x",
	"top": "bottom", "bottom": "top", "steel": "brass", "aluminium": "brass", "composite": "metal", "raised": "full"}

// otherwise returns a text with another meaning, and of the same form if that
// is easy.
func otherwise(text string) string {
	if other := others[text]; other != "" {
		return other
	}
	if at := aNumber.FindAllStringIndex(text, -1); at != nil {
		last := at[len(at)-1]
		digit := text[last[1]-1]
		return text[:last[1]-1] + string('0'+(digit-'0'+1)%10) + text[last[1]:]
	}
	return text + "x"
}

// changesOf returns possible changes of a file's values: another value, none, a
// list or a map. A value may be omitted if it is the usual one.
func changesOf(n *nodes.Node, lines []string) (all []change) {
	value := func(n *nodes.Node) (change, bool) {
		line := []rune(lines[n.Line-1])
		c := change{line: n.Line, from: n.Column, to: n.Column + len([]rune(n.Text))}
		quoted := 0
		if c.from <= len(line) && strings.ContainsRune(`"'`, line[c.from-1]) {
			quoted = 1
		}
		c.to += 2 * quoted
		return c, !n.Null && c.to-1 <= len(line) && string(line[c.from-1+quoted:c.to-1-quoted]) == n.Text
	}
	for _, item := range n.Items {
		all = append(all, changesOf(item, lines)...)
	}
	for _, e := range n.Entries {
		all = append(all, changesOf(e.Value, lines)...)
	}
	if c, ok := value(n); ok && n.Shape == nodes.Scalar {
		for _, with := range []string{otherwise(n.Text), "", "[]", "{}"} {
			c.with = with
			all = append(all, c)
		}
	}
	return all
}

// madeOf returns everything made of a text of a sort, and its problems.
func madeOf(sort, name, text string) (made any, problems string) {
	from := FromBytes(name, []byte(text))
	var found problem.List
	switch sort {
	case "survey":
		var s measured.Survey
		s, found = measured.Read(from)
		s.ReadingsAt, s.AccuracyAt = nil, problem.Problem{} // they contain the text itself
		made = s
	case "machine":
		var m machine.Machine
		m, found = machine.Read(Machines.FromBytes(name, []byte(text)))
		for i := range m.Strip {
			m.Strip[i].At, m.Strip[i].AgainAt = problem.Problem{}, problem.Problem{} // they contain the text itself
		}
		made = []any{m.Overhaul, m.Strip}
	case "wrenches":
		made, found = wrenches.Read(from, time.Time{})
	default:
		var in plan.Input
		in, found = Read(from)
		in.Fingerprint = ""
		if found.Stops() {
			break
		}
		p, err := plan.Build(in)
		if err != nil {
			return nil, err.Error()
		}
		made = []any{in, p}
	}
	return made, said(found).Error()
}

// spoken returns files that together have every key.
func spoken(t *testing.T) map[string][2]string {
	files := map[string][2]string{
		"many lines": {"", manyLines},
		"row":        {"", rail + "joint: {part: {material: aluminium, thickness: 60 mm}, counterpart: {material: cast iron, thickness: 80 mm}, row: {bending: 2.0e8 N·mm², foundation: 900 N/mm², length: 380 mm, start: 15 mm}, bolt flexibility: 4.2e-6 mm/N}\n"},
		"data sheet": {"", rail + "joint: {gasket: {squeezed: 5-20 %, at: 34 MPa, thickness: 2 mm, strip: 16 mm}}\n"},
		"stiffness":  {"", rail + "joint: {gasket: {stiffness: 120 MPa/mm, strip: 16 mm}}\n"},
		"flange":     {"", circle + "joint: {flange: {outer: 300 mm, bore: 150 mm, face: raised, gasket inner: 160 mm, gasket outer: 200 mm, pipe wall: 8 mm, pipe radius: 84 mm, pair: no}}\n"},
		"survey": {"survey", "drawdown: 1\ntitle: Cover\nmachine: P4\nunits: mm\nholes: {A: 8.4, B: 8.4, C: 8.5, D: 9}\nmeasured:\n  - [A, B, 95.02]\n" +
			"  - {from: A, to: C, outside: 142.10}\n  - {from: B, to: C, inside: 120.35}\n  - {from: A, to: D, centre: 60}\n  - [B, D, 80]\nlevel: [A, B]\nup: C\ndown: [D]\naccuracy: 0.05\n"},
		"machine": {"machine", "drawdown: 1\ntitle: Strip\nmachine: P4\nrevision: 2\ndate: 2026-02-28\ntools: [hoist, lock]\nstrip:\n  - {note: Drain oil}\n  - p4-cover\n  - {caution: {loosen: Pin in first}}\n" +
			"  - {joint: p4-head, gaskets: [head gasket], sealant: none, again: after the first run, loosen: gently, tighten: oil it}\n" +
			"  - {part: camshaft, loosen: lift it level, tighten: oil the bearings, figures: [end float]}\n  - {part: pulley, new: [pulley bolt], manual: [pulley bolt]}\ncautions: [Engine cold, {tighten: clean}]\n"},
		"wrenches": {"wrenches", "drawdown: 1\nwrenches:\n  - {name: small, from: 5 N·m, to: 60 N·m, division: 0.5 N·m, length: 300 mm}\n  - {name: large, to: 200 N·m}\n"},
	}
	for _, name := range Builtin() {
		text, _ := BuiltinText(name)
		files[name] = [2]string{"", string(text)}
	}
	for _, name := range []string{"every-key", "makers-order", "smallest"} {
		text, err := os.ReadFile("testdata/good/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		files[name] = [2]string{"", string(text)}
	}
	return files
}

// First principles: a value that can be changed without any effect on the
// result, and without a message, was dropped silently.
func TestNothingIsDroppedInSilence(t *testing.T) {
	const most = 30 // of one file; a full run makes all of them
	random := rand.New(rand.NewPCG(1, 2))
	tried := 0
	files := spoken(t)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		sort, text := files[name][0], files[name][1]
		before, said := madeOf(sort, name, text)
		if strings.Contains(said, ": error: ") {
			t.Fatal(said)
		}
		f := nodes.NewFile(name, []byte(text))
		changes := changesOf(nodes.NewProblems(name).Parse(f, []byte(text), nodes.Format{}), f.Lines)
		random.Shuffle(len(changes), func(i, j int) { changes[i], changes[j] = changes[j], changes[i] })
		if !testkit.Full() {
			changes = changes[:min(most, len(changes))]
		}
		for _, c := range changes {
			tried++
			changed := c.in(text)
			after, words := madeOf(sort, name, changed)
			if words == said && reflect.DeepEqual(after, before) {
				t.Errorf("%s: %s\nnobody sees %s", name, f.Lines[c.line-1], strings.Split(changed, "\n")[c.line-1])
			}
		}
	}
	if t.Logf("%d changes", tried); tried < 10*most {
		t.Error("too few")
	}
}
