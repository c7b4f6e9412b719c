package sheet

import (
	"fmt"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

const (
	badgeWidth  = 38.0
	badgeHeight = 12.0
)

// header draws the title, the badge that tells the two cards apart across the
// bench (solid to tighten, outlined to loosen), and what identifies the card.
// It gives the y below its rule.
func (c *card) header(p *pen) float64 {
	top := p.paper.Margin
	room := p.paper.content() - badgeWidth - 4
	em, lines := titleEm, font.Break(c.plan.Title, scene.Bold, titleEm, room)
	if len(lines) > 2 {
		em, lines = headEm, font.Break(c.plan.Title, scene.Bold, headEm, room)
	}
	lines = atMost(lines, 3, scene.Bold, em, room)
	y := top + 7.2
	for k, words := range lines {
		if k > 0 {
			y += em * 1.1
		}
		p.write(p.left(), y, em, scene.Bold, scene.Start, scene.Black, words)
	}
	c.badge(p, top)
	y = max(y, top+badgeHeight) + 5.5
	sub := atMost(font.Break(c.subtitle(), scene.Regular, textEm, p.paper.content()), 3, scene.Regular, textEm, p.paper.content())
	for _, words := range sub {
		p.write(p.left(), y, textEm, scene.Regular, scene.Start, scene.Grey, words)
		y += line
	}
	p.write(p.left(), y, textEm, scene.Regular, scene.Start, scene.Grey, c.identity())
	y += 2
	p.rule(p.left(), y, p.right(), y, 0.6)
	return y
}

func (c *card) badge(p *pen, top float64) {
	x := p.right() - badgeWidth
	word, fill, ink := wordTighten, scene.Black, scene.White
	if c.loosening {
		word, fill, ink = wordLoosen, scene.White, scene.Black
	}
	p.panel(x+0.4, top+0.4, badgeWidth-0.8, badgeHeight-0.8, 0, fill, 0.8)
	p.write(x+badgeWidth/2, top+badgeHeight/2+1.9, 5.4, scene.Bold, scene.Middle, ink, word)
}

// subtitle names the machine and the fasteners: 10 main M10×1.5 × 110 mm.
func (c *card) subtitle() string {
	var parts []string
	if c.plan.Machine != "" {
		parts = append(parts, c.plan.Machine)
	}
	for _, k := range c.plan.Kinds {
		parts = append(parts, c.kindLine(k))
	}
	return strings.Join(parts, " · ")
}

func (c *card) kindLine(k plan.Kind) string {
	words := fmt.Sprintf("%d × %s", c.plan.Count(k.Name), k.Name)
	if k.Thread != nil {
		words += " " + k.Thread.Name
	}
	if k.Length > 0 {
		words += " × " + lengthOf(k)
	}
	if k.Class != "" {
		words += ", " + k.Class
	}
	return words
}

// lengthOf prints the length as the bolt drawer is marked: in inches for inch
// threads.
func lengthOf(k plan.Kind) string {
	if k.Thread != nil && k.Thread.Unified() {
		return k.Length.Inches()
	}
	return k.Length.String()
}

// identity tells an old print from a new one, and how the part is seen.
func (c *card) identity() string {
	parts := []string{"card " + c.plan.Fingerprint}
	if c.plan.Revision != "" {
		parts = append(parts, "rev "+c.plan.Revision)
	}
	if c.plan.Date != "" {
		parts = append(parts, c.plan.Date)
	}
	if c.plan.View != "" {
		parts = append(parts, "seen "+c.plan.View)
	}
	if c.plan.Mirrored {
		parts = append(parts, "mirror image")
	}
	if c.plan.Asked != "" {
		parts = append(parts, "order "+c.plan.Asked+", not the file’s own")
	}
	return strings.Join(parts, " · ")
}

// atMost keeps the first lines and ends the last with an ellipsis where some
// are cut off.
func atMost(lines []string, most int, w scene.Weight, em, width float64) []string {
	if len(lines) <= most {
		return lines
	}
	rest := strings.Join(lines[most-1:], " ")
	return append(lines[:most-1:most-1], font.Fit(rest, w, em, width))
}
