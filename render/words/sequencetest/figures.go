package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/stiffness"
)

var (
	m10    = finding.Noted(figures.BoltNamed, finding.Values{"thread": "M10×1.5", "class": classNamed, "strongest": false})
	yields = finding.Noted(figures.YieldTorques, finding.Values{"least": 59., "most": unit.GivenTorque{Value: 96}, "rests": "lubricant", "lubricant": "engine oil"})
	rests  = finding.Noted(figures.TurnRests, finding.Values{"open": "all"})
)

// turned is a turn with what is said of it.
func turned(more finding.Values) finding.Values {
	values := finding.Values{
		"angle": unit.Angle(180), "snug": unit.GivenTorque{Value: 40}, "bolt": m10, "grip": unit.Length(95), "least": unit.Angle(105), "most": unit.Angle(120), "rests": rests,
	}
	for name, v := range more {
		values[name] = v
	}
	return values
}

var _ = exampleOf(map[finding.Code]finding.Values{
	figures.AtStage:           {"stage": 3, "kind": "main", "why": finding.Warned(figures.LengthShort, finding.Values{"length": unit.Length(90), "grip": unit.Length(95)})},
	figures.AtKind:            {"kind": "main", "why": finding.Warned(figures.LengthShort, finding.Values{"length": unit.Length(90), "grip": unit.Length(95)})},
	figures.BoltNamed:         {"thread": "M10×1.5", "class": classNamed, "strongest": true},
	figures.YieldTorques:      {"least": 59., "most": unit.GivenTorque{Value: 96}, "rests": "friction", "lubricant": ""},
	figures.TorqueOver:        {"torque": unit.GivenTorque{Value: 300}, "times": 4., "some": false, "bolt": m10, "yields": yields, "fails": true},
	figures.TorquePastYield:   {"torque": unit.GivenTorque{Value: 62}, "thread": 0.08, "head": 0.08, "yield": unit.Torque(59.3), "break": unit.Torque(65.6), "breaks": false, "borne": unit.Force(51e3)},
	figures.TorqueOneFriction: {"torque": unit.GivenTorque{Value: 71}, "thread": 0.08, "head": 0.08, "yield": unit.Torque(59.3), "break": unit.Torque(65.6), "breaks": true, "borne": unit.Force(51e3), "stated": 0.12, "class": "B", "low": 0.08, "high": 0.16},
	figures.Judged:            {"what": finding.Term("wrench"), "kinds": []string{"main"}},
	figures.JudgedLeniently:   {"what": finding.Term("angle past yield"), "kinds": []string{"main"}, "lacks": []finding.Term{"thread length"}, "taken": []finding.Term{"thread over the whole grip"}},
	figures.NotJudged:         {"what": finding.Term("stripping of the thread"), "kinds": []string{"main", "side"}, "lacks": []finding.Term{"into", "engagement"}},
	plan.Fails:                {"why": finding.Failed(plan.ShareOfUnknown, finding.Values{"kind": "b"})},
	plan.OrderJudged:          {}, plan.OrderOfMaker: {}, plan.OrderTooLong: {"most": 1000}, plan.SpringsJudged: {}, plan.NoGasketJudged: {}, plan.NoStages: {},
	plan.GasketJudged:            {"kind": finding.Term("graphite")},
	plan.GasketNotJudged:         {"kind": "composite"},
	figures.FaceUsual:            {"face": unit.Length(16.5), "thread": "M11×1.5"},
	figures.LubricantOpen:        {"low": 0.08, "high": 0.24},
	figures.TorqueGalls:          {},
	figures.AtWorkedOut:          {"torque": unit.GivenTorque{Value: 53.3}, "why": finding.Warned(figures.LengthShort, finding.Values{"length": unit.Length(90), "grip": unit.Length(95)})},
	figures.TorqueHardlyAny:      {"torque": unit.GivenTorque{Value: 1}, "share": 0.02, "bolt": m10, "yields": yields},
	figures.TorqueUsedOnce:       {"torque": unit.GivenTorque{Value: 60}, "share": 0.5},
	figures.TorqueBreaks:         {"torque": unit.GivenTorque{Value: 120}, "bolt": m10, "yield": unit.Torque(79.1), "break": unit.Torque(87.5)},
	figures.TurnWhole:            {"angle": unit.Angle(450), "snug": unit.GivenTorque{Value: 40}, "turn": unit.Angle(360), "lacks": true},
	figures.StretchPastYield:     {"stretch": unit.Length(0.6), "bolt": m10, "grip": unit.Length(95), "yield": unit.Length(0.42), "most": unit.Length(0.9)},
	figures.StretchBreaks:        {"stretch": unit.Length(6), "bolt": m10, "grip": unit.Length(95), "yield": unit.Length(0.42), "most": unit.Length(0.9)},
	figures.SameTemperature:      {"kelvin": 10, "grown": unit.Length(0.011), "preload": unit.Force(1300)},
	figures.TorqueByTool:         {"torque": unit.Torque(1850), "most": unit.Torque(1000)},
	figures.PlainAssumed:         {"waist": unit.Length(7.3), "yield": unit.Torque(41.7), "break": unit.Torque(46.1), "friction": 0.08},
	figures.TurnRests:            {"open": "stated"},
	figures.TurnBreaks:           turned(nil),
	figures.TurnNecks:            turned(nil),
	figures.TurnUsesUp:           turned(finding.Values{"share": 0.6}),
	figures.TurnUsedAgain:        turned(finding.Values{"reuse": "yes"}),
	figures.TurnUsedOnce:         {"lasting": unit.Length(0.5), "strain": 0.02},
	figures.TurnMeasured:         {"lasting": unit.Length(0.01)},
	figures.SnugBreaks:           {"snug": unit.GivenTorque{Value: 90}, "thread": 0.08, "head": 0.08},
	figures.SnugOverAim:          {"snug": unit.GivenTorque{Value: 60}, "preload": unit.Force(45e3), "aim": unit.Force(30e3)},
	figures.TwoWrenches:          {"low": unit.GivenTorque{Value: 5}, "high": unit.GivenTorque{Value: 50}, "stage": 3, "from": unit.GivenTorque{Value: 10}, "usable": 0.2},
	figures.GripUnfit:            {"why": finding.Failed(stiffness.GripTooLong, finding.Values{"grip": unit.Length(9000), "thread": "M10×1.5", "most": unit.Length(2000)})},
	figures.LengthBeyond:         {"length": unit.Length(80), "left": unit.Length(55), "engagement": unit.Length(18)},
	figures.LengthBeyondNut:      {"length": unit.Length(80), "left": unit.Length(75), "engagement": unit.Length(0)},
	figures.LengthNut:            {"length": unit.Length(60), "left": unit.Length(6), "engagement": unit.Length(26), "needed": unit.Length(12.8), "nuts": 1},
	figures.AcrossOfOther:        {"across": unit.Length(46), "thread": "M24", "own": unit.Length(36), "other": "M30"},
	figures.AcrossOdd:            {"of": "head", "across": unit.Length(17), "thread": "M8×1.25", "least": unit.Length(8.8), "most": unit.Length(16.4)},
	figures.FrictionOdd:          {"friction": 0.45, "least": 0.04, "most": 0.4},
	figures.FrictionOfOther:      {"friction": 0.3, "lubricant": "engine oil", "low": 0.08, "high": 0.16},
	figures.TurnHardlyAny:        {"angle": unit.Angle(9), "least": unit.Angle(15)},
	figures.LengthShort:          {"length": unit.Length(90), "grip": unit.Length(95)},
	figures.LengthLeaves:         {"length": unit.Length(110), "left": unit.Length(15), "grip": unit.Length(95), "engagement": unit.Length(22)},
	figures.LengthPlain:          {"length": unit.Length(120), "threaded": unit.Length(20), "plain": unit.Length(100), "grip": unit.Length(95)},
	figures.EngagementFails:      {"engagement": unit.Length(8), "material": aluminium, "holds": unit.Force(17e3), "preload": unit.Force(40e3), "needed": unit.Length(18)},
	figures.EngagementFirst:      {"first": finding.Term("part strips"), "needed": unit.Length(25.4), "material": aluminium},
	figures.EngagementOpen:       {"material": aluminium},
	figures.HoleTooSmall:         {"size": "M10", "hole": unit.Length(9)},
	figures.HoleWithoutClearance: {"size": "M16", "hole": unit.Length(16), "usual": unit.Length(17.5), "standard": "ISO 273 medium"},
	figures.HoleOfLarger:         {"size": "M10", "hole": unit.Length(13), "usual": unit.Length(11), "standard": "ISO 273 medium", "larger": "M12", "across": unit.Length(18)},
	figures.HeadUnfit:            {"why": finding.Failed(head.FaceNotWider, finding.Values{"face": unit.Length(14.63), "thread": "M10×1.5", "hole": unit.Length(15)})},
	figures.PressureTooHigh:      {"washer": true, "pressure": unit.Stress(624), "material": aluminium, "limit": unit.Stress(220), "face": unit.Length(20.1)},
	figures.PressureAnywhere:     {"face": unit.Length(0), "across": unit.Length(0), "form": finding.Term("socket"), "hole": unit.Length(14), "pressure": unit.Stress(2000), "preload": unit.Force(48e3), "limit": unit.Stress(1080)},
	figures.SettlesMuch:          {"flattens": unit.Length(0.008), "share": 0.23},
	figures.StiffnessLeftOut:     {"why": finding.Failed(stiffness.BoltTooShort, finding.Values{"length": unit.Length(30), "grip": unit.Length(40)})},
	figures.LubricantDiffers:     {"lubricant": "wax", "other": "engine oil", "kind": "main", "thread": "M10×1.5", "class": "10.9"},
	plan.ShareOfUnknown:          {"kind": "main"},
	plan.ShareNeedsThread:        {"kind": "main"},
	plan.ShareFails:              {"kind": "main", "why": finding.Failed(head.NoHexagon, finding.Values{"thread": "M9×1.25"})},
	plan.SharesDiffer:            {"share": 0.3, "kind": "main", "torque": unit.GivenTorque{Value: 16}, "other": "side", "theirs": unit.GivenTorque{Value: 6}},
	plan.ShareRests: {"kind": "main", "torque": unit.GivenTorque{Value: 53}, "least": 25.3, "most": unit.Force(45.6e3), "taken": []finding.Finding{
		finding.Noted(head.HoleAssumed, finding.Values{"hole": unit.Length(11), "standard": "ISO 273"}),
	}},
})
