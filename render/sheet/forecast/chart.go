package forecast

import (
	"fmt"
	"math"
	"strconv"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/prediction"
)

const (
	chartHeight = 18.0 // of the bars
	chartHead   = 7.0
	chartFoot   = 6.0 // the bolts' names
	scaleWidth  = 11.0
	barWidth    = 3.2 // greatest width
	fullPercent = 110.0
)

// charts draws a bar for each bolt after each pass, from the least to the most
// over the gasket's range, with a tick at the middle.
func (l *layout) charts(run *sheet.Run) {
	says := l.ask.Words.Forecast.ChartSays
	run.Room(7 + run.Pen.Paper.BreakAll([]string{says}, run.Pen.Paper.Content()).Height(run.Pen.Paper.Line) + chartHead + chartHeight + chartFoot + 2)
	run.Pen.Head(run.Pen.Left(), run.Y+5, l.ask.Words.Forecast.Charts)
	run.Y += 7
	run.Sentence(says)
	for _, pass := range l.f.Passes {
		l.chart(run, pass, fmt.Sprintf(l.ask.Words.Forecast.Pass, pass.Number, l.passWords(pass)))
	}
	if l.f.OneMore != nil && l.f.RepeatIsFelt() {
		l.chart(run, *l.f.OneMore, l.ask.Words.Forecast.AfterOneMore)
	}
}

func (l *layout) chart(run *sheet.Run, pass prediction.ForecastPass, title string) {
	run.Room(chartHead + chartHeight + chartFoot + 2)
	p := run.Pen
	spread := fmt.Sprintf(l.ask.Words.Forecast.Spread, l.span(pass.Spread.Min), l.span(pass.Spread.Mean), l.span(pass.Spread.Max))
	p.Write(p.Left(), run.Y+4.6, run.Pen.Paper.TextEm, scene.Bold, scene.Start, scene.Black, title)
	from := p.Left() + font.Width(title, scene.Bold, run.Pen.Paper.TextEm) + 4
	p.Text(from, run.Y+4.6, font.Fit(spread, scene.Regular, run.Pen.Paper.TextEm, p.Right()-from))
	l.bars(p, pass, run.Y+chartHead)
	run.Y += chartHead + chartHeight + chartFoot + 2
}

func (l *layout) bars(p *sheet.Pen, pass prediction.ForecastPass, y float64) {
	top := fullPercent
	for _, b := range pass.Percent {
		top = math.Max(top, b.High+4)
	}
	at := func(percent float64) float64 { return y + chartHeight*(1-percent/top) }
	left := p.Left() + scaleWidth
	for _, percent := range []float64{0, 50, 100} {
		width := 0.15
		if percent == 100 {
			width = 0.4
		}
		p.Rule(left, at(percent), p.Right(), at(percent), width)
		p.Write(left-1.5, at(percent)+1.1, p.Paper.TextEm, scene.Regular, scene.End, scene.Black, strconv.Itoa(int(percent)))
	}
	order := l.plan.Tighten.Order
	pitch := (p.Right() - left) / float64(len(order))
	every := nameEvery(p.Paper.Type, l.names, pitch)
	for k, i := range order {
		x := left + pitch*(float64(k)+0.5)
		if k%every == 0 {
			p.Write(x, y+chartHeight+4.2, p.Paper.TextEm, scene.Regular, scene.Middle, scene.Black, l.names[i])
		}
		if pass.Turned[i] {
			bar(p, x, math.Min(barWidth, pitch*0.7), pass.Percent[i], at)
		}
	}
}

// nameEvery skips names under a chart until they do not touch.
func nameEvery(y sheet.Type, names []string, pitch float64) int {
	wide := 0.0
	for _, name := range names {
		wide = max(wide, font.Width(name, scene.Regular, y.TextEm)+1.2)
	}
	for _, every := range []int{1, 2, 5, 10, 20, 50} {
		if pitch*float64(every) >= wide {
			return every
		}
	}
	return 100
}

// bar is one bolt: filled up to the least preload, outlined from there to the
// most, with a tick at the middle.
func bar(p *sheet.Pen, x, width float64, b bounds.Band, at func(float64) float64) {
	low, nominal, high, ground := at(b.Low), at(b.Nominal), at(b.High), at(0)
	p.Panel(x-width/2, low, width, ground-low, 0, scene.Accent, 0)
	if low-high > 0.1 {
		p.Panel(x-width/2, high, width, low-high, 0, scene.White, 0.25)
	}
	p.Rule(x-width/2-0.4, nominal, x+width/2+0.4, nominal, 0.5)
}

// passWords describes a pass: 20 N·m main, +90° main, 70 %.
func (l *layout) passWords(pass prediction.ForecastPass) string {
	return l.ask.Words.Say(pass.Does(l.plan))
}
