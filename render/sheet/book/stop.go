package book

import (
	"fmt"
	"strings"

	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// Before a step whose figures have to be written in from the manual, the book
// says STOP.

func lookedUp(t overhaul.Task, side plan.CautionSide) []string {
	if side == plan.CautionTighten {
		return t.LookUp()
	}
	return t.Manual
}

// stopWords leads to the list in which the figures of a part are written before
// it goes back; empty where it needs none.
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
