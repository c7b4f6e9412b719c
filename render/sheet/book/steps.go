package book

import (
	"fmt"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// steps returns the steps of a task, one action each, since a step has one
// tick. New parts are fetched before the part goes back. A caution is a single
// text without a tick.
func (b *binder) steps(t overhaul.Task, side plan.CautionSide) []string {
	switch {
	case t.Warns:
		return []string{fmt.Sprintf(b.w.Warning, t.Note)}
	case t.Note != "":
		return actions(t.Note)
	}
	var steps []string
	if side == plan.CautionTighten && len(t.New) > 0 {
		steps = append(steps, fmt.Sprintf(b.w.FitNew, strings.Join(t.New, ", ")))
	}
	manual := ""
	if side == plan.CautionLoosen {
		manual = b.byTheManual(t.Manual)
	}
	how, rest, _ := strings.Cut(t.Remark(side), separator)
	first := b.ask.Words.With(b.does(t, side), strings.TrimSpace(how))
	return append(append(steps, b.ask.Words.With(first, manual)), actions(rest)...)
}

// does describes the action on a joint or a part.
func (b *binder) does(t overhaul.Task, side plan.CautionSide) string {
	joint, part := b.w.Loosen, b.w.Part
	if side == plan.CautionTighten {
		joint, part = b.w.Tighten, b.w.PartBack
	}
	if t.Joint != nil {
		return fmt.Sprintf(joint, b.number(t.Joint), t.Joint.Title)
	}
	return fmt.Sprintf(part, t.Part)
}

// separator separates actions in a machine file.
const separator = ";"

// actions splits a text into consecutive actions.
func actions(text string) []string {
	var all []string
	for one := range strings.SplitSeq(text, separator) {
		if one = strings.TrimSpace(one); one != "" {
			all = append(all, words.Capital(one))
		}
	}
	return all
}
