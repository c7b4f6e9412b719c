package wordstest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	plan.TorqueFalls:  {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2, "beforeTorque": exampleTorque},
	plan.LeftLoose:    {"kind": "main", "stage": 3, "angle": unit.Angle(180)},
	plan.AngleAlone:   {"kind": "main", "stage": 1, "angle": unit.Angle(90), "slackened": true},
	plan.CheckDiffers: {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2, "beforeTorque": exampleTorque},
	plan.SlackFirst:   {"kind": "main", "stage": 1},
	plan.AfterAngle:   {"kind": "main", "stage": 3, "torque": exampleTorque, "before": 2},
	plan.EndsShort:    {"kind": "main", "stage": 3, "percent": 60.0},
	plan.StageTwice:   {"stage": 3, "before": 2},
	plan.WaitsFirst:   {"stage": 1},
	plan.WaitsLast:    {"stage": 4},
	plan.WaitsOn:      {"stage": 4, "before": 3},
})
