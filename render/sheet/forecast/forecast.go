// Package forecast lays out what tightening leaves in each bolt: the part with
// the least share that each bolt keeps, a chart of every pass, and the limits
// of the figures. It calculates nothing; all figures come from the forecast.
package forecast

import (
	"fmt"

	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/plan"
)

// Request describes the sheet to lay out.
type Request struct {
	sheet.Request
	Advice advice.Advice
	// Others compares the plan with other ways to do the work; nil: not shown.
	Others *ways.Comparison
}

type layout struct {
	plan  plan.Plan
	f     prediction.Forecast
	ask   Request
	names []string // of the fasteners, as written on the part
}

func newLayout(p plan.Plan, f prediction.Forecast, ask Request) *layout {
	return &layout{plan: p, f: f, ask: ask, names: p.Written()}
}

// Document lays out the forecast of a plan with page numbers.
func Document(p plan.Plan, f prediction.Forecast, ask Request) (scene.Document, []string) {
	pages, notes := Pages(p, f, ask)
	return sheet.Document(p, ask.Request, pages), notes
}

// Pages lays out the forecast. The pages do not have their count yet. The notes
// say what did not fit on the paper.
func Pages(p plan.Plan, f prediction.Forecast, ask Request) ([]scene.Page, []string) {
	l := newLayout(p, f, ask)
	run := l.run()
	l.advice(run)
	l.doubts(run)
	l.foundations(run)
	drawing := l.part(run, f.Last())
	l.targets(run)
	l.eachPass(run, l.f.Passes[:len(l.f.Passes)-1]) // the last is drawn large
	l.charts(run)
	l.others(run)
	return run.Pages("forecast"), l.left(drawing)
}

// ClassPages lays out what is shown to a class: the part after each pass, and a
// chart of each. The pages do not have their count yet.
func ClassPages(p plan.Plan, f prediction.Forecast, ask Request) []scene.Page {
	l := newLayout(p, f, ask)
	run := l.run()
	run.Sentence(l.said(f.Ends(p)))
	run.Sentence(l.hundred())
	run.Sentence(ask.Words.Say(f.FoundationTaken()))
	l.eachPass(run, f.Passes)
	run.Sentence(words.Text(ask.Words.Forecast.EachMark, l.lowSays(f.Last())))
	l.charts(run)
	return run.Pages("forecast")
}

// Frames lays out a page for every step of the work, to be shown one after the
// other: the part with the force in each bolt just after it.
func Frames(p plan.Plan, f prediction.Forecast, ask Request) []scene.Page {
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

func (l *layout) run() *sheet.Run {
	w := l.ask.Words
	foot := sheet.Foot{Lines: l.ask.Paper.BreakText(w.Forecast.Guidance+" "+w.Sheet.ManualFirst, l.ask.Paper.Content())}
	return sheet.NewRun(l.ask.Paper, w, sheet.Heading{
		Title: l.plan.Title, Badge: w.Forecast.Badge,
		Subtitle: words.Row(l.plan.Machine, w.Forecast.WorkedOut), Identity: sheet.Identity(l.plan, w),
	}, foot)
}

func (l *layout) doubts(run *sheet.Run) {
	if len(l.f.Doubts) == 0 {
		return
	}
	run.Room(3 * run.Pen.Paper.Line)
	run.Set(run.Pen.Paper.Bold(), l.ask.Words.Forecast.Doubts)
	for _, doubt := range l.ask.Words.SayAll(l.f.Doubts) {
		run.Sentence(doubt)
	}
	run.Y += paragraphGap
}

// FiguresLeft reports figures that did not fit into the marks.
const FiguresLeft finding.Code = "forecast figures left out" // n, all, paper

func (l *layout) left(d diagram.Drawing) []string {
	if n := len(d.Unplaced); n > 0 {
		return []string{l.ask.Words.Say(finding.Noted(FiguresLeft, finding.Values{"n": n, "all": len(l.names), "paper": l.ask.Paper.Name}))}
	}
	return nil
}

func (l *layout) span(b bounds.Band) string { return l.ask.Words.Value(b, ".0") }

// ends formats only the ends of a range, if the middle does not fit.
func (l *layout) ends(b bounds.Band, format string) string {
	low, high := l.figure(format, b.Low), l.figure(format, b.High)
	if low == high {
		return low
	}
	return low + "–" + high
}

func (l *layout) figure(format string, v float64) string {
	return l.ask.Words.Figure(fmt.Sprintf(format, v+0))
}
