package report

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/figures"
	"drawdown/sequence/service"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// TorqueFileJSON returns the answers for the kinds of a file as data.
func TorqueFileJSON(c *words.Catalogue, title string, answers []figures.Answer, joint service.Joint) object {
	var kinds []object
	for _, a := range answers {
		kinds = append(kinds, append(TorqueJSON(c, a), serviceJSON(joint, a.Kind)...))
	}
	return object{{"title", title}, {"kinds", kinds}, {"joint", serviceGroundsJSON(c, joint)}}
}

// TorqueJSON returns an answer as data. Plain numbers are at nominal friction
// with the set torque; a range has the least, nominal and greatest value;
// at_friction has everything by friction.
func TorqueJSON(c *words.Catalogue, a figures.Answer) object {
	r := a.Result
	l, n, h := r.Low, r.Nominal, r.High
	return slices.Concat(object{
		{"kind", given(a.Kind)},
		{"thread", a.Bolt.Bolt.Thread.Name},
		{"class", c.What(r.Strength.Named())},
		{"equation", equationName(a)},
		{"aim", c.Say(finding.Noted(TorqueAim, aim(a)))},
		{"tighten", when(a.Turned != nil, c.Say(finding.Noted(TorqueSnug, snug(a))))}, // snug torque and angle; torque_Nm and its figures are then for torque alone

		{"stress_area_mm2", Figure(r.StressAreaMm2)},
		{"least_section_mm2", Figure(r.LeastSectionMm2)}, // of the thread, or of a slimmer shank
		{"proof_load_N", Figure(r.ProofLoad)},
		{"yield_stress_MPa", Figure(r.Strength.Yield)},
		{"tensile_strength_MPa", given(Figure(r.Strength.Tensile))},

		{"torque_Nm", Figure(r.Torque)},
		{"torque_lbf_ft", Figure(r.Torque.In(unit.PoundForceFoot))},
		{"full_torque_range_Nm", SpanOf(l.FullTorque, n.FullTorque, h.FullTorque)}, // that uses the full share of yield
		{"preload_N", Figure(preloads(a).Nominal)},
		{"preload_range_N", preloads(a)},
		{"stretch_mm", given(Figure(a.Longer[1]))},                                                 // of the bolt at preload_N, or after the angle
		{"stretch_range_mm", when(a.Longer[1] > 0, SpanOf(a.Longer[0], a.Longer[1], a.Longer[2]))}, // by modulus and lengths
		{"preload_least_N", given(Figure(a.Least))},                                                // if the friction has no range: by the tightening factor
		{"tightening_factor", given(Figure(a.Alpha))},
		{"yield_used", when(!n.Yields(), Figure(n.YieldShare))},
		{"yield_used_range", when(!l.Yields() && !n.Yields() && !h.Yields(), SpanOf(l.YieldShare, n.YieldShare, h.YieldShare))}, // at any friction
		{"yield_allowed", Figure(r.YieldShare)},
		{"proof_used", Figure(a.ProofUsed)},
		{"nut_factor", Figure(n.NutFactor)},
		{"split", when(!n.Yields(), splitJSON(n.Split))},

		{"head", string(r.HeadForm)},
		{"bearing_face_mm", Figure(r.Face)},
		{"hole_mm", Figure(r.Hole)},
		{"friction_diameter_mm", Figure(r.Effective)},
		{"at_friction", byFriction(l, n, h, atFrictionJSON)},
	}, turnedJSON(a), object{
		{"joint", jointJSON(a)},
		{"stripping", strippingJSON(c, a)},
		{"pressure", object{
			{"at_preload_N", Figure(a.Greatest)}, // the greatest of the span
			{"pressure_MPa", Figure(a.Pressure.Pressure)},
			{"limit_MPa", given(Figure(a.Pressure.Limit))},
			{"used", given(Figure(a.Pressure.Used))},
		}},
		{"stages", stagesJSON(a)},
		{"worked_out", true},
		{"caution", c.Torque.WorkedOut},
		{"notes", Listed(c.SayAll(a.Notes))},
		{"assumptions", Listed(c.SayAll(a.Assumptions))},
		{"sources", Listed(a.Sources)},
	})
}

// preloads returns the preload over the range of friction, or that of a stretch.
func preloads(a figures.Answer) Span {
	if s := a.Stretched; s != nil {
		return SpanOf(s.Low, s.Nominal, s.High)
	}
	r := a.Result
	return SpanOf(r.Low.Borne, r.Nominal.Borne, r.High.Borne)
}

// stagesJSON is the bolt after each stage of its file.
func stagesJSON(a figures.Answer) any {
	if !a.OfStages() {
		return nil
	}
	list := []object{}
	for _, s := range a.EachStage {
		list = append(list, object{
			{"stage", s.Number},
			{"preload_N", when(s.Known, SpanOf(s.Low, s.Nominal, s.High))},
			{"yield_used", when(s.Known, Figure(s.YieldUsed))},
			{"stretch_mm", given(Figure(s.Stretch))},
			{"breaking_torque_ratio", given(Figure(s.Margin))}, // the torque that breaks the bolt at the lowest friction, over that of the stage
			{"angle_to_break_deg", when(s.Do == figures.Advance && s.Known, Figure(s.Further))},
			{"breaks", s.Breaks}, // at some friction
		})
	}
	return list
}

