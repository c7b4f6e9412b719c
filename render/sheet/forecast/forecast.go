// Package forecast lays out what tightening leaves in each bolt: the part with
// the least share that each bolt keeps, a chart of every pass, and what limits
// the figures. It reckons nothing; all figures come from the forecast.
package forecast

import (
	"fmt"
	"strings"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
)

// Request says how the sheet is wanted.
type Request struct {
	Paper sheet.Paper
	Words *words.Catalogue
	// Others is the plan beside other ways to do the work; nil: not shown.
	Others *interaction.Comparison
}

// layout is a forecast while it is laid out.
type layout struct {
	plan    plan.Plan
	f       interaction.Forecast
	ask     Request
	numbers []int // by fastener, in the tightening order
}

func newLayout(p plan.Plan, f interaction.Forecast, ask Request) *layout {
	return &layout{plan: p, f: f, ask: ask, numbers: p.Tighten.Numbers()}
}

// Document lays the forecast of a plan out and counts its pages.
func Document(p plan.Plan, f interaction.Forecast, ask Request) (scene.Document, []string) {
	pages, notes := Pages(p, f, ask)
	sheet.Count(pages)
	return scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language, Pages: pages}, notes
}

// Pages lays the forecast out; the pages lack their count. The notes tell what
// found no room on the paper.
func Pages(p plan.Plan, f interaction.Forecast, ask Request) ([]scene.Page, []string) {
	l := newLayout(p, f, ask)
	run := sheet.NewRun(ask.Paper, ask.Words, l.heading(), l.foot())
	l.verdict(run)
	l.doubts(run)
	drawing := l.part(run, f.Last())
	l.eachPass(run, l.f.Passes[:len(l.f.Passes)-1]) // the last is drawn large
	l.charts(run)
	l.others(run)
	return run.Pages("forecast"), l.left(drawing)
}

// ClassPages lays out what a class is shown of it: the part after each pass, and a
// chart of each. The pages lack their count.
func ClassPages(p plan.Plan, f interaction.Forecast, ask Request) []scene.Page {
	l := newLayout(p, f, ask)
	run := sheet.NewRun(ask.Paper, ask.Words, l.heading(), l.foot())
	run.Sentence(l.lowestEnds())
	run.Sentence(l.hundred())
	run.Sentence(fmt.Sprintf(ask.Words.Forecast.Foundation, l.rough(f.FoundationMPaPerMm)))
	l.eachPass(run, f.Passes)
	run.Sentence(ask.Words.Forecast.InMark)
	l.charts(run)
	return run.Pages("forecast")
}

// Frames lays out a page for every step of the work, to be shown one after the
// other: the part with what each bolt holds just after it.
func Frames(p plan.Plan, f interaction.Forecast, ask Request) []scene.Page {
	l := newLayout(p, f, ask)
	var pages []scene.Page
	for _, pass := range f.Passes {
		for _, frame := range pass.Frames {
			pages = append(pages, l.frame(pass, frame))
		}
	}
	for k := range pages {
		pages[k].Name = fmt.Sprintf("step-%03d", k+1)
	}
	sheet.Count(pages)
	return pages
}

func (l *layout) heading() sheet.Heading {
	subtitle := l.ask.Words.Forecast.WorkedOut
	if l.plan.Machine != "" {
		subtitle = l.plan.Machine + " · " + subtitle
	}
	return sheet.Heading{
		Title: l.plan.Title, Badge: l.ask.Words.Forecast.Badge,
		Subtitle: subtitle, Identity: sheet.Identity(l.plan, l.ask.Words),
	}
}

func (l *layout) foot() sheet.Foot {
	w := l.ask.Words
	return sheet.Foot{Lines: font.Break(w.Forecast.Guidance+" "+w.Sheet.ManualFirst, scene.Regular, sheet.TextEm, l.ask.Paper.Content())}
}

// verdict says in large type what the work leaves, then how it was found.
func (l *layout) verdict(run *sheet.Run) {
	w := l.ask.Words.Forecast
	p, width := run.Pen, run.Pen.Paper.Content()
	for _, words := range font.Break(l.advice(), scene.Bold, sheet.HeadEm, width) {
		p.Head(p.Left(), run.Y+5, words)
		run.Y += 6
	}
	run.Y += 1.5
	var lines []string
	if l.ask.Others != nil {
		lines = l.verdictLines(l.ask.Others.Verdict)
	}
	lines = append(lines, l.lowestEnds())
	if onAngle := l.onAngle(); l.f.Class != interaction.Negligible && len(onAngle) > 0 {
		lines = append(lines, fmt.Sprintf(w.NeverAgain, strings.Join(onAngle, ", ")))
	}
	switch more := l.f.OneMore; {
	case more != nil && l.f.Repeats == 0 && !l.f.RepeatIsFelt():
		lines = append(lines, w.NotFelt)
	case more != nil:
		lines = append(lines, fmt.Sprintf(w.OneMore, l.span(more.Spread.Min)))
	}
	worst := l.f.Passes[l.f.WorstPass()]
	lines = append(lines, fmt.Sprintf(w.Uneven, worst.Number, l.millimetres(worst.UnevenMm)))
	lines = append(lines, fmt.Sprintf(w.Foundation, l.rough(l.f.FoundationMPaPerMm)))
	for _, line := range append(append(lines, l.hundred()), l.basis()...) {
		run.Sentence(line)
	}
}

// lowestEnds says where the lowest bolt ends, and who takes its load.
func (l *layout) lowestEnds() string {
	w := l.ask.Words.Forecast
	words := fmt.Sprintf(w.LowestEnds, l.span(l.f.Last().Spread.Min))
	if t := l.f.Taken; t != nil && l.f.Class != interaction.Negligible {
		words += " " + fmt.Sprintf(w.Taken, l.figure("%.0f", t.Points), l.named(t.By))
	}
	return words
}

// onAngle lists the kinds that an angle ends.
func (l *layout) onAngle() (kinds []string) {
	for _, h := range l.f.Hundreds {
		if h.By == interaction.ByMeanAtAngle {
			kinds = append(kinds, h.Kind)
		}
	}
	return kinds
}

// named is a bolt by its number in the order and its id.
func (l *layout) named(fastener int) string {
	return fmt.Sprintf("%d (%s)", l.numbers[fastener], l.plan.Joint.Fasteners[fastener].ID)
}

func (l *layout) advice() string {
	w := l.ask.Words.Forecast
	switch l.f.Class {
	case interaction.Negligible:
		return w.Negligible
	case interaction.Noticeable:
		return w.Noticeable
	}
	return w.Strong
}

// doubts say where the model does not hold.
func (l *layout) doubts(run *sheet.Run) {
	if len(l.f.Doubts) == 0 {
		return
	}
	run.Y += 2
	run.Pen.Write(run.Pen.Left(), run.Y+3, sheet.TextEm, scene.Bold, scene.Start, scene.Black, l.ask.Words.Forecast.Doubts)
	run.Y += sheet.Line
	for _, doubt := range l.f.Doubts {
		run.Sentence(l.doubt(doubt))
		run.Y++
	}
}

// left tells what found no room.
func (l *layout) left(d diagram.Drawing) []string {
	if n := len(d.Unplaced); n > 0 {
		return []string{fmt.Sprintf("forecast: %d of %d figures found no room on %s; the charts have them", n, len(l.numbers), l.ask.Paper.Name)}
	}
	return nil
}
