package handout

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// Summary lays out what a class has come to: how many are right, what was
// missed most, and a line an answer.
func Summary(marks []Mark, ask Request) scene.Document {
	w := ask.Words.Handout.Marked
	doc := scene.Document{Title: w.Summary, Language: ask.Words.Language}
	if len(marks) == 0 {
		return doc
	}
	first := marks[0].Task
	heading := sheet.Heading{Title: first.Plan.Title, Badge: w.Summary, Subtitle: first.Plan.Machine, Identity: identity(first, ask.Words)}
	if first.Of > 1 {
		heading.Title = first.Plan.Machine
		heading.Subtitle, heading.Identity = "", fmt.Sprintf(ask.Words.Handout.Seed, first.Seed)
	}
	foot := sheet.Foot{Lines: sheet.BreakAll([]string{ask.Words.Sheet.ManualFirst}, ask.Paper.Content())[0]}
	s := summary{Request: ask, marks: marks, Run: sheet.NewRun(ask.Paper, ask.Words, heading, foot)}
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
	marks []Mark
}

func (s *summary) text(em float64, weight scene.Weight, step float64, content string) {
	for _, line := range font.Break(content, weight, em, s.Paper.Content()) {
		s.Room(step)
		s.Pen.Write(s.Pen.Left(), s.Y+em, em, weight, scene.Start, scene.Black, line)
		s.Y += step
	}
}

// count says how many answers came to which verdict.
func (s *summary) count() {
	count := map[Verdict]int{}
	for _, m := range s.marks {
		count[m.Verdict]++
	}
	w := s.Words.Handout.Marked
	text := fmt.Sprintf(w.Count, given(s.marks), count[Right], count[Remarks], count[Wrong], count[NotWhole])
	for _, verdict := range []Verdict{NoAnswer, NotMarked} {
		if n := count[verdict]; n > 0 {
			text += " · " + fmt.Sprintf(s.Words.Sheet.Named, verdictWords(w)[verdict], strconv.Itoa(n))
		}
	}
	s.text(sheet.HeadEm, scene.Regular, 5.6, text)
	s.Y += 2
}

// most lists the rules by how many answers broke them.
func (s *summary) most() {
	missed := missedMost(s.marks)
	if len(missed) == 0 {
		return
	}
	w := s.Words.Handout.Marked
	s.text(sheet.HeadEm, scene.Bold, 6, w.Most)
	for _, m := range missed {
		s.text(sheet.TextEm, scene.Regular, sheet.Line+0.5, fmt.Sprintf(w.Times, m.Answers, w.Names[m.Rule], given(s.marks)))
	}
	s.Y += 3
}

// given counts the answers that were marked.
func given(marks []Mark) int {
	n := 0
	for _, m := range marks {
		if m.Verdict.given() {
			n++
		}
	}
	return n
}

// Missed is a rule and how many answers broke it.
type Missed struct {
	Rule    string
	Answers int
}

// missedMost sorts the rules that were broken, the one missed most first.
func missedMost(marks []Mark) []Missed {
	count := map[string]int{}
	for _, m := range marks {
		for _, rule := range broken(m) {
			count[rule]++
		}
	}
	var all []Missed
	for rule, n := range count {
		all = append(all, Missed{rule, n})
	}
	slices.SortFunc(all, func(a, b Missed) int { return cmp.Or(b.Answers-a.Answers, cmp.Compare(a.Rule, b.Rule)) })
	return all
}

// broken lists the rules that an answer breaks, each once.
func broken(m Mark) []string {
	var rules []string
	for _, f := range m.Findings {
		if !slices.Contains(rules, f.Rule) {
			rules = append(rules, f.Rule)
		}
	}
	return rules
}

const tableRow = 6.4

// table has a line an answer, under a heading on every page.
func (s *summary) table() {
	w := s.Words.Handout.Marked
	s.Room(2 * tableRow)
	s.row(true, w.Student, w.Sheet, w.Verdict, w.What)
	verdicts := verdictWords(w)
	for _, m := range s.marks {
		var what []string
		for _, rule := range broken(m) {
			what = append(what, w.Names[rule])
		}
		sheetNumber := strconv.Itoa(max(1, m.Task.Number))
		if m.Verdict == NotMarked { // what the row says of its sheet may be wrong, too
			sheetNumber, what = "–", []string{fmt.Sprintf(w.AtLine, m.Line)}
		}
		cells := []string{m.Student, sheetNumber, verdicts[m.Verdict], strings.Join(what, ", ")}
		if s.Bottom-s.Y < rowHeight(s.broken(false, cells)) {
			s.Turn()
			s.row(true, w.Student, w.Sheet, w.Verdict, w.What)
		}
		s.row(false, cells...)
	}
}

// shares of the width that the columns take.
var columnShares = [4]float64{0.28, 0.08, 0.24, 0.40}

// row draws a row as high as its longest cell.
func (s *summary) row(head bool, cells ...string) {
	p, x := s.Pen, s.Pen.Left()
	broken := s.broken(head, cells)
	for k, lines := range broken {
		for n, line := range lines {
			p.Write(x, s.Y+4.4+float64(n)*sheet.Line, sheet.TextEm, weightOf(head), scene.Start, scene.Black, line)
		}
		x += columnShares[k] * s.Paper.Content()
	}
	s.Y += rowHeight(broken)
	p.Rule(p.Left(), s.Y, p.Right(), s.Y, map[bool]float64{true: 0.5, false: 0.2}[head])
}

// broken sets the cells into lines.
func (s *summary) broken(head bool, cells []string) [][]string {
	var all [][]string
	for k, cell := range cells {
		width := columnShares[k]*s.Paper.Content() - 2
		all = append(all, font.Break(font.Clean(cell), weightOf(head), sheet.TextEm, width))
	}
	return all
}

func rowHeight(broken [][]string) float64 {
	most := 1
	for _, lines := range broken {
		most = max(most, len(lines))
	}
	return tableRow + float64(most-1)*sheet.Line
}

func weightOf(head bool) scene.Weight {
	if head {
		return scene.Bold
	}
	return scene.Regular
}