func equationName(a figures.Answer) string {
	if a.Bolt.Bolt.NutFactor != 0 {
		return "nut factor"
	}
	return string(a.Result.Equation)
}

func byFriction[T any](low, nominal, high T, of func(T) object) object {
	return object{{"low", of(low)}, {"nominal", of(nominal)}, {"high", of(high)}}
}

func splitJSON(s screw.TorqueSplit) object {
	return object{{"stretch", Figure(s.Stretch)}, {"thread", Figure(s.Thread)}, {"head", Figure(s.Head)}}
}

func atFrictionJSON(f screw.AtFriction) object {
	return object{
		{"friction_thread", Figure(f.Thread)},
		{"friction_head", Figure(f.Head)},
		{"preload_N", Figure(f.Borne)},
		{"yield_used", when(!f.Yields(), Figure(f.YieldShare))},
		{"full_torque_Nm", Figure(f.FullTorque)},
		{"split", when(!f.Yields(), splitJSON(f.Split))},
		{"nut_factor", Figure(f.NutFactor)},
		{"torque_at_yield_Nm", Figure(f.YieldTorque)},
		{"torque_at_breaking_Nm", Figure(f.BreakTorque)},
		{"yields", f.Yields()}, // the preload is then that of the hardened bolt
		{"breaks", f.Breaks()}, // the preload is then the greatest that it bore
	}
}

// turnedJSON is what a snug torque adds, and an angle after it.
func turnedJSON(a figures.Answer) object {
	if a.Turned == nil {
		return nil
	}
	l, n, h := a.Turned.Low, a.Turned.Nominal, a.Turned.High
	holds := a.ByAngle() && !n.Breaks
	turns := !l.BreaksBySnug() && !n.BreaksBySnug() && !h.BreaksBySnug()
	return object{
		{"snug_Nm", Figure(a.Snug)},
		{"angle_deg", when(a.ByAngle(), Figure(a.Angle))},
		{"preload_after_angle_N", when(holds, Figure(n.Preload))},
		{"preload_after_angle_range_N", when(holds && !l.Breaks && !h.Breaks, SpanOf(l.Preload, n.Preload, h.Preload))},
		{"aim_N", Figure(a.Turned.Aim)},
		{"angle_to_aim_deg", when(turns, Figure(n.AngleToAim))},
		{"angle_to_aim_range_deg", when(turns, SpanOf(l.AngleToAim, n.AngleToAim, h.AngleToAim))},
		{"after_angle", byFriction(l, n, h, afterAngleJSON)},
	}
}

func afterAngleJSON(f stiffness.AfterAngle) object {
	holds, turns := !f.Breaks, !f.BreaksBySnug()
	return object{
		{"friction_thread", Figure(f.Thread)},
		{"friction_head", Figure(f.Head)},
		{"snug_preload_N", Figure(f.Snug)},
		{"preload_N", when(holds, Figure(f.Preload))},
		{"torque_Nm", when(holds, Figure(f.Torque))},
		{"yield_used", when(holds, Figure(f.YieldUsed))},
		{"lasting_mm", when(holds, Figure(f.Lasting))},
		{"stretch_mm", when(holds, Figure(f.Stretch))},
		{"angle_to_aim_deg", when(turns, Figure(f.AngleToAim))},
		{"angle_to_yield_deg", when(turns, Figure(f.AngleToYield))},
		{"angle_to_greatest_deg", when(turns, Figure(f.AngleToGreatest))},
		{"angle_to_break_deg", when(turns, Figure(f.AngleToBreak))},
		{"reusable", f.Reusable && holds},
		{"breaks", f.Breaks},
	}
}

func jointJSON(a figures.Answer) any {
	j, s := a.Joint, a.Settlement
	if j == nil {
		return nil
	}
	out := object{
		{"bolt_stiffness_N_per_mm", Figure(j.Bolt)},
		{"members_stiffness_N_per_mm", Figure(j.Members)},
		{"load_share", Figure(j.LoadShare)},
		{"grip_mm", Figure(j.Grip)},
		{"cone_angle_deg", Figure(j.ConeAngle)},       // from the axis
		{"cone_reach_mm", given(Figure(j.ConeReach))}, // D′A
	}
	if s == nil { // the bolt breaks
		return out
	}
	return append(out, field{"settlement_um", Figure(s.Micrometres)}, field{"settlement_loss_N", Figure(s.Loss)})
}

func strippingJSON(c *words.Catalogue, a figures.Answer) any {
	s, engaged := a.Stripping, a.Engaged > 0
	if s == nil {
		return nil
	}
	return object{
		{"bolt_breaks_N", Figure(s.BoltBreaks)},
		{"bolt_strips_N", when(engaged, Figure(s.BoltStrips))},
		{"part_strips_N", when(engaged, Figure(s.PartStrips))},
		{"first", when(engaged, c.Term(finding.Term(s.First)))},
		{"margin", when(engaged, Figure(s.Margin))},                     // over the greatest preload
		{"engagement_effective_mm", when(engaged, Figure(s.Effective))}, // that carries
		{"C1", Figure(s.Factors.Dilation)},
		{"C2", Figure(s.Factors.BoltBending)},
		{"C3", Figure(s.Factors.PartBending)},
		{"bolt_shear_ratio", Figure(s.ShearRatio)},
		{"engagement_for_bolt_mm", Figure(s.ForBolt)},
		{"engagement_for_preload_mm", Figure(s.ForPreload)},
	}
}
