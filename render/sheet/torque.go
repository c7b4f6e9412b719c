package sheet

import (
	"fmt"
	"strconv"

	"drawdown/geometry/unit"
	"drawdown/render/words"
)

// TorqueSpan gives the range of torques for a wrench: once if both are equal,
// with one unit if they share it.
func TorqueSpan(w *words.Catalogue, low, high unit.GivenTorque) string {
	switch {
	case low == high:
		return w.Figure(low.String())
	case low.Unit == high.Unit:
		return w.Figure(strconv.FormatFloat(low.Value, 'f', -1, 64) + "–" + high.String())
	}
	return fmt.Sprintf(w.Card.Checks.Span, w.Figure(low.String()), w.Figure(high.String()))
}
