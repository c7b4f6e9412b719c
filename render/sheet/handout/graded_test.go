package handout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/handout"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/exercise"
	"drawdown/sequence/judge"
)

// graded returns answers with all outcomes and all rules.
func graded(t testing.TB, w *words.Catalogue) []handout.Graded {
	t.Helper()
	var all []handout.Graded
	for k, one := range class(t, 3, 5, w) {
		order := one.Plan.IDs(one.Plan.Tighten.Order)
		g := handout.Graded{Student: fmt.Sprintf("Student %d of a class with long names", k+1), Sheet: one, Grade: exercise.Grade{Outcome: exercise.Right, Order: order}}
		switch k {
		case 1:
			g.Outcome, g.Order = exercise.NotWhole, append(order[2:], "Q9", order[3])
			g.Report.Findings = []judge.Finding{{Rule: judge.Unknown, IDs: []string{"Q9"}, Steps: []int{9}}, {Rule: judge.Twice, IDs: []string{order[3], order[3]}, Steps: []int{2, 10}}, {Rule: judge.Missing, IDs: order[:2]}}
		case 2, 3:
			g.Outcome = exercise.Wrong
			for _, rule := range rules {
				g.Report.Findings = append(g.Report.Findings, judge.Finding{
					Rule: rule, IDs: order[:4], Steps: []int{1, 2, 3, 4}, Against: order[4:], AgainstSteps: []int{5, 6, 7, 8}, Figure: 12, Allowed: 3, Of: 14,
				})
			}
		case 4:
			g.Outcome = exercise.Remarks
			g.Report.Findings = []judge.Finding{{Rule: judge.Neighbours, IDs: order[:1], Steps: []int{2}, Against: order[1:2], AgainstSteps: []int{1}, Figure: 1}}
		}
		all = append(all, g)
	}
	return all
}

// Graded sheets and summaries pass the layout check on every paper in every
// language.
func TestGradedLayouts(t *testing.T) {
	for _, paper := range sheettest.Papers() {
		for k, w := range wordstest.All() {
			ask := handout.Request{Request: sheet.Request{Paper: paper, Words: w}, Loosening: k%2 == 1}
			what := fmt.Sprintf("graded on %s %g wide, %s", paper.Name, paper.Width, w.Language)
			feedback := handout.Feedback(graded(t, w), ask)
			checkLayout(t, what, feedback)
			if len(feedback.Pages) != 3 {
				t.Errorf("%s: %d pages for 5 answers", what, len(feedback.Pages))
			}
			checkLayout(t, "summary "+what, handout.Summary(slices.Repeat(graded(t, w), 12), ask))
		}
	}
}

// rules are all rules of the judge.
var rules = []judge.Rule{judge.Unknown, judge.Twice, judge.Missing, judge.GroupOrder, judge.Together, judge.Unloaded,
	judge.Middle, judge.Outwards, judge.OneSide, judge.Neighbours, judge.Across, judge.Balance, judge.Travel}

// Every rule of the judge has its name in every language.
func TestEveryRuleHasItsName(t *testing.T) {
	for _, w := range wordstest.All() {
		for _, rule := range rules {
			if w.Handout.Graded.Names[string(rule)] == "" {
				t.Errorf("%s: the rule %q has no name", w.Language, rule)
			}
		}
		for _, family := range exercise.Families {
			if w.Handout.Families[string(family)] == "" {
				t.Errorf("%s: the family %s has no name", w.Language, family)
			}
		}
		if w.Handout.Main == w.Handout.Small {
			t.Errorf("%s: both kinds are called %s", w.Language, w.Handout.Main)
		}
	}
}

// The half page has the student's own numbers at the bolts, those to check
// again in black, and lists them.
func TestFeedbackShowsWhere(t *testing.T) {
	p := planOf(t, "p4-head")
	order := p.IDs(p.Tighten.Order)
	order[0], order[13] = order[13], order[0] // F4 first, M3 last
	order[5] = order[4]                       // M2 twice, M7 left out
	g := handout.Graded{Student: "Ana", Sheet: handout.Sheet{Plan: p}, Grade: exercise.Grade{Outcome: exercise.NotWhole, Order: order}}
	g.Report.Findings = []judge.Finding{
		{Rule: judge.Twice, IDs: []string{"M2", "M2"}, Steps: []int{5, 6}}, {Rule: judge.Missing, IDs: []string{"M7"}},
	}
	a4, _ := sheet.FindPaper("a4")
	page := handout.Feedback([]handout.Graded{g}, handout.Request{Request: sheet.Request{Paper: a4, Words: words.English()}}).Pages[0]
	at, black := map[string]string{}, map[string]bool{}
	var said []string
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Text:
			if it.Tag.Role == scene.Number {
				at[it.Tag.Name] = it.Content
			} else {
				said = append(said, it.Content)
			}
		case scene.Shape:
			if it.Tag.Role == scene.Mark && it.Fill == scene.Black {
				black[it.Tag.Name] = true
			}
		}
	}
	if at["F4"] != "1" || at["M3"] != "14" || at["M2"] != "5/6" || at["M7"] != "–" || at["M8"] != "2" {
		t.Errorf("numbers at the bolts: %v", at)
	}
	if len(black) != 2 || !black["M2"] || !black["M7"] {
		t.Errorf("in black: %v", black)
	}
	all := strings.Join(said, " ")
	for _, want := range []string{"Ana", "Incomplete order", "M2 appears twice, at steps 5 and 6", "Left out: M7"} {
		if !strings.Contains(all, want) {
			t.Errorf("the sheet does not say %q: %s", want, all)
		}
	}
}

