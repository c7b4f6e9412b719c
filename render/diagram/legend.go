package diagram

import (
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// Legend is the text below a drawing: the name of each kind after a sample of
// its mark, and how to read the drawing. It takes as many lines as it needs.
type Legend struct {
	Lines    int
	words    []legendWords
	em, line float64
}

// legendWords is text on one line, with or without the sample of a kind before
// it.
type legendWords struct {
	line   int // from 1
	x      float64
	words  string
	sample bool
	kind   int
}

const (
	sampleWidth = 4.8
	sampleGap   = 3.0
	leastRest   = 30.0 // width left after the samples so that the reading starts on the same line
)

// NewLegend breaks text of size em to the width between left and right, with
// line between baselines. A single kind needs no sample.
func NewLegend(kinds []string, reading string, em, line, left, right float64) Legend {
	x, row := left, 1
	l := Legend{em: em, line: line}
	if len(kinds) > 1 {
		for i, name := range kinds {
			wide := sampleWidth + font.Width(name, scene.Regular, em)
			if x > left && x+wide > right {
				x, row = left, row+1
			}
			l.words = append(l.words, legendWords{row, x, name, true, i})
			x += wide + sampleGap
		}
	}
	l.Lines = row
	rest := font.Break(reading, scene.Regular, em, right-left)
	if len(rest) == 0 {
		return l
	}
	if x > left && right-x >= leastRest {
		behind := font.Break(strings.Join(rest, " "), scene.Regular, em, right-x)
		l.words = append(l.words, legendWords{line: row, x: x, words: behind[0]})
		rest = font.Break(strings.Join(behind[1:], " "), scene.Regular, em, right-left)
		row++
	} else if x > left {
		row++
	}
	for _, words := range rest {
		l.words = append(l.words, legendWords{line: row, x: left, words: words})
		row++
	}
	l.Lines = row - 1
	return l
}

// Items returns the legend with the baseline of its first line at y.
func (l Legend) Items(y float64) []scene.Item {
	var items []scene.Item
	for _, w := range l.words {
		at := scene.Point{X: w.x, Y: y + float64(w.line-1)*l.line}
		if w.sample {
			items = append(items, Sample(w.kind, scene.Point{X: at.X + 2, Y: at.Y - 1.1}, 1.4))
			at.X += sampleWidth
		}
		items = append(items, font.Set(scene.Text{At: at, Size: l.em, Ink: scene.Black, Content: w.words}))
	}
	return items
}

// captionAir is the gap between a drawing and its caption, in millimetres.
const captionAir = 2.0

// Below returns the legend directly below a drawing, with its last line no
// lower than lowest.
func (l Legend) Below(d Drawing, lowest float64) []scene.Item {
	return l.Items(min(scene.Bounds(d.Items).Bottom+captionAir+l.line, lowest-float64(l.Lines-1)*l.line))
}

// KindNames lists the kinds of a plan in the order of their mark shapes.
func (r Part) KindNames() []string {
	var names []string
	for _, k := range r.Plan.Kinds {
		names = append(names, k.Name)
	}
	return names
}
