package handout

import (
	"fmt"
	"strconv"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/exercise"
)

// Summary lays out the results of a class: how many are right, what was missed
// most, and a line per answer.
func Summary(graded []Graded, ask Request) scene.Document {
	w := ask.Words.Handout.Graded
	doc := scene.Document{Title: w.Summary, Language: ask.Words.Language}
	if len(graded) == 0 {
		return doc
	}
	first := graded[0].Sheet
	heading := sheet.Heading{Title: first.Plan.Title, Badge: w.Summary, Subtitle: first.Plan.Machine, Identity: first.identity(ask.Words)}
	if first.Of > 1 {
		heading.Title = first.Plan.Machine
		heading.Subtitle, heading.Identity = "", fmt.Sprintf(ask.Words.Handout.Seed, first.Seed)
	}
	s := summary{Request: ask, graded: graded, Run: sheet.NewRun(ask.Paper, ask.Words, heading, ask.Foot())}
	for _, g := range graded {
		s.grades = append(s.grades, g.Grade)
	}
	s.count()
	s.most()
	s.table()
	doc.Pages = s.Pages("1")
	sheet.Count(doc.Pages)
	return doc
}

type summary struct {
	Request
	*sheet.Run
	graded []Graded
	grades []exercise.Grade
}

func (s *summary) text(em, step float64, weight scene.Weight, content string) {
	how := sheet.Style{Em: em, Step: step, Weight: weight, Ink: scene.Black}
	for _, line := range how.Lines(content, s.Paper.Content()) {
		s.Room(step)
		s.Y = how.Set(s.Pen, s.Pen.Left(), s.Y+em, []string{line}) - em
	}
}

func (s *summary) count() {
	w, count := s.Words.Handout.Graded, exercise.Count(s.grades)
	texts := []string{fmt.Sprintf(w.Count, exercise.Given(s.grades), count[exercise.Right], count[exercise.Remarks], count[exercise.Wrong], count[exercise.NotWhole])}
	for _, outcome := range []exercise.Outcome{exercise.NoAnswer, exercise.Unread} {
		if n := count[outcome]; n > 0 {
			texts = append(texts, fmt.Sprintf(s.Words.Sheet.Named, w.Outcomes[string(outcome)], strconv.Itoa(n)))
		}
	}
	s.text(s.Paper.HeadEm, 5.6, scene.Regular, words.Row(texts...))
	s.Y += 2
}

func (s *summary) most() {
	missed := exercise.MissedMost(s.grades)
	if len(missed) == 0 {
		return
	}
	w := s.Words.Handout.Graded
	s.text(s.Paper.HeadEm, 6, scene.Bold, w.Most)
	for _, m := range missed {
		s.text(s.Paper.TextEm, s.Paper.Line+0.5, scene.Regular, fmt.Sprintf(w.Times, m.Answers, w.Names[string(m.Rule)], exercise.Given(s.grades)))
	}
	s.Y += 3
}

const tableRow = 6.4

func (s *summary) table() {
	w := s.Words.Handout.Graded
	head := []string{w.Student, w.Sheet, w.Verdict, w.What}
	s.Room(2 * tableRow)
	s.row(s.Paper.Bold(), head)
	for _, g := range s.graded {
		number, what := strconv.Itoa(max(1, g.Sheet.Number)), s.rules(g)
		if g.Outcome == exercise.Unread { // what the row says about its sheet may be wrong too
			number, what = "–", fmt.Sprintf(w.AtLine, g.Line)
		}
		cells := []string{g.Student, number, w.Outcomes[string(g.Outcome)], what}
		if s.Bottom-s.Y < s.rowHeight(s.broken(s.Paper.Plain(), cells)) {
			s.Turn()
			s.row(s.Paper.Bold(), head)
		}
		s.row(s.Paper.Plain(), cells)
	}
}

func (s *summary) rules(g Graded) string {
	var names []string
	for _, rule := range g.Broken() {
		names = append(names, s.Words.Handout.Graded.Names[string(rule)])
	}
	return strings.Join(names, ", ")
}

// columnShares are the shares of the width for the columns.
var columnShares = [4]float64{0.28, 0.08, 0.24, 0.40}

func (s *summary) row(how sheet.Style, cells []string) {
	p, x, rule := s.Pen, s.Pen.Left(), 0.2
	if how == s.Paper.Bold() {
		rule = 0.5
	}
	broken := s.broken(how, cells)
	for k, lines := range broken {
		how.Set(p, x, s.Y+4.4, lines)
		x += columnShares[k] * s.Paper.Content()
	}
	s.Y += s.rowHeight(broken)
	p.Rule(p.Left(), s.Y, p.Right(), s.Y, rule)
}

func (s *summary) broken(how sheet.Style, cells []string) sheet.Broken {
	var all sheet.Broken
	for k, cell := range cells {
		all = append(all, how.Lines(font.Clean(cell), columnShares[k]*s.Paper.Content()-2))
	}
	return all
}

func (s *summary) rowHeight(broken sheet.Broken) float64 {
	return tableRow + float64(broken.Most()-1)*s.Paper.Line
}
