package sheet

import (
	"fmt"
	"slices"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// footLines say where the figures come from.
func (c *card) footLines() []string {
	words := "Figures: " + c.plan.Source + "."
	if c.plan.Source == "" {
		words = wordNoSource
	} else if slices.ContainsFunc(c.side.Stages, func(s plan.Stage) bool { return s.WorkedOut }) {
		words += " " + wordWorkedOutAll
	}
	lines := font.Break(words+" "+wordManualFirst, scene.Regular, textEm, c.paper.content())
	if c.loosening {
		return lines
	}
	for _, a := range c.plan.Assumptions {
		lines = append(lines, font.Break("≈ "+a, scene.Regular, textEm, c.paper.content())...)
	}
	return atMost(lines, 7, scene.Regular, textEm, c.paper.content())
}

const signHeight = 9.0

// footHeight is the height of the foot with its rule.
func (c *card) footHeight() float64 {
	return 3 + float64(len(c.footLines()))*line + float64(c.signRows())*signHeight + 2
}

// signRows is one row of places to sign, or two on narrow paper.
func (c *card) signRows() int {
	if c.paper.narrow() {
		return 2
	}
	return 1
}

// foot draws the source of the figures, the places to sign and the page count
// at the bottom of the page.
func (c *card) foot(p *pen, page, pages int) {
	y := p.paper.Height - p.paper.Margin - c.footHeight()
	p.rule(p.left(), y, p.right(), y, 0.3)
	at := y + 4.4
	for _, words := range c.footLines() {
		p.write(p.left(), at, textEm, scene.Regular, scene.Start, scene.Grey, words)
		at += line
	}
	if page == pages {
		c.sign(p, at+4)
	} else {
		p.write(p.left(), at+4, textEm, scene.Regular, scene.Start, scene.Grey, fmt.Sprintf("Sign on page %d.", pages))
	}
	count := fmt.Sprintf("%d / %d", page, pages)
	p.write(p.right(), p.paper.Height-p.paper.Margin-1, textEm, scene.Regular, scene.End, scene.Grey, count)
}

// sign draws a labelled line for each signature, above the page count.
func (c *card) sign(p *pen, y float64) {
	rows := c.signRows()
	inRow := len(signatures) / rows
	width := (p.paper.content() - 12) / float64(inRow)
	for k, words := range signatures {
		x, at := p.left()+width*float64(k%inRow), y+signHeight*float64(k/inRow)
		p.text(x, at, words)
		from := x + font.Width(words, scene.Regular, textEm) + 1.5
		p.rule(from, at+0.6, x+width-3, at+0.6, 0.25)
	}
}
