package card

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

func (c *card) foot() sheet.Foot {
	w := c.words.Sheet
	sign := []string{w.DoneBy, w.WrenchNumber, w.Date, w.CheckedBy}
	if c.loosening { // nothing is measured on this side
		sign = []string{w.DoneBy, w.Date, w.CheckedBy}
	}
	return sheet.Foot{Lines: c.footLines(), Sign: sign}
}

func (c *card) footLines() []string {
	words := fmt.Sprintf(c.words.Card.Figures, c.plan.Source)
	if len(c.plan.Tighten.Stages) == 0 {
		words = "" // there are no figures to refer to
	} else if c.plan.Source == "" {
		words = c.words.Card.NoSource
	} else if slices.ContainsFunc(c.side.Stages, func(s plan.Stage) bool { return s.WorkedOut }) {
		words += " " + c.words.Card.WorkedOut
	}
	width := c.paper.Content()
	lines := c.paper.BreakText(strings.TrimSpace(words+" "+c.words.Sheet.ManualFirst), width)
	if c.loosening {
		return lines
	}
	for _, a := range c.plan.Assumptions {
		lines = append(lines, c.paper.BreakText("≈ "+c.words.Say(a)+".", width)...)
	}
	return sheet.AtMost(lines, 7, scene.Regular, c.paper.TextEm, width)
}

// heading includes the badge by which the two cards are told apart at a
// distance: solid to tighten, outlined to loosen.
func (c *card) heading() sheet.Heading {
	badge := c.words.Card.Tighten
	if c.loosening {
		badge = c.words.Card.Loosen
	}
	h := sheet.PlanHeading(c.plan, c.words, badge, c.kindLine)
	h.Solid = !c.loosening
	return h
}

// kindLine describes the fasteners of a kind: main M10×1.5 × 110 mm.
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
