package sheet

import (
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
)

// The three sizes of type, as ems in millimetres. Capitals of the smallest are
// 2.17 mm high: nothing on a sheet is under 2 mm.
const (
	TitleEm = 8.0
	HeadEm  = 4.2
	TextEm  = 3.0
)

// FigureEm sets the figures of the stages: capitals of 5.06 mm.
const FigureEm = 7.0

// Line is the distance between baselines of running text: two steps of the
// 2 mm grid.
const Line = 4.0

// Pen draws on a page. Its methods take baselines for type and corners for
// shapes, in millimetres from the top left.
type Pen struct {
	Paper Paper
	Words *words.Catalogue
	Items []scene.Item
}

// Add puts items on the page as they are.
func (p *Pen) Add(items ...scene.Item) { p.Items = append(p.Items, items...) }

// Write sets a line of type.
func (p *Pen) Write(x, y, em float64, w scene.Weight, a scene.Anchor, ink scene.Ink, words string) {
	if words == "" {
		return
	}
	p.Add(font.Set(scene.Text{At: scene.Point{X: x, Y: y}, Size: em, Weight: w, Anchor: a, Ink: ink, Content: words}))
}

// Text sets a line of running text.
func (p *Pen) Text(x, y float64, words string) {
	p.Write(x, y, TextEm, scene.Regular, scene.Start, scene.Black, words)
}

// Lines sets lines of running text below one another and gives the baseline of
// the next.
func (p *Pen) Lines(x, y float64, lines []string) float64 { return Plain.Set(p, x, y, lines) }

// Head sets a heading.
func (p *Pen) Head(x, y float64, words string) {
	p.Write(x, y, HeadEm, scene.Bold, scene.Start, scene.Black, words)
}

// Rule draws a straight line.
func (p *Pen) Rule(x1, y1, x2, y2, width float64) {
	p.Add(scene.Shape{Path: scene.Polyline([]scene.Point{{X: x1, Y: y1}, {X: x2, Y: y2}}, false), Stroke: scene.Black, Width: width})
}

// Panel draws a rectangle.
func (p *Pen) Panel(x, y, w, h, radius float64, fill scene.Ink, width float64) {
	s := scene.Shape{Path: scene.Rect(x, y, w, h, radius), Fill: fill}
	if width > 0 {
		s.Stroke, s.Width = scene.Black, width
	}
	p.Add(s)
}

// TickBox draws an empty box to tick.
func (p *Pen) TickBox(x, y, side float64) { p.Panel(x, y, side, side, 0, scene.White, 0.3) }

// Left is the x of the left margin.
func (p *Pen) Left() float64 { return p.Paper.Margin }

// Right is the x of the right margin.
func (p *Pen) Right() float64 { return p.Paper.Width - p.Paper.Margin }
