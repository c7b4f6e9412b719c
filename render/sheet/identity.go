package sheet

import (
	"fmt"

	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Identity tells an old print of a plan from a new one, and how the part is
// seen.
func Identity(p plan.Plan, w *words.Catalogue) string {
	parts := []string{fmt.Sprintf(w.Sheet.Card, p.Fingerprint)}
	if p.Revision != "" {
		parts = append(parts, fmt.Sprintf(w.Sheet.Revision, p.Revision))
	}
	parts = append(parts, p.Date)
	if p.View != "" {
		parts = append(parts, fmt.Sprintf(w.Sheet.Seen, w.View(p.View)))
	}
	if p.Mirrored {
		parts = append(parts, w.Sheet.Mirrored)
	}
	if p.Asked != (plan.Asked{}) {
		asked := words.Text(w.Sheet.Ways[string(p.Asked.Way)], w.Sheet.Turns[string(p.Asked.Turn)])
		parts = append(parts, fmt.Sprintf(w.Sheet.Asked, asked))
	}
	return words.Row(parts...)
}
