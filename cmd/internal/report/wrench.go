package report

import (
	"fmt"

	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/wrench"
)

// Wrench prints what to set on a wrench.
func (p Report) Wrench(work wrench.Work, a wrench.Result) {
	p.fact("set on the wrench", "%s", bothTorques(a.Setting))
	p.fact("on its scale", "%s (%s)", a.Scale, a.Scale.Other())
	p.fact("fastener gets", "%s N·m; by its tolerance %s to %s N·m", figure(a.Given), figure(a.Low), figure(a.High))
	if work.Adapter > 0 {
		p.fact("adapter", "%s at %s", work.Adapter, work.AdapterAngle)
		p.fact("wrench length", "%s, %s", a.Length, p.Words.Term(a.LengthFrom))
	}
	if a.Wrench != nil {
		p.fact("take", "%s", a.Wrench.Name)
	}
	p.fact("usable", "%s", usableWords(a))
	p.grounds(a.Notes, a.Assumptions, a.Sources)
}

// usableWords says why a wrench is usable at the setting, or which one is.
func usableWords(a wrench.Result) string {
	least, most := figure(a.Least.In(a.Scale.Unit)), figure(a.Most.In(a.Scale.Unit))
	if a.Wrench == nil {
		return fmt.Sprintf("a wrench whose scale ends between %s and %s %s, so that the setting lies within 20 %% to 100 %% of it", least, most, a.Scale.Unit)
	}
	return fmt.Sprintf("yes: %s keeps its tolerance from %s to %s %s, and is the smallest that does so at this setting", a.Wrench.Name, least, most, a.Scale.Unit)
}

// WrenchJSON gives the same as data.
func WrenchJSON(c *words.Catalogue, work wrench.Work, a wrench.Result) object {
	out := object{
		{"torque_Nm", Figure(work.Torque)},
		{"setting_Nm", Figure(a.Setting)}, // exact
		{"setting_lbf_ft", Figure(a.Setting.In(unit.PoundForceFoot))},
		{"setting_on_scale", object{{"value", Figure(a.Scale.Value)}, {"unit", a.Scale.Unit.String()}}},
	}
	if a.Wrench != nil { // without a list of wrenches nothing can be said; one that is not usable is not taken
		out = append(out, field{"wrench", given(a.Wrench.Name)}, field{"usable", true})
	}
	return append(out, object{
		{"usable_reason", usableWords(a)},
		{"length_mm", given(Figure(a.Length))},       // of the wrench, with an adapter
		{"length_from", given(c.Term(a.LengthFrom))}, // as stated, or from the list
		{"skipped", given(a.Skipped)},                // of the list, for want of a length
		{"usable_from_Nm", Figure(a.Least)},          // without a list: where the scale of a wrench may end
		{"usable_to_Nm", Figure(a.Most)},
		{"fastener_Nm", Figure(a.Given)}, // with the setting on the scale
		{"fastener_range_Nm", SpanOf(a.Low, a.Given, a.High)},
		{"rounding", Figure(a.RoundingShare)},
		{"tolerance", Figure(a.ToleranceShare)},
		{"notes", Listed(c.SayAll(a.Notes))},
		{"assumptions", Listed(c.SayAll(a.Assumptions))},
		{"sources", Listed(a.Sources)},
	}...)
}
