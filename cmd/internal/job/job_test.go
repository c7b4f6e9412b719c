package job_test

import (
	"bytes"
	"errors"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const lid = `drawdown: 1
title: Lid, no. 4
date: 2026-03-14
fasteners: [{grid: {columns: 5, rows: 2, pitch: [95, 90], centre: [31, -12], id: M}}]
tighten: {order: [{way: spiral, turn: left}], stages: [{torque: 20 N·m}], source: works manual 4.2}
`

func load(t *testing.T, text string, way sequence.Way, turn sequence.Turn) plan.Plan {
	t.Helper()
	p, problems, err := job.Load("-", strings.NewReader(text), way, turn)
	if err != nil || len(problems) > 0 {
		t.Fatalf("error %v, problems:\n%s", err, problems.Detail())
	}
	return p
}

// The orders are the canonical results of the pattern file's contract for a 2 ×
// 5 grid; of the row it is only known that its order differs.
func TestWayAndTurnGoBeforeTheFile(t *testing.T) {
	left := []string{"M3", "M8", "M9", "M4", "M2", "M7", "M10", "M5", "M1", "M6"}
	right := []string{"M3", "M8", "M7", "M2", "M4", "M9", "M6", "M1", "M5", "M10"}
	for _, c := range []struct {
		way  sequence.Way
		turn sequence.Turn
		want []string
	}{
		{"", "", left},
		{"", sequence.TurnLeft, left},
		{"", sequence.TurnRight, right},
		{sequence.Spiral, sequence.TurnRight, right},
	} {
		p := load(t, lid, c.way, c.turn)
		if diff := cmp.Diff(c.want, p.IDs(p.Tighten.Order)); diff != "" {
			t.Errorf("way %q, turn %q (- wanted, + planned):\n%s", c.way, c.turn, diff)
		}
		reverse := slices.Clone(c.want)
		slices.Reverse(reverse)
		if diff := cmp.Diff(reverse, p.IDs(p.Loosen.Order)); diff != "" {
			t.Errorf("way %q, turn %q, loosening (- wanted, + planned):\n%s", c.way, c.turn, diff)
		}
	}
	if p := load(t, lid, sequence.RowWay, ""); slices.Equal(p.IDs(p.Tighten.Order), left) {
		t.Error("a way that is asked for changes nothing")
	}
}

func TestProblemsOfTheFileStopTheWork(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"the reader's", "drawdown: 1\ntitle: Lid\n", "fasteners"},
		// A percentage needs a thread.
		{"the figure's", strings.Replace(lid, "torque: 20 N·m", "percent: 30", 1), "thread"},
	} {
		p, problems, err := job.Load("-", strings.NewReader(c.text), "", "")
		problems = problems.Worded(words.English().What, words.English().Allowed)
		if err != nil || !problems.Stops() || p.Title != "" {
			t.Errorf("%s: error %v, problems %q, plan %q", c.name, err, problems.Error(), p.Title)
		}
		found := slices.ContainsFunc(problems.Worded(words.English().What, words.English().Allowed), func(one problem.Problem) bool {
			return one.File == "<stdin>" && one.Severity == problem.Error && strings.Contains(one.What, c.want)
		})
		if !found {
			t.Errorf("%s problem does not speak of %q: %q", c.name, c.want, problems.Error())
		}
	}
}

func TestWarningsDoNotStopTheWork(t *testing.T) {
	text := strings.Replace(lid, "title:", "kinds: {bolt: {thread: M8}, spare: {thread: M8}}\ntitle:", 1)
	text = strings.Replace(text, "id: M}", "id: M, kind: bolt}", 1)
	text = strings.Replace(text, "{way: spiral", "{kind: bolt, way: spiral", 1)
	p, problems, err := job.Load("-", strings.NewReader(text), "", "")
	if err != nil || problems.Stops() || len(problems) == 0 || p.Title == "" {
		t.Errorf("error %v, problems %q, plan %q; want a plan and a warning", err, problems.Error(), p.Title)
	}
}

