package sheet

import (
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// Style is how lines of type are set below one another.
type Style struct {
	Em, Step float64 // of the type, and between baselines
	Weight   scene.Weight
	Ink      scene.Ink
}

// Running text, and what is set beside it.
var (
	Plain = Style{TextEm, Line, scene.Regular, scene.Black}
	Bold  = Style{TextEm, Line, scene.Bold, scene.Black}
	Grey  = Style{TextEm, Line, scene.Regular, scene.Grey}
)

// Lines breaks a text to a width.
func (s Style) Lines(text string, width float64) []string {
	return font.Break(text, s.Weight, s.Em, width)
}

// Set sets lines from a baseline on and gives the baseline of the next.
func (s Style) Set(p *Pen, x, y float64, lines []string) float64 {
	for _, words := range lines {
		p.Write(x, y, s.Em, s.Weight, scene.Start, s.Ink, words)
		y += s.Step
	}
	return y
}

// AtMost keeps the first lines and ends the last with an ellipsis where some
// are cut off.
func AtMost(lines []string, most int, w scene.Weight, em, width float64) []string {
	if len(lines) <= most {
		return lines
	}
	rest := strings.Join(lines[most-1:], " ")
	return append(lines[:most-1:most-1], font.Fit(rest, w, em, width))
}

// BreakText breaks a text into lines of running text.
func BreakText(words string, width float64) []string { return Plain.Lines(words, width) }

// Broken is a run of texts, each broken into lines of running text.
type Broken [][]string

// BreakAll breaks texts to a width.
func BreakAll(texts []string, width float64) Broken {
	var b Broken
	for _, t := range texts {
		b = append(b, BreakText(t, width))
	}
	return b
}

// Most is the number of lines of the longest text, at least 1.
func (b Broken) Most() int {
	most := 1
	for _, lines := range b {
		most = max(most, len(lines))
	}
	return most
}

// Height is the height of the texts with a little air between them.
func (b Broken) Height() float64 {
	h := 0.0
	for _, lines := range b {
		h += float64(len(lines))*Line + 1
	}
	return h
}
