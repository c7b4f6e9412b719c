package edit

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
)

// messy has what the built-in files lack: anchors, block texts, lists in lists,
// comments at every place, texts over several lines.
const messy = `# first
drawdown: 1   # one

title: "Lid: \"left\""
machine:    'it''s'   # aligned
kinds: &k
  main: {thread: M8,   class: "8.8",  # in brackets
         lubricant: dry, }
  # before side
  side:
    thread: M6     # of side
    reuse: yes

fasteners: # here
# above A1
- {id: A1, at: [0, 0], kind: main}  # A1
  # indented

- id: A2   # own lines
  at:
  - 10     # x
  - 20
  kind: side
-
  {id: A3, at: [ 30 , -5 ]}
- grid:
    columns: 2 # two
    rows: 1
    pitch: [10, 20]
    id: B
note: |
  # no comment

  text
folded: >-
   a
   b
order: [A1, # the first
  A2,
  # above A3
  A3]
nested:
- - 1
  - 2   # two
- - 3
alias: *k
plain: goes
  on   # and ends
empty:
? odd
: value
last: [a: b, "c", 'd']`

func TestEditsOfAMess(t *testing.T) {
	t.Parallel()
	r, made := rand.New(rand.NewPCG(3, 4)), 0
	refused := map[string]int{}
	for range testkit.Samples(200, 20000) {
		from := patterns.FromBytes("messy.yaml", []byte(messy))
		if r.IntN(2) == 0 {
			from.Data = []byte(strings.ReplaceAll(messy, "\n", "\r\n"))
		}
		first := string(from.Data)
		var done []Change
		for range 4 {
			_, content, err := parse(newText(from.Data))
			if err != nil {
				t.Fatal(err)
			}
			op := someEdit(r, content, []string{"A1", "A2", "A3"})
			change, err := Apply(from, op)
			if err != nil {
				refused[string(op.Do)+" "+err.Error()]++
				continue
			}
			made++
			from.Data, _ = change.Apply(from.Data)
			done = append(done, change)
		}
		takenBack(t, "messy", from.Data, done, []byte(first))
	}
	t.Logf("%d made, refused %v", made, refused)
}

