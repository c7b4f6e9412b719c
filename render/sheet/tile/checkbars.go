package tile

import (
	"fmt"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// frame is what surrounds the window in which a sheet shows its part of the
// drawing. It is the same on every sheet, so that the windows join.
type frame struct {
	ask      Sheets
	left     float64 // left edge of the foot
	subtitle []string
	window   scene.Box // on the page
	// legend is wrapped to the width beside the key plan. leftOut are the last
	// lines, about sheets that are left out; space for them is reserved.
	legend, leftOut []string
}

const (
	titleStrip = 10.0 // title, and name of the sheet
	labelWidth = 24.0 // of that name
	gap        = 6.0  // around the window: crop marks, and names of the adjacent sheets
	barGap     = 9.0  // at the left, with the vertical check bar
	barStrip   = 10.0 // with the horizontal check bar
	keyWidth   = 25.0
	keyHeight  = 21.0
	countLine  = 4.5 // kept free for the page count
	mostLegend = 6   // lines, except on narrow paper

	// BarMm is the length of the check bars.
	BarMm = 100.0
)

func newFrame(ask Sheets, joined bool) frame {
	p := ask.Paper
	f := frame{ask: ask, left: p.Margin}
	if p.Low() { // the vertical check bar is higher than the window
		f.left += barGap
	}
	width := p.Width - p.Margin - f.left - keyWidth - 3
	broken := func(words string) []string { return p.BreakText(words, width) }
	for _, words := range ask.Legend {
		f.legend = append(f.legend, broken(words)...)
	}
	most := mostLegend
	if p.Narrow() {
		most += 3
	}
	f.legend = sheet.AtMost(f.legend, most, scene.Regular, p.TextEm, width)
	if joined {
		f.legend = append(f.legend, broken(ask.Words.Tile.Join)...)
		f.leftOut = broken(ask.Words.Tile.LeftOut)
	}
	room := p.Content() - labelWidth - 3
	f.subtitle = sheet.AtMost(p.BreakText(ask.Subtitle, room), 2, scene.Regular, p.TextEm, room)
	foot := max(barStrip+float64(len(f.legend)+len(f.leftOut))*p.Line, keyHeight+countLine+1)
	f.window = scene.Box{
		Left: p.Margin + barGap, Right: p.Width - p.Margin - gap,
		Top: p.Margin + titleStrip + p.Line*float64(len(f.subtitle)-1) + gap, Bottom: p.Height - p.Margin - gap - foot,
	}
	return f
}

func (f frame) draw(p *sheet.Pen, label string, leftOut bool) {
	right := p.Right()
	if label != "" {
		p.Panel(right-labelWidth, p.Paper.Margin, labelWidth, titleStrip, 0, scene.Black, 0)
		p.Write(right-labelWidth/2, p.Paper.Margin+7.2, 6, scene.Bold, scene.Middle, scene.White, label)
		right -= labelWidth + 3
	}
	room := right - p.Left()
	p.Write(p.Left(), p.Paper.Margin+4, p.Paper.HeadEm, scene.Bold, scene.Start, scene.Black, font.Fit(f.ask.Title, scene.Bold, p.Paper.HeadEm, room))
	p.Paper.Plain().Set(p, p.Left(), p.Paper.Margin+8.8, f.subtitle)
	f.foot(p, leftOut)
}

func (f frame) foot(p *sheet.Pen, leftOut bool) {
	w, top := f.ask.Words.Tile, f.window.Bottom+gap
	words, bar := fmt.Sprintf(w.PrintFull, BarMm), fmt.Sprintf("%.0f mm", BarMm)
	if f.ask.Reduced > 1 {
		words, bar = fmt.Sprintf(w.PrintReduced, f.ask.Words.Figure(fmt.Sprintf("%.1f", f.ask.Reduced))), fmt.Sprintf(w.BarReduced, BarMm)
	}
	width := p.Right() - f.left - keyWidth - 3
	p.Write(f.left, top+2.6, p.Paper.TextEm, scene.Bold, scene.Start, scene.Black, font.Fit(words, scene.Bold, p.Paper.TextEm, width))
	f.bars(p, top+6, bar, width)
	lines := f.legend
	if leftOut {
		lines = append(lines[:len(lines):len(lines)], f.leftOut...)
	}
	p.Lines(f.left, top+barStrip+2.6, lines)
}

func (f frame) bars(p *sheet.Pen, y float64, words string, width float64) {
	length := BarMm / f.ask.Reduced
	p.Add(Bar(f.left, y, 1, 0, length))
	if length+font.Width(words, scene.Regular, p.Paper.TextEm)+2 < width {
		p.Text(f.left+length+2, y+1.1, words)
	}
	foot := f.window.Bottom - 1
	if p.Paper.Low() {
		foot = p.Paper.Height - p.Paper.Margin - 1
	}
	p.Add(Bar(p.Left(), foot, 0, -1, length))
	upright := font.Set(scene.Text{At: scene.Point{X: p.Left() + 4.6}, Size: p.Paper.TextEm, Anchor: scene.Middle, Ink: scene.Black, Upward: true, Content: words})
	upright.At.Y = scene.Rounded(foot - max(length, upright.Width)/2)
	p.Add(upright)
}

// Bar is a scale from a point in a direction. Its end ticks are longer and to
// the right of that direction.
func Bar(x, y, dx, dy, length float64) scene.Shape {
	var path scene.Path
	path.Stroke(x, y, x+dx*length, y+dy*length)
	for k := range 11 {
		tick := 1.0
		if k%5 == 0 {
			tick = 2
		}
		along := length * float64(k) / 10
		path.Stroke(x+dx*along, y+dy*along, x+dx*along-dy*tick, y+dy*along+dx*tick)
	}
	return scene.Shape{Path: path, Stroke: scene.Black, Width: 0.25}
}
