package sheet

import "drawdown/render/scene"

// Type is the scale of type on a paper: ems and the distance between the
// baselines of running text, in millimetres.
type Type struct {
	TitleEm, HeadEm, TextEm float64
	Line                    float64
}

var (
	wallType = Type{8.0, 4.6, 3.5, 4.6} // capitals of running text are 2.53 mm high
	handType = Type{8.0, 4.2, 3.0, 4.0} // 2.17 mm, for paper held in the hand
)

// typeOn is the scale of type for a size of paper.
func typeOn(width, height float64) Type {
	if min(width, height) < 160 {
		return handType
	}
	return wallType
}

// Plain, Bold and Grey set running text.
func (t Type) Plain() Style { return Style{t.TextEm, t.Line, scene.Regular, scene.Black} }
func (t Type) Bold() Style  { return Style{t.TextEm, t.Line, scene.Bold, scene.Black} }

// Large and Strong set what is read first, in heading size.
func (t Type) Large() Style  { return Style{t.HeadEm, t.HeadEm * 9 / 7, scene.Regular, scene.Black} }
func (t Type) Strong() Style { return Style{t.HeadEm, t.HeadEm * 9 / 7, scene.Bold, scene.Black} }

// BreakText wraps a text into lines of running text.
func (t Type) BreakText(words string, width float64) []string { return t.Plain().Lines(words, width) }

// BreakAll wraps texts to a width.
func (t Type) BreakAll(texts []string, width float64) Broken {
	var b Broken
	for _, words := range texts {
		b = append(b, t.BreakText(words, width))
	}
	return b
}