// Exact results, by how a careful person would make the edit.
func TestNotations(t *testing.T) {
	const head = "drawdown: 1\nfasteners:\n"
	one, two := 1, 2
	for _, c := range []struct {
		name, before, after string
		op                  Operation
	}{
		{"one coordinate", head + "- {id: A, at: [ 1,  2 ]} # a\n", head + "- {id: A, at: [ 1,  7.5 ]} # a\n", Operation{Do: Move, IDs: []string{"A"}, At: &[2]float64{1, 7.5}}},
		{"inches", "units: in\nfasteners:\n- {id: A, at: [1, 2]}\n", "units: in\nfasteners:\n- {id: A, at: [2, 2]}\n", Operation{Do: Nudge, IDs: []string{"A"}, By: &[2]float64{25.4, 0}}},
		{"unit kept where it stays", head + "- {id: A, at: [1 in, 2]}\n", head + "- {id: A, at: [1 in, 3]}\n", Operation{Do: Nudge, IDs: []string{"A"}, By: &[2]float64{0, 1}}},
		{"typed", head + "- {id: A, at: [1, 2]}\n", head + "- {id: A, at: [25.4, 2]}\n", Operation{Do: Move, IDs: []string{"A"}, X: "1 in"}},
		{"nearly regular", head + "- {id: A, at: [0.1, 0]} # a\n- {id: B, at: [50, 0.2]}\n- {id: C, at: [100, 0]}\n- {id: D, at: [0, 80]}\n- {id: E, at: [50.1, 80]}\n- {id: F, at: [100, 80.1]}\n", head + "- {id: A, at: [0, 0]} # a\n- {id: B, at: [50, 0]}\n- {id: C, at: [100, 0]}\n- {id: D, at: [0, 80]}\n- {id: E, at: [50, 80]}\n- {id: F, at: [100, 80]}\n", Operation{Do: Regular, IDs: []string{"A", "B", "C", "D", "E", "F"}}},
		{"whole grid", head + "- grid: {columns: 2, rows: 2, pitch: [9, 9], centre: [0, 0], id: A}\n", head + "- grid: {columns: 2, rows: 2, pitch: [9, 9], centre: [3, 0], id: A}\n", Operation{Do: Shift, IDs: []string{"A2"}, By: &[2]float64{3, 0}}},
		{"whole row without a start", head + "- row: {count: 2, pitch: 9, id: A}\n", head + "- row: {count: 2, pitch: 9, id: A, from: [3, 1]}\n", Operation{Do: Shift, IDs: []string{"A2"}, By: &[2]float64{3, 1}}},
		{"new key in a block", "kinds:\n  a:\n    thread: M8   # eight\n\ntitle: T\n", "kinds:\n  a:\n    thread: M8   # eight\n    class: 10.9\n\ntitle: T\n", Operation{Do: Set, Path: Path{"kinds", "a", "class"}, Value: &Value{Kind: Scalar, Text: "10.9"}}},
		{"new key in brackets", "kinds: {a: {thread: M8}}\n", "kinds: {a: {thread: M8, reuse: yes}}\n", Operation{Do: Set, Path: Path{"kinds", "a", "reuse"}, Value: &Value{Kind: Scalar, Text: "yes"}}},
		{"new part of the file", "drawdown: 1\n", "drawdown: 1\ncautions: [\"Hot: wait\"]\n", Operation{Do: Insert, Path: Path{"cautions"}, Value: &Value{Kind: Scalar, Text: "Hot: wait"}}},
		{"quotes stay", "title: 'old'  # t\n", "title: 'it''s new'  # t\n", Operation{Do: Set, Path: Path{"title"}, Value: &Value{Kind: Scalar, Text: "it's new"}}},
		{"stage behind the first", "tighten:\n  stages:\n    - {torque: 9 N·m}  # a\n    # b\n    - {angle: 90°}\n", "tighten:\n  stages:\n    - {torque: 9 N·m}  # a\n    - {wait: 5 min}\n    # b\n    - {angle: 90°}\n", Operation{Do: Insert, Path: Path{"tighten", "stages"}, To: &one, Value: ptr(Value{}.With("wait", Text("5 min")))}},
		{"stage goes down with its comment", "stages:\n- a\n# of b\n- b # b\n- c", "stages:\n- a\n- c\n# of b\n- b # b", Operation{Do: Reorder, Path: Path{"stages"}, From: &one, To: &two}},
		{"stage goes up from the end", "stages:\n- a\n- b # b\n- c", "stages:\n- a\n- c\n- b # b", Operation{Do: Reorder, Path: Path{"stages"}, From: &two, To: &one}},
		{"item of brackets goes", "order: [A, B, C]\n", "order: [A, B]\n", Operation{Do: Drop, Path: Path{"order", "2"}}},
		{"line goes", "a: 1\nb: 2 # two\n\nc: 3", "a: 1\n\nc: 3", Operation{Do: Drop, Path: Path{"b"}}},
		{"last line goes", "a: 1\nb: 2", "a: 1", Operation{Do: Drop, Path: Path{"b"}}},
		{"the only item takes its key along", "a: 1\ncautions:\n  - hot\n", "a: 1\n", Operation{Do: Drop, Path: Path{"cautions", "0"}}},
		{"maker's order", "tighten:\n  order:\n    - {kind: a, way: row}\n  source: m\n", "tighten:\n  order: [A1, A2]\n  source: m\n", Operation{Do: Order, IDs: []string{"A1", "A2"}}},
		{"removed from a grid", head + "- grid: {columns: 2, rows: 1, pitch: [9, 9], id: A, cast: [4, 5]}\nclusters: [{name: c, of: [A1, A2]}]\n", head + "- grid: {columns: 2, rows: 1, pitch: [9, 9], id: A, cast: [4], omit: [A2]}\nclusters: [{name: c, of: [A1]}]\n", Operation{Do: Remove, IDs: []string{"A2"}}},
		{"renamed everywhere", head + "- {id: A, at: [0, 0]}\n- {id: B, at: [9, 0]}\nclusters: [{name: c, of: [A, B]}]\ntighten: {order: [B, A]}\n", head + "- {id: Z, at: [0, 0]}\n- {id: B, at: [9, 0]}\nclusters: [{name: c, of: [Z, B]}]\ntighten: {order: [B, Z]}\n", Operation{Do: Rename, IDs: []string{"A"}, Text: "Z"}},
		{"base changed", "drawdown: 1\nextends: p4-head # base\n", "drawdown: 1\nextends: p4-head # base\nchange: {M3: {at: [1, 2]}}\n", Operation{Do: Move, IDs: []string{"M3"}, At: &[2]float64{1, 2}}},
		{"base left out", "drawdown: 1\nextends: p4-head\nomit: [M1]\n", "drawdown: 1\nextends: p4-head\nomit: [M1, M3]\n", Operation{Do: Remove, IDs: []string{"M3"}}},
	} {
		change, err := Apply(patterns.FromBytes("x.yaml", []byte(c.before)), c.op)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		after, err := change.Apply([]byte(c.before))
		if err != nil || string(after) != c.after {
			t.Errorf("%s: %v\n%s\nwant\n%s", c.name, err, after, c.after)
		}
	}
}

