package page

import (
	"fmt"
	"strings"

	"drawdown/sequence/run"
)

// SealLines name what must be checked before a seal: open steps, torques without a
// wrench number, and what the record asks to check.
func (v RunView) SealLines() []string {
	t := v.Text().Run
	var open, bare, lines []string
	for _, s := range v.Run.Steps {
		switch {
		case !over(s):
			open = append(open, v.stepName(s))
		case v.lacksWrench(s):
			bare = append(bare, v.stepName(s))
		}
	}
	if len(open) > 0 {
		lines = append(lines, fmt.Sprintf(t.SealOpen, strings.Join(open, ", ")))
	}
	if len(bare) > 0 {
		lines = append(lines, fmt.Sprintf(t.SealNoWrench, strings.Join(bare, ", ")))
	}
	for _, f := range v.Run.Flags {
		lines = append(lines, v.Words.Say(f.Finding))
	}
	return lines
}

func (v RunView) lacksWrench(s run.Step) bool {
	return s.State == run.IsDone && !s.Old && s.TorqueNm > 0 && s.Wrench == ""
}
