package diagram

import (
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// Legend is the words under a drawing: each kind behind a sample of its mark,
// and how to read the drawing, in as many lines as that takes.
type Legend struct {
	Lines int
	words []legendWords
}

// legendWords are words in one line; some stand behind the sample of a kind.
type legendWords struct {
	line   int // from 1
	x      float64
	words  string
	sample bool
	kind   int
}

const (
	legendLine  = 4.0 // between baselines, in millimetres
	sampleWidth = 4.4
	sampleGap   = 3.0
	leastRest   = 30.0 // of a line behind the samples, for the reading to begin there
)

// NewLegend breaks the words to the width between left and right. A single kind
// needs no sample.
func NewLegend(kinds []string, reading string, left, right float64) Legend {
	x, line := left, 1
	var l Legend
	if len(kinds) > 1 {
		for i, name := range kinds {
			wide := sampleWidth + font.Width(name, scene.Regular, SmallEm)
			if x > left && x+wide > right {
				x, line = left, line+1
			}
			l.words = append(l.words, legendWords{line, x, name, true, i})
			x += wide + sampleGap
		}
	}
	l.Lines = line
	rest := font.Break(reading, scene.Regular, SmallEm, right-left)
	if len(rest) == 0 {
		return l
	}
	if x > left && right-x >= leastRest {
		behind := font.Break(strings.Join(rest, " "), scene.Regular, SmallEm, right-x)
		l.words = append(l.words, legendWords{line: line, x: x, words: behind[0]})
		rest = font.Break(strings.Join(behind[1:], " "), scene.Regular, SmallEm, right-left)
		line++
	} else if x > left {
		line++
	}
	for _, words := range rest {
		l.words = append(l.words, legendWords{line: line, x: left, words: words})
		line++
	}
	l.Lines = line - 1
	return l
}

// Items gives the legend with the baseline of its first line at y.
func (l Legend) Items(y float64) []scene.Item {
	var items []scene.Item
	for _, w := range l.words {
		at := scene.Point{X: w.x, Y: y + float64(w.line-1)*legendLine}
		if w.sample {
			items = append(items, Sample(w.kind, scene.Point{X: at.X + 1.6, Y: at.Y - 1.1}, 1.4))
			at.X += sampleWidth
		}
		items = append(items, font.Set(scene.Text{At: at, Size: SmallEm, Ink: scene.Black, Content: w.words}))
	}
	return items
}

// KindNames lists the kinds of a plan, in the order of their marks' shapes.
func (r Part) KindNames() []string {
	var names []string
	for _, k := range r.Plan.Kinds {
		names = append(names, k.Name)
	}
	return names
}
