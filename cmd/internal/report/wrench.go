package report

import (
	"fmt"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/wrench"
)

// Wrench prints what to set on a wrench.
func (p Report) Wrench(work wrench.Work, a wrench.Result) {
	w, value := p.Words.Wrench, p.Words.Value
	p.fact(w.Set, p.say(TorqueBoth, finding.Values{"torque": a.Setting}))
	p.fact(w.OnScale, fmt.Sprintf("%s (%s)", value(a.Scale, ""), value(a.Scale.Other(), "")))
	p.fact(w.Gets, p.say(WrenchGives, finding.Values{"given": a.Given, "low": a.Low, "high": a.High}))
	if work.Adapter > 0 {
		p.fact(w.Adapter, p.say(WrenchAdapter, finding.Values{"adapter": work.Adapter, "angle": work.AdapterAngle}))
		p.fact(w.Length, value(a.Length, "")+", "+p.Words.Term(a.LengthFrom))
	}
	if a.Wrench != nil {
		p.fact(w.Take, p.say(WrenchTaken, finding.Values{"name": a.Wrench.Name, "number": a.Wrench.Number, "calibrated": a.Wrench.Calibrated}))
	}
	p.fact(w.Usable, p.Words.Say(usable(a)))
	p.grounds(a.Notes, a.Assumptions, a.Sources)
}

// usable says why a wrench is usable at the setting, or which one is.
func usable(a wrench.Result) finding.Finding {
	v := finding.Values{"least": a.Least.In(a.Scale.Unit), "most": a.Most.In(a.Scale.Unit), "unit": a.Scale.Unit.String()}
	if a.Wrench != nil {
		v["wrench"] = a.Wrench.Name
	}
	return finding.Noted(WrenchUsable, v)
}

// WrenchJSON returns the same as data.
func WrenchJSON(c *words.Catalogue, work wrench.Work, a wrench.Result) object {
	out := object{
		{"torque_Nm", Figure(work.Torque)},
		{"setting_Nm", Figure(a.Setting)}, // exact
		{"setting_lbf_ft", Figure(a.Setting.In(unit.PoundForceFoot))},
		{"setting_on_scale", object{{"value", Figure(a.Scale.Value)}, {"unit", a.Scale.Unit.String()}}},
	}
	if a.Wrench != nil { // without a list of wrenches nothing can be said; one that is not usable is not taken
		out = append(out, field{"wrench", given(a.Wrench.Name)}, field{"wrench_number", given(a.Wrench.Number)}, field{"calibrated", given(a.Wrench.Calibrated)}, field{"usable", true})
	}
	return append(out, object{
		{"usable_reason", c.Say(usable(a))},
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
