package texts

import (
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// Texts that put oil into holes, and texts that want them clean and dry.
var (
	oiledHoles = expression.Lazily(`(?i)\b(?:oil|grease|flood) (?:the |all |bolt |blind |tapped |threaded )*holes\b|\bfill (?:the |all |bolt |blind |tapped |threaded )*holes with (?:\pL+ )?oil\b|\boil (?:in|into) (?:the |all |bolt |blind |tapped |threaded )*holes\b|` +
		`(?:bohrungen|löcher)\b[^.;:]*(?:\bölen|einölen|mit öl füllen)|\bhuiler les (?:trous|taraudages)|\bremplir les (?:trous|taraudages)[^.;]*huile|\baceitar los (?:agujeros|taladros)|\bllenar los (?:agujeros|taladros)[^.;]*aceite`)
	dryHoles = expression.Lazily(`(?i)\b(?:clean|dry|blow)\b[^.;]*\bholes\b|\bholes\b[^.;]*\b(?:clean|dry|free of|blown)\b|(?:bohrungen|löcher)\b[^.;:]*(?:trocken|trocknen|reinig|säuber|ausblas)|` +
		`\b(?:nettoyer|sécher|souffler)\b[^.;:]*\b(?:trous|taraudages)\b|\b(?:limpiar|secar|soplar)\b[^.;:]*\b(?:agujeros|taladros)\b`)
)

// holesDisagree finds an earlier caution that wants the holes dry where this one has oil
// put into them, and the reverse.
func holesDisagree(p plan.Plan, i int) []finding.Finding {
	c := p.Cautions[i]
	oiled, dry := oilsHoles(c.Text), driesHoles(c.Text)
	if !oiled && !dry {
		return nil
	}
	for _, other := range p.Cautions[:i] {
		together := c.Side == other.Side || c.Side == plan.CautionBoth || other.Side == plan.CautionBoth
		if together && (oiled && driesHoles(other.Text) || dry && oilsHoles(other.Text)) {
			return []finding.Finding{finding.Warned(TextsDisagree, finding.Values{"text": c.Text, "other": other.Text})}
		}
	}
	return nil
}

func oilsHoles(text string) bool {
	return oiledHoles.MatchString(text) && !denied.MatchString(text) && !strings.Contains(text, "?")
}

func driesHoles(text string) bool { return dryHoles.MatchString(text) && !oiledHoles.MatchString(text) }
