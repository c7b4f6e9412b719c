package patterns

import (
	"path/filepath"
	"strings"
	"testing"

	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

func placesOf(t *testing.T, from source.Source) meaning.Places {
	t.Helper()
	in, places, problems := meaning.Read(from)
	if problems.Stops() || len(in.Kinds) == 0 {
		t.Fatalf("%d kinds, %s", len(in.Kinds), said(problems).Detail())
	}
	return places
}

// The places are counted by hand in the files. The second file extends the
// first; it places a kind itself and has no stages.
func TestPlacesStandWhereTheFilesSay(t *testing.T) {
	at := func(file string, line, column int, snippet string) problem.Problem {
		return problem.Problem{File: file, Line: line, Column: column, Snippet: snippet}
	}
	const (
		first = "    - {of: side, torque: 15 lbf·ft}"
		last  = "    - {of: main, angle: 90 deg}"
		main  = "  main: {thread: 3/8-16 UNC, class: grade 8, length: 4 in, grip: 3 1/2, into: cast iron, engagement: 12 mm,"
	)
	base := "testdata/good/every-key.yaml"
	// A kind that the second file changes is reported there, not at the stage below.
	stageOf := map[string]problem.Problem{
		base:                            at(base, 39, 7, first),
		"testdata/good/other-bank.yaml": at("testdata/good/other-bank.yaml", 6, 9, "kinds: {side: {reuse: once}}"),
	}
	for name, side := range map[string]problem.Problem{
		base:                            at(base, 11, 3, "  side: {thread: M8, friction: 0.2}"),
		"testdata/good/other-bank.yaml": at("testdata/good/other-bank.yaml", 6, 9, "kinds: {side: {reuse: once}}"),
	} {
		source, err := Open(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		p := placesOf(t, source)
		for what, of := range map[string]struct{ got, want problem.Problem }{
			"first stage":    {p.Stage(1), at(base, 39, 7, first)},
			"last stage":     {p.Stage(7), at(base, 45, 7, last)},
			"no stage":       {p.Stage(0), at(name, 0, 0, "")},
			"one past":       {p.Stage(8), at(name, 0, 0, "")},
			"kind main":      {p.At("main", 0), at(base, 9, 3, main)},
			"kind side":      {p.At("side", 0), side},
			"stage of side":  {p.At("side", 1), stageOf[name]},
			"stage of main":  {p.At("main", 1), at(base, 39, 7, first)},
			"no such kind":   {p.At("cap", 0), at(name, 0, 0, "")},
			"less than none": {p.Stage(-1), at(name, 0, 0, "")},
		} {
			of.got.File = filepath.ToSlash(of.got.File)
			same(t, name+", "+what, of.got, of.want)
		}
	}
}

// A stage that is an alias in the file has the place of the original, and a
// long line is cut with the mark under the place.
func TestPlacesOfAliasesAndLongLines(t *testing.T) {
	long := lid + "fasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [&a {torque: 20 N·m, note: " + strings.Repeat("x", 190) +
		"}, {torque: 30 N·m}, *a]}\n"
	p := placesOf(t, FromBytes("text", []byte(long)))
	if first, again := p.Stage(1), p.Stage(3); first.Line != 4 || first != again {
		t.Errorf("%+v, %+v", first, again)
	}
	second := p.Stage(2)
	if got := []rune(second.Snippet)[second.Mark-1:]; second.Mark == 0 || !strings.HasPrefix(string(got), "{torque: 30 N·m}") {
		t.Errorf("%+v", second)
	}
}

// A file that cannot be read only has the place of the whole file.
func TestPlacesOfABrokenFile(t *testing.T) {
	_, p, problems := meaning.Read(FromBytes("text", []byte(lid+"tighten: {stages: [{torque: 20 N·m}]}\n")))
	if !problems.Stops() {
		t.Fatal("a file without fasteners must stop")
	}
	same(t, "stage", p.Stage(1), problem.Problem{File: "text"})
	same(t, "kind", p.At("bolt", 0), problem.Problem{File: "text"})
}
