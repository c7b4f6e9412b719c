package sheet

import (
	"drawdown/render/font"
	"drawdown/render/scene"
)

// The three sizes of type, as ems in millimetres. Capitals of the smallest are
// 2.17 mm high: nothing on a sheet is under 2 mm.
const (
	titleEm = 8.0
	headEm  = 4.2
	textEm  = 3.0
)

// figureEm sets the figures of the stages: capitals of 5.06 mm.
const figureEm = 7.0

// line is the distance between baselines of running text: two steps of the
// 2 mm grid.
const line = 4.0

// pen draws on a page. Its methods take baselines for type and corners for
// shapes, in millimetres from the top left.
type pen struct {
	paper Paper
	items []scene.Item
}

func (p *pen) add(items ...scene.Item) { p.items = append(p.items, items...) }

// write sets a line of type.
func (p *pen) write(x, y, em float64, w scene.Weight, a scene.Anchor, ink scene.Ink, words string) {
	if words == "" {
		return
	}
	p.add(font.Set(scene.Text{At: scene.Point{X: x, Y: y}, Size: em, Weight: w, Anchor: a, Ink: ink, Content: words}))
}

// text sets a line of running text.
func (p *pen) text(x, y float64, words string) {
	p.write(x, y, textEm, scene.Regular, scene.Start, scene.Black, words)
}

// head sets a heading.
func (p *pen) head(x, y float64, words string) {
	p.write(x, y, headEm, scene.Bold, scene.Start, scene.Black, words)
}

// rule draws a straight line.
func (p *pen) rule(x1, y1, x2, y2, width float64) {
	p.add(scene.Shape{Path: scene.Polyline([]scene.Point{{X: x1, Y: y1}, {X: x2, Y: y2}}, false), Stroke: scene.Black, Width: width})
}

// panel draws a rectangle.
func (p *pen) panel(x, y, w, h, radius float64, fill scene.Ink, width float64) {
	s := scene.Shape{Path: scene.Rect(x, y, w, h, radius), Fill: fill}
	if width > 0 {
		s.Stroke, s.Width = scene.Black, width
	}
	p.add(s)
}

// tickBox draws an empty box to tick.
func (p *pen) tickBox(x, y, side float64) { p.panel(x, y, side, side, 0, scene.White, 0.3) }

func (p *pen) left() float64  { return p.paper.Margin }
func (p *pen) right() float64 { return p.paper.Width - p.paper.Margin }
