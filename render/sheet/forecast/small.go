package forecast

import (
	"fmt"
	"slices"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction"
)

const (
	smallWidth  = 84.0 // of a picture of a pass, at the least; on narrow paper there are two
	smallHeight = 52.0
	smallGap    = 4.0
)

// eachPass draws the part small after each of some passes, with what each bolt
// keeps at the least.
func (l *layout) eachPass(run *sheet.Run, passes []interaction.ForecastPass) {
	if len(passes) == 0 {
		return
	}
	room := run.Pen.Paper.Content()
	across := min(max(2, int((room+smallGap)/(smallWidth+smallGap))), len(passes))
	width := (room - smallGap*float64(across-1)) / float64(across)
	run.Room(8 + smallHeight + 6)
	run.Y += 2
	run.Pen.Head(run.Pen.Left(), run.Y+5, l.ask.Words.Forecast.EachPass)
	run.Y += 8
	for k, pass := range passes {
		if k%across == 0 {
			run.Room(smallHeight + 6)
		}
		x := run.Pen.Left() + float64(k%across)*(width+smallGap)
		l.small(run.Pen, pass, scene.Box{Left: x, Top: run.Y + 6, Right: x + width, Bottom: run.Y + 4 + smallHeight})
		if k%across == across-1 || k == len(passes)-1 {
			run.Y += smallHeight + 6
		}
	}
}

// small draws the part after a pass with nothing but its bolts, bores and edges.
func (l *layout) small(p *sheet.Pen, pass interaction.ForecastPass, box scene.Box) {
	plan := l.plan
	plan.Joint.Labels, plan.Joint.Stations, plan.Joint.Front = nil, nil, ""
	plan.Joint.Bores = slices.Clone(l.plan.Joint.Bores)
	for k := range plan.Joint.Bores {
		plan.Joint.Bores[k].Label = ""
	}
	title := fmt.Sprintf(l.ask.Words.Forecast.Pass, pass.Number, l.passWords(pass))
	p.Write(box.Left, box.Top-2, sheet.TextEm, scene.Bold, scene.Start, scene.Black, font.Fit(title, scene.Bold, sheet.TextEm, box.Right-box.Left))
	d := diagram.Draw(diagram.Request{Plan: plan, Show: diagram.Words, Words: leastWords(pass.Turned, pass.Percent, lowSigns(pass)), Box: box})
	for _, it := range d.Items { // the same bolts stand on the page again and again
		switch it := it.(type) {
		case scene.Shape:
			it.Tag.Name = l.again(it.Tag.Name, pass)
			p.Add(it)
		case scene.Text:
			it.Tag.Name = l.again(it.Tag.Name, pass)
			p.Add(it)
		default:
			p.Add(it)
		}
	}
}

func (l *layout) again(name string, pass interaction.ForecastPass) string {
	if name == "" {
		return ""
	}
	return name + " after pass " + strconv.Itoa(pass.Number)
}
