package frames_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/frames"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/words"
)

// planOf plans a built-in pattern, or a pattern given as text.
var planOf = patterntest.Plan

// Pictures pass the layout check in every language, for both sides.
func TestLayouts(t *testing.T) {
	for k, name := range patterns.Builtin() {
		w, err := words.Find(words.Languages()[k%len(words.Languages())])
		if err != nil {
			t.Fatal(err)
		}
		for _, loosening := range []bool{false, true} {
			ask := frames.Work{Plan: planOf(t, name), Words: w, Loosening: loosening}
			pages := []scene.Page{frames.Lay(ask).Part}
			for picture := range frames.Pictures(ask) {
				pages = append(pages, picture.Page)
			}
			for _, page := range pages {
				for _, fault := range scenetest.CheckLayout(page) {
					t.Errorf("%s, loosening %v: %s", name, loosening, fault)
				}
				if err := font.Check(page); err != nil {
					t.Errorf("%s: %v", name, err)
				}
			}
		}
	}
}

// shownIn returns which marks of a picture are black and which are grey, and
// its words.
func shownIn(page scene.Page) (black, grey []string, words string) {
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Shape:
			switch {
			case it.Tag.Role == scene.Mark && it.Fill == scene.Black:
				black = append(black, it.Tag.Name)
			case it.Tag.Role == scene.Mark && it.Fill == scene.Shade:
				grey = append(grey, it.Tag.Name)
			}
		case scene.Text:
			if it.Tag.Role != scene.Number {
				words += it.Content + "|"
			}
		}
	}
	return black, grey, words
}

// The film goes stage by stage like the work: at each step one mark is black,
// those before it in the stage are grey, and the figure of the stage is shown.
// First principles: the steps of the plan, tested in package plan. At the start
// no mark is grey, at the end all are.
func TestFilmShowsTheWork(t *testing.T) {
	p := planOf(t, "p4-head")
	pictures := slices.Collect(frames.Pictures(frames.Work{Plan: p, Words: words.English()}))
	steps := p.Steps(p.Tighten)
	if len(pictures) != len(steps)+2 {
		t.Fatalf("%d pictures for %d steps, a start and an end", len(pictures), len(steps))
	}
	figures := []string{"20 N·m", "40 N·m", "+90°", "+90°", "24 N·m"} // of the file
	before := 0                                                       // in the stage
	for k, step := range steps {
		black, grey, text := shownIn(pictures[k+1].Page)
		if k > 0 && steps[k-1].Stage != step.Stage {
			before = 0
		}
		number := step.Stage.Number
		wantGrey := before
		if number == len(figures) {
			wantGrey += 10 // the main bolts are done
		}
		if !slices.Equal(black, []string{step.Fastener.ID}) || len(grey) != wantGrey {
			t.Errorf("step %d: black %v, %d grey, want %s and %d", k+1, black, len(grey), step.Fastener.ID, wantGrey)
		}
		if want := fmt.Sprintf("Stage %d of 5|%s|", number, figures[number-1]); !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), want) {
			t.Errorf("step %d says %q, want %q", k+1, text, want)
		}
		if number == 1 != (pictures[k+1].Seconds > 1) && number != 5 {
			t.Errorf("step %d, stage %d, stands for %g s", k+1, number, pictures[k+1].Seconds)
		}
		before++
	}
	for k, want := range map[int]int{0: 0, len(pictures) - 1: 14} {
		if black, grey, _ := shownIn(pictures[k].Page); len(black) != 0 || len(grey) != want {
			t.Errorf("picture %d: black %v, %d grey, want %d", k, black, len(grey), want)
		}
	}
}

// A part with many bolts shows its first stage bolt by bolt, and each later one
// in one picture; a wait is one picture too.
func TestFilmOfManyBoltsIsShort(t *testing.T) {
	p := planOf(t, `
drawdown: 1
title: Flange
fasteners: [{circle: {count: 60, diameter: 900, id: S}}]
tighten: {stages: [{torque: 20 N·m}, {torque: 40 N·m}, {wait: 10 min}, {torque: 60 N·m}]}
`)
	pictures := slices.Collect(frames.Pictures(frames.Work{Plan: p, Words: words.English()}))
	if len(pictures) != 1+60+1+1+1+1 {
		t.Fatalf("%d pictures", len(pictures))
	}
	for k, want := range map[int]int{60: 1, 61: 60, 62: 0, 63: 60} {
		if black, _, _ := shownIn(pictures[k].Page); len(black) != want {
			t.Errorf("picture %d: %d black, want %d", k, len(black), want)
		}
		for _, fault := range scenetest.CheckLayout(pictures[k].Page) {
			t.Errorf("picture %d: %s", k, fault)
		}
	}
}

// Steps have the figures of the file: as given, calculated, and in the language
// of the page.
func TestSteps(t *testing.T) {
	p := planOf(t, `
drawdown: 1
title: Lid
kinds: {lid: {thread: M8, class: "8.8", lubricant: engine oil}}
fasteners: [{row: {count: 3, pitch: 60, id: C, kind: lid}}]
tighten:
  stages: [{percent: 50}, {back off: 90°}, {torque: 20 N·m, note: by hand}, {wait: 10 min}, {angle: 60°}]
`)
	german, err := words.Find("de")
	if err != nil {
		t.Fatal(err)
	}
	show := frames.Lay(frames.Work{Plan: p, Words: german})
	if len(show.Steps) != 13 || show.Stages != 5 || len(show.Members) != 6 {
		t.Fatalf("%d steps, %d stages, %d lists of members", len(show.Steps), show.Stages, len(show.Members))
	}
	if s := show.Steps[0]; !strings.HasPrefix(s.Figure, "≈ ") || !strings.Contains(s.Note, "berechnet") {
		t.Errorf("worked out: %+v", s)
	}
	for k, want := range map[int]frames.Action{
		3: {ID: "C1", Number: 3, Stage: 2, Figure: "−90°"}, // slackening is in reverse; see package plan
		9: {Stage: 4, Figure: "10\u00a0min"},
	} {
		got := show.Steps[k]
		if got.ID != want.ID || got.Number != want.Number || got.Stage != want.Stage || got.Figure != want.Figure {
			t.Errorf("step %d: %+v, want %+v", k+1, got, want)
		}
	}
	if note := show.Steps[6].Note; !strings.Contains(note, "by hand") {
		t.Errorf("the note of the file is lost: %q", note)
	}
	out := frames.Lay(frames.Work{Plan: p, Words: german, Loosening: true})
	if last := out.Steps[len(out.Steps)-1]; last.Figure != "heraus" || last.ID != "C2" || out.Direction != "LÖSEN" {
		t.Errorf("the last to be loosened: %+v, %s", last, out.Direction)
	}
	// Without stages the steps follow the order.
	bare := frames.Lay(frames.Work{Plan: planOf(t, "drawdown: 1\ntitle: Lid\nfasteners: [{row: {count: 3, pitch: 60, id: C}}]\n"), Words: german})
	if len(bare.Steps) != 3 || bare.Steps[0].ID != "C2" || bare.Steps[0].Figure != "" {
		t.Errorf("without stages: %+v", bare.Steps)
	}
}
