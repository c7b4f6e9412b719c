package edit

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/meaning"
	"drawdown/patterns/source"
)

// builtin opens a built-in pattern with another text.
func builtin(t *testing.T, name string, data []byte) source.Source {
	t.Helper()
	from, err := patterns.Open(name, strings.NewReader(""))
	if err != nil {
		t.Fatal(err)
	}
	if data != nil {
		from.Data = data
	}
	return from
}

// paths lists all parts of a file.
func (v Value) paths(at Path) (all []Path) {
	for i, child := range v.Of {
		step := fmt.Sprint(i)
		if v.Kind == Map {
			step = v.Keys[i]
		}
		all = append(append(all, at.Then(step)), child.paths(at.Then(step))...)
	}
	return all
}

func pick[T any](r *rand.Rand, all []T) T { return all[r.IntN(len(all))] }

var someTexts = []string{"20 N·m", "8.8", "a, b", "it's", "yes", "null", "x: y", "# no", "90°", "[1", "two\nlines", " led", "-", "“ü”", `back\slash "q"`, "~", "1e3", "", "@x", "%", "& y", "*z", "!t", "a #b", "key:"}

// someEdit returns an edit that a person could make.
func someEdit(r *rand.Rand, content Value, ids []string) Operation {
	paths := content.paths(nil)
	by := [2]float64{float64(r.IntN(2000))/100 - 10, float64(r.IntN(2000))/100 - 10}
	path, id := pick(r, paths), "M1"
	if len(ids) > 0 {
		id = pick(r, ids)
	}
	var lists []Path
	for _, p := range paths {
		if content.At(p).Kind == List {
			lists = append(lists, p)
		}
	}
	v := Text(pick(r, someTexts))
	if r.IntN(3) == 0 {
		v = Value{}.With("what", v).With("at", Texts([]string{pick(r, someTexts), "b"}))
	}
	switch op := (Operation{IDs: []string{id}, At: &by, By: &by, Text: "Z9", Path: path, Value: &v}); r.IntN(12) {
	case 0:
		op.Do = Move
		return op
	case 1:
		op.Do, op.IDs = Nudge, append(op.IDs, pick(r, ids))
		return op
	case 2:
		op.Do = pick(r, []Verb{Shift, Rename, SetKind, Align, Mirror})
		op.IDs = append(op.IDs, pick(r, ids))
		return op
	case 3:
		op.Do, op.Text = Cast, pick(r, []string{"", "12"})
		return op
	case 4:
		op.Do = Remove
		return op
	case 5:
		op.Do, op.IDs = Add, nil
		return op
	case 6:
		op.Do, op.IDs = Order, ids
		return op
	case 7:
		op.Do = Drop
		return op
	case 8, 9:
		if len(lists) > 0 {
			op.Path = pick(r, lists)
			n := len(content.At(op.Path).Of)
			from, to := r.IntN(n), r.IntN(n)
			op.Do, op.From, op.To = pick(r, []Verb{Insert, Reorder}), &from, &to
			return op
		}
	}
	return Operation{Do: Set, Path: path, Value: &v}
}

func idsOf(from source.Source) (ids []string) {
	input, _, _ := meaning.Read(from)
	for _, f := range input.Joint.Fasteners {
		ids = append(ids, f.ID)
	}
	return ids
}

// notations are ways to write the same file.
var notations = map[string]func([]byte) []byte{
	"as it is":      func(b []byte) []byte { return b },
	"other breaks":  func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\n"), []byte("\r\n")) },
	"no last break": func(b []byte) []byte { return bytes.TrimRight(b, "\n") },
	"marked":        func(b []byte) []byte { return append([]byte(mark), b...) },
}

// Random edits, all taken back in turn, give the first bytes. Each edit that is
// made changes what it should: put compares all of the file.
func TestEditsTakenBack(t *testing.T) {
	t.Parallel()
	edits := testkit.Samples(16, 2000)
	made, refused := 0, map[string]int{}
	for _, name := range patterns.Builtin() {
		for notation, write := range notations {
			first := write(slices.Clone(builtin(t, name, nil).Data))
			from, r := builtin(t, name, first), rand.New(rand.NewPCG(1, 2))
			ids := idsOf(from)
			var done []Change
			for i := range edits {
				if i%15 == 0 { // random texts soon make a file that cannot be read
					from.Data, ids, done = takenBack(t, name+" "+notation, from.Data, done, first), idsOf(builtin(t, name, first)), nil
				}
				_, content, err := parse(newText(from.Data))
				if err != nil {
					t.Fatal(err)
				}
				op := someEdit(r, content, ids)
				change, err := Apply(from, op)
				if err != nil {
					refused[string(op.Do)+" "+err.Error()]++
					continue
				}
				made++
				if from.Data, err = change.Apply(from.Data); err != nil {
					t.Fatalf("%s: %+v: %v", name, op, err)
				}
				done = append(done, change)
				if now := idsOf(from); now != nil {
					ids = now
				}
			}
			takenBack(t, name+" "+notation, from.Data, done, first)
		}
	}
	t.Logf("%d edits made, refused: %v", made, refused)
	if made < edits*len(patterns.Builtin())*2 {
		t.Errorf("only %d edits were made", made)
	}
}

