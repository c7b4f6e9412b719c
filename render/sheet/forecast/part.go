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
	captionGap = 6.0
)

// part draws the joint after a pass, with the least share of each bolt in its
// mark and its number beside it.
func (l *layout) part(run *sheet.Run, pass interaction.ForecastPass) diagram.Drawing {
	caption := font.Break(l.ask.Words.Forecast.InMark, scene.Regular, sheet.TextEm, run.Pen.Paper.Content())
	below := captionGap + float64(len(caption))*sheet.Line
	run.Room(leastPart + below)
	p, height := run.Pen, max(leastPart, (run.Bottom-run.Y)*partShare)
	d := l.drawn(p, pass.Turned, pass.Percent, scene.Box{Left: p.Left(), Top: run.Y + 2, Right: p.Right(), Bottom: run.Y + height})
	run.Y += height + captionGap - 2
	for _, words := range caption {
		p.Text(p.Left(), run.Y, words)
		run.Y += sheet.Line
	}
	return d
}

// drawn draws the part with a percentage in each mark.
func (l *layout) drawn(p *sheet.Pen, turned []bool, percent []interaction.Band, box scene.Box) diagram.Drawing {
	least, numbers := make([]string, len(percent)), make([]string, len(percent))
	for i, b := range percent {
		least[i], numbers[i] = "–", strconv.Itoa(l.numbers[i])
		if turned[i] {
			least[i] = lowSign(b) + strconv.Itoa(int(b.Low+0.5))
		}
	}
	d := diagram.Draw(diagram.Request{Plan: l.plan, Show: diagram.Words, Words: least, Beside: numbers, Front: l.ask.Words.Sheet.Front, Box: box})
	p.Add(d.Items...)
	return d
}

// lowSign marks a bolt that ends low, so that it is seen without colour.
func lowSign(b interaction.Band) string {
	switch interaction.ClassOf(b.Low) {
	case interaction.Negligible:
		return ""
	case interaction.Noticeable:
		return "↓"
	}
	return "↓↓"
}

// frame is the page of one step.
func (l *layout) frame(pass interaction.ForecastPass, frame interaction.Frame) scene.Page {
	run := sheet.NewRun(l.ask.Paper, l.ask.Words, l.heading(), l.foot())
	p, w := run.Pen, l.ask.Words.Forecast
	step := fmt.Sprintf(w.Step, pass.Number, l.passWords(pass), l.numbers[frame.Fastener], l.plan.Joint.Fasteners[frame.Fastener].ID)
	p.Write(p.Left(), run.Y+8, sheet.FigureEm, scene.Bold, scene.Start, scene.Black, font.Fit(step, scene.Bold, sheet.FigureEm, p.Paper.Content()))
	p.Text(p.Left(), run.Y+14, fmt.Sprintf(w.StepUneven, millimetres(frame.UnevenMm)))
	l.drawn(p, frame.Turned, frame.Percent, scene.Box{Left: p.Left(), Top: run.Y + 18, Right: p.Right(), Bottom: run.Bottom - 6})
	p.Text(p.Left(), run.Bottom-1, font.Fit(w.InMarkNow, scene.Regular, sheet.TextEm, p.Paper.Content()))
	return run.Pages("step")[0]
}
