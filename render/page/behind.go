package page

import (
	"fmt"
	"slices"

	"drawdown/sequence/run"
)

// behind returns the first open trouble of a fastener that is not finished in a
// stage before that of a step, or false.
func (v RunView) behind(s run.Step) (run.TroubleSeen, bool) {
	for _, t := range v.Run.Troubles {
		at := v.step(t.Step)
		if t.Settled == nil && at != nil && at.Stage < s.Stage && !over(*at) {
			return t, true
		}
	}
	return run.TroubleSeen{}, false
}

// toAskBehind returns a trouble that a step leaves behind, if nobody has
// decided yet whether the others continue. The answer is a note on its report.
func (v RunView) toAskBehind(s run.Step) (run.TroubleSeen, bool) {
	t, found := v.behind(s)
	decided := slices.ContainsFunc(v.Run.Notes, func(n run.Seen) bool { return n.Of == t.Entry })
	return t, found && !decided
}

func (v RunView) behindPanel(seen run.TroubleSeen) Panel {
	t := v.Text().Run
	return Panel{Kind: AskBehind, Of: seen.Entry, Title: v.behindWords(seen), Says: t.BehindSays, Bar: Bar{Label: t.GoOn, Open: "behind"}}
}

func (v RunView) behindWords(t run.TroubleSeen) string {
	return fmt.Sprintf(v.Text().Run.Behind, v.fastener(t.IDs), v.step(t.Step).Stage)
}