func takenBack(t *testing.T, name string, data []byte, done []Change, first []byte) []byte {
	t.Helper()
	for _, change := range slices.Backward(done) {
		var err error
		if data, err = change.Inverse().Apply(data); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	if !bytes.Equal(data, first) {
		t.Errorf("%s differs after all is taken back:\n%s", name, data)
	}
	return slices.Clone(first)
}

// commentsOf lists the comments of a file.
func commentsOf(t *testing.T, data []byte) []string {
	e, err := newEditor(data)
	if err != nil {
		t.Fatal(err)
	}
	whole := *e.root
	whole.start, whole.end = 0, len(data)
	return e.comments(&whole)
}

// Every edit of a text anywhere, and every edit of a fastener, leaves all
// comments of a built-in file as they are, and every line without the edited
// part.
func TestCommentsStay(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		from := builtin(t, name, nil)
		before := commentsOf(t, from.Data)
		_, content, _ := parse(newText(from.Data))
		var ops []Operation
		for _, path := range content.paths(nil) {
			if content.At(path).Kind == Scalar {
				ops = append(ops, Operation{Do: Set, Path: path, Value: &Value{Kind: Scalar, Text: "another"}})
			}
			if content.At(path).Kind == List && len(content.At(path).Of) > 1 {
				last := len(content.At(path).Of) - 1
				ops = append(ops, Operation{Do: Reorder, Path: path, From: new(int), To: &last}, Operation{Do: Insert, Path: path, Value: &Value{Kind: Scalar, Text: "more"}})
			}
		}
		for _, id := range idsOf(from) {
			for _, do := range []Verb{Move, Nudge, Rename, SetKind, Cast, Mirror} {
				if do == Mirror && content.At(Path{"fasteners"}) == nil {
					continue // a list here replaces that of the file below
				}
				ops = append(ops, Operation{Do: do, IDs: []string{id}, At: &[2]float64{1, 2}, By: &[2]float64{0, 1}, Text: "7"})
			}
		}
		for i, op := range ops {
			if i%testkit.Samples(9, 1) != 0 {
				continue
			}
			change, err := Apply(from, op)
			if err != nil {
				t.Errorf("%s: %s %v %v: %v", name, op.Do, op.Path, op.IDs, err)
				continue
			}
			after, _ := change.Apply(from.Data)
			got := commentsOf(t, after)
			slices.Sort(got)
			want := slices.Sorted(slices.Values(before))
			if !slices.Equal(want, got) {
				t.Errorf("%s: %s %v %v:\n%q\n%q\n%s", name, op.Do, op.Path, op.IDs, want, got, after)
			}
			if op.Do == Set {
				onlyOneLine(t, name, from.Data, after)
			}
		}
	}
}

// onlyOneLine checks that two files differ in one line, and there only in one
// stretch.
func onlyOneLine(t *testing.T, name string, before, after []byte) {
	a, b := bytes.Split(before, []byte("\n")), bytes.Split(after, []byte("\n"))
	differ := 0
	for i := range min(len(a), len(b)) {
		if !bytes.Equal(a[i], b[i]) {
			differ++
		}
	}
	if len(a) != len(b) || differ > 1 {
		t.Errorf("%s: %d lines became %d, and %d differ", name, len(a), len(b), differ)
	}
}

// A moved fastener is where it was put, all others are where they were.
func TestMoved(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		from := builtin(t, name, nil)
		before, _, _ := meaning.Read(from)
		for _, f := range before.Joint.Fasteners {
			change, err := Apply(from, Operation{Do: Move, IDs: []string{f.ID}, At: &[2]float64{f.At.X + 1.5, f.At.Y - 0.25}})
			if err != nil {
				t.Errorf("%s: %s: %v", name, f.ID, err)
				continue
			}
			data, _ := change.Apply(from.Data)
			after, _, problems := meaning.Read(builtin(t, name, data))
			if problems.Stops() || len(after.Joint.Fasteners) != len(before.Joint.Fasteners) {
				t.Errorf("%s: %s: %v\n%s", name, f.ID, problems, data)
				continue
			}
			for i, old := range before.Joint.Fasteners {
				want := old
				if old.ID == f.ID {
					want.At = geometry.Point{X: f.At.X + 1.5, Y: f.At.Y - 0.25}
				}
				got := after.Joint.Fasteners[i]
				if got.At.Distance(want.At) > 0.001 || got.ID != want.ID || got.Kind != want.Kind || got.Cast != want.Cast || got.Mark != want.Mark {
					t.Errorf("%s: %s moved, then %v is %v", name, f.ID, want, got)
				}
			}
		}
	}
}

// A removed fastener is gone, and its file still reads.
func TestRemoved(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		from := builtin(t, name, nil)
		for _, id := range idsOf(from) {
			change, err := Apply(from, Operation{Do: Remove, IDs: []string{id}})
			if err != nil {
				t.Errorf("%s: %s: %v", name, id, err)
				continue
			}
			data, _ := change.Apply(from.Data)
			after, _, problems := meaning.Read(builtin(t, name, data))
			left := slices.ContainsFunc(after.Joint.Fasteners, func(f geometry.Fastener) bool { return f.ID == id })
			if problems.Stops() || left || len(after.Joint.Fasteners) != len(idsOf(from))-1 {
				t.Errorf("%s: %s: %v\n%s", name, id, problems, data)
			}
		}
	}
}