// First principles: 300 N·m breaks an M10, and a warning stops nothing.
func TestDoubtsAreWarnings(t *testing.T) {
	text := strings.Replace(lid, "title:", "kinds: {bolt: {thread: M10, class: \"10.9\", lubricant: engine oil}}\ntitle:", 1)
	text = strings.Replace(text, "id: M}", "id: M, kind: bolt}", 1)
	load(t, text, "", "") // 20 N·m causes no doubt
	p, problems, err := job.Load("-", strings.NewReader(strings.Replace(text, "20 N·m", "300 N·m", 1)), "", "")
	if err != nil || problems.Stops() || len(problems) != 1 || p.Title == "" {
		t.Fatalf("error %v, problems %q, plan %q; want a plan and one warning", err, problems.Error(), p.Title)
	}
	one := problems.Worded(words.English().What, words.English().Allowed)[0]
	if one.File != "<stdin>" || one.Line != 6 || one.Column != 56 || one.Severity != problem.Warning || !strings.Contains(one.What, "300 N·m is about 4 times") {
		t.Errorf("%+v", one)
	}
	if given := p.Tighten.Stages[0].Torque.String(); given != "300 N·m" {
		t.Errorf("the figure of the file became %s", given)
	}
}

// The figures of the built-in patterns are plausible for their bolts.
func TestBuiltInPatternsRaiseNoDoubt(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p, problems, err := job.Load(name, nil, "", "")
		if err != nil || len(problems) > 0 || len(p.Tighten.Stages) == 0 {
			t.Errorf("%s: error %v, problems %q", name, err, problems.Error())
		}
	}
}

func TestPatternsThatCannotBeRead(t *testing.T) {
	if _, _, err := job.Load("no-such-pattern", nil, "", ""); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("error %v, want one that is fs.ErrNotExist", err)
	}
	if _, _, err := job.Load(t.TempDir(), nil, "", ""); !errors.Is(err, fs.ErrInvalid) {
		t.Errorf("error %v, want one that is fs.ErrInvalid", err)
	}
}

func TestCardMakesTheSameFilesTwice(t *testing.T) {
	paper, err := sheet.FindPaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	ask := job.Printing{Request: sheet.Request{Paper: paper, Words: words.English()}, Formats: []render.Format{render.SVG, render.PDF, render.PNG}, DPI: 72}
	p := load(t, lid, "", "")
	first, _, err := job.Card(p, card.BothSides, ask)
	if err != nil {
		t.Fatal(err)
	}
	second, _, err := job.Card(load(t, lid, "", ""), card.BothSides, ask)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for i, f := range first {
		names = append(names, f.Name)
		if len(f.Data) == 0 || f.Name != second[i].Name || !bytes.Equal(f.Data, second[i].Data) {
			t.Errorf("%s (%d bytes) comes out as %s (%d bytes) the second time", f.Name, len(f.Data), second[i].Name, len(second[i].Data))
		}
	}
	want := []string{"lid-no-4-tighten.svg", "lid-no-4-loosen.svg", "lid-no-4.pdf", "lid-no-4-tighten.png", "lid-no-4-loosen.png"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("files (- wanted, + made):\n%s", diff)
	}
}

// A PDF has the file's own date (ISO 32000-1, 7.9.4: D:YYYYMMDD…), never the
// clock's.
func TestThePDFCarriesTheDateOfTheFile(t *testing.T) {
	paper, err := sheet.FindPaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	ask := job.Printing{Request: sheet.Request{Paper: paper, Words: words.English()}, Formats: []render.Format{render.PDF}, DPI: 72}
	files, _, err := job.Card(load(t, lid, "", ""), card.TightenSide, ask)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(files[0].Data, []byte("D:20260314")) {
		t.Error("the date of the file is not in the PDF")
	}
	undated, _, err := job.Card(load(t, strings.Replace(lid, "date: 2026-03-14\n", "", 1), "", ""), card.TightenSide, ask)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(undated[0].Data, []byte("D:20")) {
		t.Error("a PDF without a date of its own carries one")
	}
}

// A card without most of its numbers is refused: a grid of 1800 fasteners on
// the smallest paper.
func TestNoCardWithoutMostOfItsNumbers(t *testing.T) {
	text := strings.Replace(lid, "grid: {columns: 5, rows: 2, pitch: [95, 90], centre: [31, -12], id: M}", "grid: {columns: 60, rows: 30, pitch: [9, 9], centre: [0, 0], id: M}", 1)
	paper, err := sheet.FindPaper("a5")
	if err != nil {
		t.Fatal(err)
	}
	ask := job.Printing{Request: sheet.Request{Paper: paper, Words: words.English()}, Formats: []render.Format{render.SVG}, DPI: 72}
	files, _, err := job.Card(load(t, text, "", ""), card.TightenSide, ask)
	if !errors.Is(err, sheet.MostNoRoom) || files != nil {
		t.Errorf("1800 numbers on the smallest paper: %d files, %v", len(files), err)
	}
}
