package forecast

import (
	"fmt"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction/prediction"
)

const (
	smallWidth  = 84.0 // of a picture of a pass, at the least; on narrow paper there are two
	smallHeight = 52.0
	smallGap    = 4.0

	eachPassHead = 10.0
)

func (l *layout) eachPass(run *sheet.Run, passes []prediction.ForecastPass) {
	if len(passes) == 0 {
		return
	}
	room := run.Pen.Paper.Content()
	across := min(max(2, int((room+smallGap)/(smallWidth+smallGap))), len(passes))
	width := (room - smallGap*float64(across-1)) / float64(across)
	height := l.rowHeight(passes, width)
	run.Room(eachPassHead + height + 6) // the heading never stands alone
	run.Y += 2
	run.Pen.Head(run.Pen.Left(), run.Y+5, l.ask.Words.Forecast.EachPass)
	run.Y += eachPassHead - 2
	for k, pass := range passes {
		if k%across == 0 {
			run.Room(height + 6)
		}
		x := run.Pen.Left() + float64(k%across)*(width+smallGap)
		l.small(run.Pen, pass, scene.Box{Left: x, Top: run.Y + 6, Right: x + width, Bottom: run.Y + 4 + height})
		if k%across == across-1 || k == len(passes)-1 {
			run.Y += height + 6
		}
	}
}

// rowHeight is the height of a row of pictures: no more than the part takes up.
func (l *layout) rowHeight(passes []prediction.ForecastPass, width float64) float64 {
	box := scene.Box{Right: width, Bottom: smallHeight - 2}
	idle := box.Height()
	led := make([]bool, len(passes))
	for k, pass := range passes {
		drawn := l.smallDrawing(pass, box)
		idle, led[k] = min(idle, slack(drawn.Items, box)-1), drawn.Led
	}
	less := box
	less.Bottom -= max(0, idle)
	for k, pass := range passes { // the figures must still fit into their marks
		if l.smallDrawing(pass, less).Led != led[k] {
			return smallHeight
		}
	}
	return less.Height() + 2
}

func (l *layout) small(p *sheet.Pen, pass prediction.ForecastPass, box scene.Box) {
	title := fmt.Sprintf(l.ask.Words.Forecast.Pass, pass.Number, l.passWords(pass))
	p.Write(box.Left, box.Top-2, p.Paper.TextEm, scene.Bold, scene.Start, scene.Black, font.Fit(title, scene.Bold, p.Paper.TextEm, box.Right-box.Left))
	items := l.smallDrawing(pass, box).Items
	if pass.Number == len(l.f.Passes) { // on the way nothing is low yet
		items = diagram.Relook(items, l.lowLooks(pass))
	}
	// The same bolts stand on the page again and again.
	p.Add(scene.Renamed(items, " after pass "+strconv.Itoa(pass.Number))...)
}

func (l *layout) smallDrawing(pass prediction.ForecastPass, box scene.Box) diagram.Drawing {
	return diagram.Draw(diagram.Part{Plan: l.plan.Bare(), Show: diagram.Words, Words: leastWords(pass.Turned, pass.Percent), Box: box, Thick: noticeable(pass.Turned, pass.Percent)})
}
