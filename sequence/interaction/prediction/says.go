package prediction

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/plan"
)

// Result of the work, and of one more pass.
const (
	LowestEnds    finding.Code = "forecast lowest ends"     // ends; bolt if there is a lowest one
	LoadTaken     finding.Code = "forecast load taken"      // points, bolt
	NotFelt       finding.Code = "forecast repeat not felt" //
	OneMorePass   finding.Code = "forecast one more pass"   // ends
	NoneNeeded    finding.Code = "forecast no repeat needed"
	RepeatsNeeded finding.Code = "forecast repeats needed"  // repeats
	NeverEven     finding.Code = "forecast never even"      // most
	StaysLevel    finding.Code = "forecast stays level"     // uneven
	MostUneven    finding.Code = "forecast most uneven"     // pass, bolt, uneven
	TiltedAndBent finding.Code = "forecast tilted and bent" // tilt, warp: the same moment
	SinglePass    finding.Code = "forecast single pass"     // class, mean, ends
)

// Ends reports the force of the lowest bolt, and which fastener took its load.
func (f Forecast) Ends(p plan.Plan) []finding.Finding {
	values := finding.Values{"ends": f.Last().Spread.Min}
	if len(f.Lowest) > 0 {
		name(values, p, f.Last().Lowest)
	}
	list := []finding.Finding{finding.Noted(LowestEnds, values)}
	if t := f.Taken; t != nil && f.Class != advice.Negligible {
		list = append(list, finding.Noted(LoadTaken, name(finding.Values{"points": t.Points}, p, t.By)))
	}
	return list
}

// name adds the name of a fastener on the part.
func name(values finding.Values, p plan.Plan, fastener int) finding.Values {
	values["bolt"] = p.Written()[fastener]
	return values
}

// Repeat reports the effect of one more pass, or nothing if it is unknown.
func (f Forecast) Repeat() []finding.Finding {
	switch {
	case f.OneMore == nil:
		return nil
	case f.Repeats == 0 && !f.RepeatIsFelt():
		return []finding.Finding{finding.Noted(NotFelt, nil)}
	}
	list := []finding.Finding{finding.Noted(OneMorePass, finding.Values{"ends": f.OneMore.Spread.Min})}
	switch {
	case f.Repeats == 0:
		return append(list, finding.Noted(NoneNeeded, nil))
	case f.Repeats > 0:
		return append(list, finding.Noted(RepeatsNeeded, finding.Values{"repeats": f.Repeats}))
	}
	return append(list, finding.Noted(NeverEven, finding.Values{"most": limits.MostRepeats}))
}

// Lies reports where the part is most uneven, by how much, and in which way.
func (f Forecast) Lies(p plan.Plan) []finding.Finding {
	worst := f.Passes[f.WorstPass()]
	if worst.UnevenMm.High < limits.HardlyUnevenMm {
		return []finding.Finding{finding.Noted(StaysLevel, finding.Values{"uneven": max(0.01, worst.UnevenMm.High)})}
	}
	frame := worst.Frames[worst.WorstFrame]
	return []finding.Finding{
		finding.Noted(MostUneven, name(finding.Values{"pass": worst.Number, "uneven": worst.UnevenMm}, p, frame.Fastener)),
		finding.Noted(TiltedAndBent, finding.Values{"tilt": frame.TiltMm, "warp": frame.WarpMm}),
	}
}

// Once reports the result of a single pass in the order of the plan, and so how
// sensitive the joint is.
func (f Forecast) Once() finding.Finding {
	once := f.OnePass
	return finding.Noted(SinglePass, finding.Values{"class": string(advice.ClassOf(once.Min.Low)), "mean": once.Mean, "ends": once.Min})
}

// Short descriptions of a pass.
const (
	PassTorque  finding.Code = "pass torque"  // torque; kinds if not all are turned
	PassStretch finding.Code = "pass stretch" // stretch; kinds
	PassAngle   finding.Code = "pass angle"   // angle; kinds
	PassBack    finding.Code = "pass back"    // angle; kinds
	PassOut     finding.Code = "pass out"     // kinds
	PassShare   finding.Code = "pass share"   // share, in percent
	PassTargets finding.Code = "pass targets" // each bolt has its own
)

// ToTargets reports whether a pass brings each bolt to its own target, to
// compensate for its loss.
func (p ForecastPass) ToTargets() bool { return p.Stage == nil && p.Share == 0 }

// Does describes the pass.
func (p ForecastPass) Does(of plan.Plan) finding.Finding {
	s := p.Stage
	switch {
	case p.ToTargets():
		return finding.Noted(PassTargets, nil)
	case s == nil:
		return finding.Noted(PassShare, finding.Values{"share": 100 * p.Share})
	}
	values := finding.Values{"torque": s.Torque, "angle": s.Angle, "stretch": s.Stretch}
	if len(s.Fasteners) < len(of.Joint.Fasteners) {
		values["kinds"] = s.Kinds
	}
	code := map[plan.Action]finding.Code{plan.Tighten: PassTorque, plan.Advance: PassAngle, plan.Lengthen: PassStretch, plan.BackOff: PassBack, plan.TurnBack: PassBack, plan.Remove: PassOut}[s.Do]
	return finding.Noted(code, values)
}

// FoundationTaken gives the assumed stiffness of gasket and counterpart, from
// soft to stiff.
const FoundationTaken finding.Code = "forecast foundation taken" // stiffness, unit

// FoundationTaken reports the assumed stiffness of gasket and counterpart. For
// a row it is per millimetre of length.
func (f Forecast) FoundationTaken() finding.Finding {
	unit := "MPa/mm"
	if f.PerLength {
		unit = "N/mm²"
	}
	return finding.Noted(FoundationTaken, finding.Values{"stiffness": f.FoundationMPaPerMm.Rough(), "unit": unit})
}
