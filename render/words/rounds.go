package words

import (
	"fmt"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Until says that a turn is repeated, and until when. A file states this in its
// own words; the usual ones are translated.
func (c *Catalogue) Until(when string) string {
	if when == "" {
		return ""
	}
	return fmt.Sprintf(c.Card.Stage.Until, c.Term(finding.Term(when)))
}

// AtOnce says how many wrenches work at once, or "" for one.
func (c *Catalogue) AtOnce(wrenches int) string {
	if wrenches < 2 {
		return ""
	}
	return fmt.Sprintf(c.Card.Stage.AtOnce, strconv.Itoa(wrenches))
}

// ByTurns says by what turns all caps are lowered before the figure, or "" if
// there is no such turn.
func (c *Catalogue) ByTurns(turn unit.Angle) string {
	if turn == 0 {
		return ""
	}
	return fmt.Sprintf(c.Card.Stage.ByTurns, c.Figure(turn.String()))
}
