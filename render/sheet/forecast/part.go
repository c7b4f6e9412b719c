package forecast

import (
	"fmt"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction"
)

const (
	partShare  = 0.5 // of the page's free height, for the drawing
	leastPart  = 52.0
	enoughPart = 80.0 // up to which the drawing takes all that is left of a page
	captionGap = 6.0
)

// part draws the joint after a pass, with the least share of each bolt in its
// mark and its number beside it.
func (l *layout) part(run *sheet.Run, pass interaction.ForecastPass) diagram.Drawing {
	caption := font.Break(l.ask.Words.Forecast.InMark+" "+l.ask.Words.Forecast.Small, scene.Regular, sheet.TextEm, run.Pen.Paper.Content())
	below := captionGap + float64(len(caption))*sheet.Line
	run.Room(leastPart + below)
	free := run.Bottom - run.Y
	p, height := run.Pen, max(leastPart, free*partShare, min(free-below, enoughPart))
	d := l.drawn(p, pass.Turned, pass.Percent, lowSigns(pass), scene.Box{Left: p.Left(), Top: run.Y + 2, Right: p.Right(), Bottom: run.Y + height})
	run.Y += height + captionGap - 2
	for _, words := range caption {
		p.Text(p.Left(), run.Y, words)
		run.Y += sheet.Line
	}
	return d
}

// drawn draws the part with a percentage in each mark, behind a sign where one is
// given.
func (l *layout) drawn(p *sheet.Pen, turned []bool, percent []interaction.Band, signs []string, box scene.Box) diagram.Drawing {
	numbers := make([]string, len(percent))
	for i := range percent {
		numbers[i] = strconv.Itoa(l.numbers[i])
	}
	d := diagram.Draw(diagram.Request{Plan: l.plan, Show: diagram.Words, Words: leastWords(turned, percent, signs), Beside: numbers, Front: l.ask.Words.Sheet.Front, Box: box})
	p.Add(d.Items...)
	return d
}

// leastWords are the words in the marks: the least percentage, or a dash where the
// bolt is not in.
func leastWords(turned []bool, percent []interaction.Band, signs []string) []string {
	least := make([]string, len(percent))
	for i, b := range percent {
		least[i] = "–"
		if !turned[i] {
			continue
		}
		least[i] = strconv.Itoa(int(b.Low + 0.5))
		if signs != nil {
			least[i] = signs[i] + least[i]
		}
	}
	return least
}

// lowSigns mark the bolts that a pass leaves low of what it aims at, so that they
// are seen without colour.
func lowSigns(pass interaction.ForecastPass) []string {
	signs := make([]string, len(pass.Class))
	for i, class := range pass.Class {
		switch class {
		case interaction.Noticeable:
			signs[i] = "↓"
		case interaction.Strong:
			signs[i] = "↓↓"
		}
	}
	return signs
}

// frame is the page of one step.
func (l *layout) frame(pass interaction.ForecastPass, frame interaction.Frame) scene.Page {
	run := sheet.NewRun(l.ask.Paper, l.ask.Words, l.heading(), l.foot())
	p, w := run.Pen, l.ask.Words.Forecast
	step := fmt.Sprintf(w.Step, pass.Number, l.passWords(pass), l.numbers[frame.Fastener], l.plan.Joint.Fasteners[frame.Fastener].ID)
	p.Write(p.Left(), run.Y+8, sheet.FigureEm, scene.Bold, scene.Start, scene.Black, font.Fit(step, scene.Bold, sheet.FigureEm, p.Paper.Content()))
	p.Text(p.Left(), run.Y+14, fmt.Sprintf(w.StepUneven, l.millimetres(frame.UnevenMm)))
	l.drawn(p, frame.Turned, frame.Percent, nil, scene.Box{Left: p.Left(), Top: run.Y + 18, Right: p.Right(), Bottom: run.Bottom - 6})
	p.Text(p.Left(), run.Bottom-1, font.Fit(w.InMarkNow, scene.Regular, sheet.TextEm, p.Paper.Content()))
	return run.Pages("step")[0]
}
