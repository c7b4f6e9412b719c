package book

import (
	"fmt"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// steps says what a task comes to, one action a step, since a step has one tick.
// What is new is at hand before the part goes back. A caution is one text: it is
// not ticked.
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

// does says what is done with a joint or a part.
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

// separator stands in a machine file between one action and the next.
const separator = ";"

// actions parts a text into what is done one after the other.
func actions(text string) []string {
	var all []string
	for one := range strings.SplitSeq(text, separator) {
		if one = strings.TrimSpace(one); one != "" {
			all = append(all, words.Capital(one))
		}
	}
	return all
}
