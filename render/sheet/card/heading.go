package card

import (
	"fmt"
	"strings"

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
	return sheet.Heading{
		Title: c.plan.Title, Badge: badge, Solid: !c.loosening,
		Subtitle: c.subtitle(), Identity: sheet.Identity(c.plan, c.words),
	}
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
	name := k.Name
	if k.Implied {
		name = c.words.Card.Bolt
	}
	words := fmt.Sprintf("%d × %s", c.plan.Count(k.Name), name)
	if k.Thread != nil {
		words += " " + c.words.Figure(k.Thread.Name)
	}
	if k.Length > 0 {
		words += " × " + c.words.Figure(k.Labelled(k.Length))
	}
	if k.Class != "" {
		words += ", " + k.Class
	}
	return words
}
