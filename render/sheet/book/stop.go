package book

import (
	"fmt"
	"strings"

	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// A step of the book says STOP where figures of the manual have to be written in
// first.

func lookedUp(t overhaul.Task, side plan.CautionSide) []string {
	if side == plan.CautionTighten {
		return t.LookUp()
	}
	return t.Manual
}

// manualWords says that a part's fasteners are loosened by the manual, and when
// building leads to the list in which its figures are written.
func (b *binder) manualWords(t overhaul.Task, side plan.CautionSide, at found) string {
	all := lookedUp(t, side)
	if side == plan.CautionTighten && len(all) > 0 {
		return fmt.Sprintf(b.w.FiguresOnPage, at.page(0, manual), strings.Join(all, ", "))
	}
	return b.byTheManual(all)
}

func (b *binder) byTheManual(all []string) string {
	if len(all) == 0 {
		return ""
	}
	return fmt.Sprintf(b.w.ByManual, strings.Join(all, ", "))
}
