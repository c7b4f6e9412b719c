package sheet

import (
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
)

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
func BreakText(words string, width float64) []string {
	return font.Break(words, scene.Regular, TextEm, width)
}

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

// Height is the height of the texts with a little air between them.
func (b Broken) Height() float64 {
	h := 0.0
	for _, lines := range b {
		h += float64(len(lines))*Line + 1
	}
	return h
}
