package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/patterns/machine"
	"drawdown/sequence/overhaul"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	machine.IsPattern:        {},
	machine.TooManySteps:     {"count": 3, "most": 200},
	machine.NoJoint:          {"example": "[M1, M2]"},
	machine.NoJointName:      {"found": "\"M1\""},
	machine.JointTwice:       {"name": "M1", "line": 7},
	machine.NoPattern:        {"name": "M1", "meant": "M2", "allowed": []string{"left", "right"}},
	machine.NoteOfOneSide:    {"key": "torque", "example": "[M1, M2]"},
	machine.OfJoints:         {"key": "torque", "owner": "part"},
	machine.OfParts:          {"key": "torque", "owner": "part"},
	overhaul.AgainAfterAngle: {"kinds": []string{"main"}},
	overhaul.AgainUsedOnce:   {"kinds": []string{"bolt"}},
	machine.JointUnreadable:  {"name": "M1", "why": finding.Failed(thread.LeftHand, nil)},
})