// What does not fit on a half page is marked by dots. A raster over the head
// breaks more rules than half a page of A5 can list; in languages that need
// more lines, fewer fit.
func TestDotsStandForWhatFindsNoRoom(t *testing.T) {
	p := planOf(t, "p4-head")
	g := exercise.GradeOf(judge.ForPlan(p, judge.Tighten, strings.Fields("M1 M2 M3 M4 M5 M6 M7 M8 M9 M10 F1 F2 F3 F4")))
	ben := handout.Graded{Student: "Ben", Sheet: handout.Sheet{Plan: p}, Grade: g}
	a5, _ := sheet.FindPaper("a5")
	cut := 0
	for _, w := range wordstest.All() {
		text := said(handout.Feedback([]handout.Graded{ben, ben}, handout.Request{Request: sheet.Request{Paper: a5, Words: w}}))
		all := true
		for _, f := range g.ToMend() {
			all = all && strings.Contains(text, words.Capital(w.Say(f.Found())))
		}
		if dots := strings.Count(text, "…"); all && dots != 0 || !all && dots != 2 {
			t.Errorf("%s: all findings are there: %v, dots on %d half pages\n%s", w.Language, all, dots, text)
		}
		if !all {
			cut++
		}
	}
	if cut == 0 {
		t.Error("every half page holds all")
	}
}

// A student without an answer is in the class list and has no half page.
func TestNoAnswer(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	w := words.English()
	ask := handout.Request{Request: sheet.Request{Paper: a4, Words: w}}
	all := append(graded(t, w), handout.Graded{Student: "Absent", Sheet: graded(t, w)[0].Sheet, Grade: exercise.Grade{Outcome: exercise.NoAnswer}})
	if text := said(handout.Feedback(all, ask)); strings.Contains(text, "Absent") {
		t.Errorf("a half page without an answer: %s", text)
	}
	text := said(handout.Summary(all, ask))
	for _, want := range []string{"Answers: 5 – right: 1", "No answer: 1", "Absent 1 No answer", ": 3 of 5"} {
		if !strings.Contains(text, want) {
			t.Errorf("the summary does not say %q: %s", want, text)
		}
	}
}

// A row that cannot be read is in the list with its line number, and is not
// counted otherwise.
func TestNotMarked(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	for language, want := range map[string][]string{
		"en": {"Answers: 5 – right: 1", "Not marked: 1", "Zoe – Not marked line 12 of the table", ": 3 of 5"},
		"fr": {"Réponses\u00a0: 5 – justes\u00a0: 1", "évalué\u00a0: 1", "Zoe – Non évalué ligne 12 du tableau"},
	} {
		w, err := words.Find(language)
		if err != nil {
			t.Fatal(err)
		}
		ask := handout.Request{Request: sheet.Request{Paper: a4, Words: w}}
		all := append(graded(t, w), handout.Graded{Student: "Zoe", Sheet: graded(t, w)[0].Sheet, Grade: exercise.Grade{Outcome: exercise.Unread}, Line: 12})
		if text := said(handout.Feedback(all, ask)); strings.Contains(text, "Zoe") {
			t.Errorf("%s: a half page for a row that cannot be read: %s", language, text)
		}
		text := said(handout.Summary(all, ask))
		for _, line := range want {
			if !strings.Contains(text, line) {
				t.Errorf("%s: the summary does not say %q: %s", language, line, text)
			}
		}
	}
}

// The class list names every rule that an answer breaks, on several lines if
// necessary.
func TestSummaryCutsNothingOff(t *testing.T) {
	for _, paper := range sheettest.Papers() {
		for _, w := range wordstest.All() {
			all := graded(t, w)
			text := said(handout.Summary(all[2:3], handout.Request{Request: sheet.Request{Paper: paper, Words: w}}))
			if strings.Contains(text, "…") {
				t.Errorf("%s on %s %g wide: %s", w.Language, paper.Name, paper.Width, text)
			}
			for _, finding := range all[2].ToMend() {
				if name := w.Handout.Graded.Names[string(finding.Rule)]; strings.Count(text, name) < 2 { // missed most, and in the list
					// Wrapped only at blanks.
					t.Errorf("%s on %s %g wide: %q is not in the list: %s", w.Language, paper.Name, paper.Width, name, text)
				}
			}
		}
	}
}

// The summary counts answers, not findings, and has a line per answer.
func TestSummaryCounts(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	w := words.English()
	doc := handout.Summary(graded(t, w), handout.Request{Request: sheet.Request{Paper: a4, Words: w}})
	var all []string
	for _, text := range scenetest.Texts(doc.Pages[0]) {
		all = append(all, text.Content)
	}
	joined := strings.Join(all, "|")
	for _, want := range []string{
		"Answers: 5 – right: 1, right with a remark: 1, not yet right: 2, incomplete: 1",
		"neighbours in succession: 3 of 5", "left out: 3 of 5", "not started in the middle: 2 of 5",
	} {
		if !strings.Contains(joined, want) {
			t.Errorf("the summary does not say %q: %s", want, joined)
		}
	}
	if got := strings.Count(joined, "Student "); got != 5 {
		t.Errorf("%d lines for 5 answers", got)
	}
}
