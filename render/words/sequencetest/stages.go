package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/stages"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	stages.TorqueFalls:    {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2, "beforeTorque": exampleTorque},
	stages.LeftLoose:      {"kind": "main", "stage": 3, "angle": unit.Angle(180)},
	stages.AngleAlone:     {"kind": "main", "stage": 1, "angle": unit.Angle(90), "slackened": true},
	stages.CheckDiffers:   {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2, "beforeTorque": exampleTorque},
	stages.SlackFirst:     {"kind": "main", "stage": 1},
	stages.CheckFirst:     {"kind": "main", "stage": 1, "later": 2},
	stages.AfterAngle:     {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2},
	stages.EndsShort:      {"kind": "main", "stage": 3, "percent": 60.0},
	stages.StretchesAgain: {"kind": "main", "stage": 7, "before": 4, "slackened": 5},
	plan.FinishedEarly:    {"kind": "side", "stage": 1, "other": "main", "last": 5},
	plan.LoosenedEarly:    {"kind": "main", "stage": 1, "other": "side", "first": 3},
	plan.OutUnturned:      {"stage": 2, "kinds": []string{"main", "side"}},
	plan.TurnLittle:       {"stage": 1, "turn": unit.Angle(6), "least": unit.Angle(15)},
	plan.TurnMuch:         {"stage": 1, "turn": unit.Angle(600)},
	stages.CheckByAngle:   {"kind": "main", "stage": 4, "angle": unit.Angle(90), "slackened": false},
	stages.UnitsMixed:     {"kind": "main", "stage": 3, "torque": unit.GivenTorque{Value: 60, Unit: unit.PoundForceFoot}, "before": 2, "beforeTorque": exampleTorque},
	stages.SmallerMore:    {"kind": "side", "stage": 2, "torque": exampleTorque, "thread": "M8×1.25", "class": "8.8", "other": "main", "otherTorque": exampleTorque, "otherThread": "M10×1.5"},
	stages.StepTooLarge:   {"kind": "main", "stage": 1, "torque": exampleTorque, "after": 2, "afterTorque": exampleTorque},
	stages.AllAtOnce:      {"kind": "main", "stage": 1, "torque": exampleTorque, "count": 12},
	stages.WaitsSet:       {"stage": 2, "wait": unit.Duration(600), "kind": "cover", "most": unit.Duration(30)},
	stages.WaitsShort:     {"stage": 2, "wait": unit.Duration(4.0 / 60), "least": unit.Duration(1)},
	stages.EqualsApart:    {"kind": "long", "stage": 1, "torque": exampleTorque, "thread": "M8×1.25", "other": "short", "otherStage": 2, "otherTorque": exampleTorque},
	stages.StepTooSmall:   {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2, "beforeTorque": exampleTorque},
	stages.StageTwice:     {"stage": 3, "before": 2},
	stages.WaitsFirst:     {"stage": 1},
	stages.WaitsLast:      {"stage": 4},
	stages.WaitsOn:        {"stage": 4, "before": 3},
})
