package sheet

import (
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
)

// FigureEm is the size of the figures of the stages: capitals of 5.06 mm.
const FigureEm = 7.0

// Pen draws on a page. Its methods take baselines for type and corners for
// shapes, in millimetres from the top left.
type Pen struct {
	Paper  Paper
	Words  *words.Catalogue
	Items  []scene.Item
	Photos []scene.Photo
}

// Add puts items on the page unchanged.
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
	p.Write(x, y, p.Paper.TextEm, scene.Regular, scene.Start, scene.Black, words)
}

// Lines sets lines of running text one below the other and returns the baseline
// of the next.
func (p *Pen) Lines(x, y float64, lines []string) float64 { return p.Paper.Plain().Set(p, x, y, lines) }

// Head sets a heading.
func (p *Pen) Head(x, y float64, words string) {
	p.Write(x, y, p.Paper.HeadEm, scene.Bold, scene.Start, scene.Black, words)
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

// Left and Right are the x coordinates of the margins.
func (p *Pen) Left() float64  { return p.Paper.Margin }
func (p *Pen) Right() float64 { return p.Paper.Width - p.Paper.Margin }

// Style is how consecutive lines of type are set.
type Style struct {
	Em, Step float64 // size of the type, and distance between baselines
	Weight   scene.Weight
	Ink      scene.Ink
}

// Lines wraps a text to a width.
func (s Style) Lines(text string, width float64) []string {
	return font.Break(text, s.Weight, s.Em, width)
}

// Set sets lines from a baseline on and returns the baseline of the next.
func (s Style) Set(p *Pen, x, y float64, lines []string) float64 {
	for _, words := range lines {
		p.Write(x, y, s.Em, s.Weight, scene.Start, s.Ink, words)
		y += s.Step
	}
	return y
}

// AtMost keeps the first lines and ends the last with an ellipsis if some are
// cut off.
func AtMost(lines []string, most int, w scene.Weight, em, width float64) []string {
	if len(lines) <= most {
		return lines
	}
	rest := strings.Join(lines[most-1:], " ")
	return append(lines[:most-1:most-1], font.Fit(rest, w, em, width))
}

// Broken is a list of texts, each wrapped into lines.
type Broken [][]string

// Most is the number of lines of the longest text, at least 1.
func (b Broken) Most() int {
	most := 1
	for _, lines := range b {
		most = max(most, len(lines))
	}
	return most
}

// Height is the height of the texts with a little space between them, given the
// distance of their baselines.
func (b Broken) Height(line float64) float64 {
	h := 0.0
	for _, lines := range b {
		h += float64(len(lines))*line + 1
	}
	return h
}
