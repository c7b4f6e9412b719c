package frames_test

import (
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/render/font"
	"drawdown/render/frames"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

func planOf(t testing.TB, nameOrText string) plan.Plan {
	t.Helper()
	source := patterns.FromBytes("test.yaml", []byte(nameOrText))
	if text, ok := patterns.BuiltinText(nameOrText); ok {
		source = patterns.FromBytes(nameOrText, text)
	}
	input, problems := patterns.Read(source)
	if problems.Stops() {
		t.Fatal(problems.Error())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Pictures pass the layout check in every language, for both sides.
func TestLayouts(t *testing.T) {
	for k, name := range patterns.Builtin() {
		w, err := words.Find(words.Languages()[k%len(words.Languages())])
		if err != nil {
			t.Fatal(err)
		}
		for _, loosening := range []bool{false, true} {
			ask := frames.Request{Plan: planOf(t, name), Words: w, Loosening: loosening}
			pages := []scene.Page{frames.Lay(ask).Part}
			for _, picture := range frames.Pictures(ask) {
				pages = append(pages, picture.Page)
			}
			for _, page := range pages {
				for _, fault := range scene.CheckLayout(page) {
					t.Errorf("%s, loosening %v: %s", name, loosening, fault)
				}
				if err := font.Check(page); err != nil {
					t.Errorf("%s: %v", name, err)
				}
			}
		}
	}
}

// The film shows each fastener once: at each step one mark is black, and those
// before it are grey; at the start none is, at the end all are grey.
func TestFilmShowsTheOrder(t *testing.T) {
	p := planOf(t, "p4-head")
	pictures := frames.Pictures(frames.Request{Plan: p, Words: words.English()})
	if len(pictures) != 16 {
		t.Fatalf("%d pictures for 14 bolts, a start and an end", len(pictures))
	}
	var shown []string
	for k, picture := range pictures {
		black, grey := map[string]bool{}, map[string]bool{}
		for _, it := range picture.Page.Items {
			if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
				switch s.Fill {
				case scene.Black:
					black[s.Tag.Name] = true
				case scene.Shade:
					grey[s.Tag.Name] = true
				}
			}
		}
		wantBlack := 1
		if k == 0 || k == len(pictures)-1 {
			wantBlack = 0
		}
		if len(black) != wantBlack || len(grey) != min(max(k-1, 0), 14) {
			t.Errorf("picture %d: black %v, %d grey", k, black, len(grey))
		}
		for id := range black {
			shown = append(shown, id)
		}
	}
	// The order of the plan, which package sequence is held to.
	if want := p.IDs(p.Tighten.Order); !slices.Equal(shown, want) {
		t.Errorf("shown %q, want %q", shown, want)
	}
}

// Steps carry the figures of the file: as given, worked out, and in the
// language of the page.
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
	show := frames.Lay(frames.Request{Plan: p, Words: german})
	if len(show.Steps) != 13 || show.Stages != 5 || len(show.Members) != 6 {
		t.Fatalf("%d steps, %d stages, %d lists of members", len(show.Steps), show.Stages, len(show.Members))
	}
	if s := show.Steps[0]; !strings.HasPrefix(s.Figure, "≈ ") || !strings.Contains(s.Note, "berechnet") {
		t.Errorf("worked out: %+v", s)
	}
	for k, want := range map[int]frames.Step{
		3: {ID: "C1", Number: 3, Stage: 2, Figure: "−90°"}, // slackening goes backwards, by package plan
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
	out := frames.Lay(frames.Request{Plan: p, Words: german, Loosening: true})
	if last := out.Steps[len(out.Steps)-1]; last.Figure != "heraus" || last.ID != "C2" || out.Direction != "LÖSEN" {
		t.Errorf("the last to be loosened: %+v, %s", last, out.Direction)
	}
	// Without stages the order itself is gone through.
	bare := frames.Lay(frames.Request{Plan: planOf(t, "drawdown: 1\ntitle: Lid\nfasteners: [{row: {count: 3, pitch: 60, id: C}}]\n"), Words: german})
	if len(bare.Steps) != 3 || bare.Steps[0].ID != "C2" || bare.Steps[0].Figure != "" {
		t.Errorf("without stages: %+v", bare.Steps)
	}
}
