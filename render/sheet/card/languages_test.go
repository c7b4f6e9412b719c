package card_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// everyWord is a pattern whose card uses as many words of the catalogue as
// possible.
const everyWord = `drawdown: 1
title: "Title"
machine: "Machine"
revision: 3
date: 2026-05-04
view: "from above"
kinds:
  big: {thread: M10, class: "10.9", length: 60 mm, lubricant: engine oil, reuse: once, into: cast iron}
  mid: {thread: M8, class: "8.8", length: 40.5 mm, lubricant: dry, reuse: inspect}
  low: {thread: 3/8-16 UNC, class: grade 8, lubricant: moly grease, reuse: yes}
  raw: {thread: M6, class: "830 MPa", friction: 0.12, washer: 14 mm, hole: 7 mm}
fasteners:
  - {row: {count: 3, pitch: 60, from: [0, 0], angle: 0°, kind: big, id: A}}
  - {row: {count: 3, pitch: 60, from: [0, 60], angle: 0°, kind: mid, id: B}}
  - {row: {count: 3, pitch: 60, from: [0, 120], angle: 0°, kind: low, id: C}}
  - {row: {count: 3, pitch: 60, from: [0, 180], angle: 0°, kind: raw, id: D}}
clusters: [{name: cap, of: [A1, A2], loaded: no}]
tighten:
  stages:
    - {of: [big], torque: 20.5 N·m, note: Note}
    - {of: [mid], torque: 20 lbf·ft, way: circular}
    - {of: [big], torque: 30 N·m, way: circular, turn: left}
    - {of: [big], torque: 31 N·m, way: spiral}
    - {of: [big], torque: 32 N·m, way: star}
    - {of: [big], torque: 33 N·m, way: row}
    - {of: [big], torque: 34 N·m, way: auto}
    - {of: [big], angle: 90°}
    - {of: [big], back off: 45°}
    - {wait: 10 min}
    - {of: [low], percent: 30}
    - {of: [low], percent: 62.5}
    - {of: [raw], percent: 100}
    - {torque: 40 N·m}
  source: "Manual"
cautions: ["Caution"]
`

// fromTheFile matches the words on everyWord's card that come from the file,
// and the symbols of units and standards, which all languages share.
var fromTheFile = regexp.MustCompile(`^(Title|Machine|from|above|Note|Manual|Caution|[Bb]ig|[Mm]id|[Ll]ow|[Rr]aw|cap|grade|MPa|M\d+(×[\d,.]+)?|UNC|mm|N·m|lbf·ft|lbf·in|kN|min|h|Rp0,2|ISO|VDI|ASME|SAE|J429|B18\.2\.[18]|[0-9a-f]{4}|moly|grease|[A-D]\d|10\.9|8\.8)$`)

// Every word on a card is from the catalogue, and no figure has a decimal point
// in a language with a decimal comma.
func TestNoWordBesideTheCatalogue(t *testing.T) {
	t.Parallel()
	nothing := "drawdown: 1\ntitle: Title\nkinds: {big: {thread: M8}}\nfasteners: [{grid: {columns: 20, rows: 20, pitch: [60, 55], kind: big, id: M}}]\n"
	asked := planOf(t, everyWord)
	asked.Asked = plan.Asked{Way: sequence.Spiral, Turn: sequence.TurnLeft}
	told := map[string]bool{}
	for n, p := range []plan.Plan{asked, planOf(t, nothing), planOf(t, "drawdown: 1\ntitle: Title\nfasteners: [{row: {count: 3, pitch: 60, from: [0, 0], angle: 0°, id: A}}]\n")} {
		for k, paper := range sheet.Papers {
			if !testkit.Full() && (k+n)%2 > 0 {
				continue
			}
			document, _ := card.Document(p, card.BothSides, sheet.Request{Paper: paper, Words: wordstest.Marked()})
			for _, text := range scenetest.Texts(document.Pages...) {
				for _, word := range wordstest.Unmarked(text.Content, fromTheFile) {
					if !told[word] {
						t.Errorf("%s: %q has %q, which is neither from the catalogue nor from the file", paper.Name, text.Content, word)
					}
					told[word] = true
				}
			}
		}
	}
}

// Every lubricant and condition known to drawdown has a word in every language.
func TestLubricantsHaveWords(t *testing.T) {
	t.Parallel()
	for _, tag := range words.Languages() {
		checks := sheettest.Language(t, tag).Card.Checks
		for _, name := range screw.Lubricants() {
			name = strings.ReplaceAll(strings.ToLower(name), "-", " ")
			if checks.Lubricants[name] == "" && checks.States[name] == "" {
				t.Errorf("%s has no word for %s", tag, name)
			}
		}
	}
}

// Every language has words for the views of the built-in patterns.
func TestViewsHaveWords(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		view := strings.ToLower(planOf(t, name).View)
		for _, tag := range words.Languages() {
			if view != "" && sheettest.Language(t, tag).Sheet.Views[view] == "" {
				t.Errorf("%s has no words for the view %q of %s", tag, view, name)
			}
		}
	}
}

// Every language has a word for every way and turn of the pattern file.
func TestWaysHaveWords(t *testing.T) {
	t.Parallel()
	for _, tag := range words.Languages() {
		c := sheettest.Language(t, tag)
		for _, way := range sequence.Ways {
			if c.Sheet.Ways[string(way)] == "" {
				t.Errorf("%s has no word for the way %s", tag, way)
			}
		}
		for _, turn := range sequence.Turns {
			if c.Sheet.Turns[string(turn)] == "" {
				t.Errorf("%s has no word for the turn %s", tag, turn)
			}
		}
	}
}

// wholeLine reports whether a text is a full-width line of the header or
// footer. Those may be shortened.
func wholeLine(text scene.Text, paper sheet.Paper) bool {
	return text.Weight == scene.Regular && text.At.X == paper.Margin && text.Width > 0.7*paper.Content()
}

// Every built-in pattern passes the layout check on every paper, in portrait
// and landscape, in every language, and nothing is left out.
func TestLayoutsInEveryLanguage(t *testing.T) {
	t.Parallel()
	for n, name := range append(patterns.Builtin(), everyWord) {
		p := planOf(t, name)
		for _, ask := range sheettest.Requests(n) {
			what := fmt.Sprintf("%s on %s, %g wide, in %s", p.Title, ask.Paper.Name, ask.Paper.Width, ask.Words.Language)
			document, notes := card.Document(p, card.BothSides, ask)
			if len(notes) > 0 {
				t.Errorf("%s: %q", what, notes)
			}
			if document.Language != ask.Words.Language {
				t.Errorf("%s: the document is in %q", what, document.Language)
			}
			sheettest.Check(t, p.Title, ask, document.Pages)
			for _, text := range scenetest.Texts(document.Pages...) {
				// The footer of everyWord has more grounds than fit.
				if strings.HasSuffix(text.Content, "…") && (name != everyWord || !wholeLine(text, ask.Paper)) {
					t.Errorf("%s: %q is cut off", what, text.Content)
				}
			}
		}
	}
}
