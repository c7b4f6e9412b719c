package card

import (
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

// heading has the badge that tells the two cards apart across the bench: solid
// to tighten, in outline to loosen.
func (c *card) heading() sheet.Heading {
	badge := c.words.Card.Tighten
	if c.loosening {
		badge = c.words.Card.Loosen
	}
	h := sheet.PlanHeading(c.plan, c.words, badge, c.kindLine)
	h.Solid = !c.loosening
	return h
}

// kindLine names the fasteners of a kind: main M10×1.5 × 110 mm.
func (c *card) kindLine(k plan.Kind) string {
	line := k.Name
	if k.Implied {
		line = c.words.Card.Bolt
	}
	if k.Thread != nil {
		line += " " + c.words.Figure(k.Thread.Name)
	}
	if k.Length > 0 {
		line += " × " + c.words.Figure(k.Labelled(k.Length))
	}
	if k.Class != "" {
		line += ", " + k.Class
	}
	return line
}