func ptr[T any](v T) *T { return &v }

// What cannot be edited is refused, with the reason.
func TestRefused(t *testing.T) {
	text := "a: &x [1, 2]\nb: *x\nfasteners:\n- {id: A, at: [0, 0]}\n- {id: B, at: [0, 0]}\n"
	for _, c := range []struct {
		text string
		op   Operation
		want error
	}{
		{"a: [", Operation{Do: Drop, Path: Path{"a"}}, Unreadable},
		{"- a", Operation{Do: Drop, Path: Path{"a"}}, Unreadable},
		{text, Operation{Do: Set, Path: Path{"a", "0"}, Value: ptr(Text("3"))}, Entangled},
		{text, Operation{Do: Set, Path: Path{"a", "2"}, Value: ptr(Text("3"))}, NoPart},
		{text, Operation{Do: Drop, Path: Path{"c"}}, NoPart},
		{text, Operation{Do: Move, IDs: []string{"C"}, At: &[2]float64{}}, NoFastener},
		{text, Operation{Do: Move, IDs: []string{"A"}}, LacksValue},
		{text, Operation{Do: Rename, IDs: []string{"A"}, Text: "B"}, IDTaken},
		{text, Operation{Do: Align, IDs: []string{"A"}, Text: "x"}, TooFew},
		{text, Operation{Do: Regular, IDs: []string{"A", "B"}}, TooFew},
		{text, Operation{Do: "dance"}, NoOperation},
		{"extends: p4-head\n", Operation{Do: Shift, IDs: []string{"M1"}, By: &[2]float64{1, 1}}, Elsewhere},
		{"fasteners: [{grid: {columns: 2, rows: 2, id: A}}]\n", Operation{Do: Move, IDs: []string{"A1"}, At: &[2]float64{}}, ErrorsFirst},
	} {
		if change, err := Apply(patterns.FromBytes("x.yaml", []byte(c.text)), c.op); !errors.Is(err, c.want) || change != nil {
			t.Errorf("%+v: %v, want %v", c.op, err, c.want)
		}
	}
	if _, err := (Change{{0, "a", "b"}}).Apply([]byte("c")); !errors.Is(err, TextChanged) {
		t.Errorf("another text: %v", err)
	}
}

// Typing in a field that knows only line feeds keeps all other line breaks.
func TestTyped(t *testing.T) {
	for _, c := range []struct{ before, typed, after string }{
		{"a: 1\r\nb: 2\r\n", "a: 1\nb: 3\nc: 4\n", "a: 1\r\nb: 3\r\nc: 4\r\n"},
		{"a: 1\nb: 2\r\nc: 3", "a: 1\nb: 2\nc: 4", "a: 1\nb: 2\r\nc: 4"},
		{"a\r\n", "a\n", "a\r\n"},
		{"", "a\n", "a\n"},
	} {
		change := Typed([]byte(c.before), c.typed)
		after, err := change.Apply([]byte(c.before))
		if err != nil || string(after) != c.after {
			t.Errorf("%q typed as %q: %q, %v", c.before, c.typed, after, err)
		}
		if back, _ := change.Inverse().Apply(after); string(back) != c.before {
			t.Errorf("taken back: %q", back)
		}
	}
}
