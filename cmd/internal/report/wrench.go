package report

import (
	"fmt"

	"drawdown/sequence/tension/wrench"
)

func (p Report) Wrench(work wrench.Work, a wrench.Result) {
	p.fact("set on the wrench", "%s", bothTorques(a.Setting))
	p.fact("on its scale", "%s (%s)", a.Scale, a.Scale.Other())
	p.fact("fastener gets", "%s N·m; by its tolerance %s to %s N·m", figure(float64(a.Given)), figure(float64(a.Low)), figure(float64(a.High)))
	if work.Adapter > 0 {
		p.fact("adapter", "%s at %s", work.Adapter, work.AdapterAngle)
		p.fact("wrench length", "%s, %s", a.Length, p.Words.Term(a.LengthFrom))
	}
	if a.Wrench != nil {
		p.fact("take", "%s", a.Wrench.Name)
	}
	p.fact("usable", "%s", usableWords(a))
	p.printLines("Notes", p.Words.SayAll(a.Notes))
	p.printLines("Assumed", p.Words.SayAll(a.Assumptions))
	p.printLines("Sources", a.Sources)
}

// usableWords says why a wrench is usable at the setting, or which one is.
func usableWords(a wrench.Result) string {
	least, most := figure(a.Least.In(a.Scale.Unit)), figure(a.Most.In(a.Scale.Unit))
	if a.Wrench == nil {
		return fmt.Sprintf("a wrench whose scale ends between %s and %s %s, so that the setting lies within 20 %% to 100 %% of it", least, most, a.Scale.Unit)
	}
	return fmt.Sprintf("yes: %s keeps its tolerance from %s to %s %s, and is the smallest that does so at this setting", a.Wrench.Name, least, most, a.Scale.Unit)
}
