package book

import (
	"fmt"
	"strings"

	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// lookedUp returns the fasteners whose figures must be filled in from the
// manual before a step. The book says STOP before such a step.

func lookedUp(t overhaul.Task, side plan.CautionSide) []string {
	if side == plan.CautionTighten {
		return t.LookUp()
	}
	return t.Manual
}

// stopWords refers to the list for the figures of a part, to fill in before it
// goes back; "" if it needs none.
func (b *binder) stopWords(t overhaul.Task, side plan.CautionSide, at found) string {
	all := lookedUp(t, side)
	if side != plan.CautionTighten || len(all) == 0 {
		return ""
	}
	return fmt.Sprintf(b.w.FiguresOnPage, at.page(0, manual), strings.Join(all, ", "))
}

func (b *binder) byTheManual(all []string) string {
	if len(all) == 0 {
		return ""
	}
	return fmt.Sprintf(b.w.ByManual, strings.Join(all, ", "))
}
