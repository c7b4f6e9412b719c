package words

import (
	"fmt"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Until says that a turn is repeated, and until when: a file writes that in its
// own words, of which the usual ones are said in the language.
func (c *Catalogue) Until(when string) string {
	if when == "" {
		return ""
	}
	return fmt.Sprintf(c.Card.Stage.Until, c.Term(finding.Term(when)))
}

// ByTurns says by what turns all caps are brought down before the figure;
// nothing where there is no such turn.
func (c *Catalogue) ByTurns(turn unit.Angle) string {
	if turn == 0 {
		return ""
	}
	return fmt.Sprintf(c.Card.Stage.ByTurns, c.Figure(turn.String()))
}
