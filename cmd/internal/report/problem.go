package report

import (
	"fmt"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// Said gives problems in the language of the call.
func (r Report) Said(problems problem.List) problem.List {
	return problems.Worded(r.Words.What, r.Words.Allowed)
}

// Problems prints what is wrong with an input, each with the line it stands on.
func (r Report) Problems(problems problem.List) {
	for _, p := range r.Said(problems) {
		place := p.File + ":" // as editors and other programs know it
		if p.Line > 0 {
			place += fmt.Sprintf("%d:%d:", p.Line, p.Column)
		}
		fmt.Fprint(r.To, p.Under(r.say(Problem, finding.Values{
			"place": place, "severity": string(p.Severity), "what": p.What, "allowed": p.Allowed,
		})))
	}
}
