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
	machine.PartTwice:        {"name": `"sump"`, "line": 7},
	machine.PartIsJoint:      {"name": "p4-head", "key": "part"},
	machine.OtherMachine:     {"joint": "Cylinder head", "machine": "Fernhollow P2", "own": "Fernhollow P4"},
	machine.GasketUnlisted:   {"joint": "Cylinder head", "gasket": finding.Term("multi-layer steel")},
	machine.NoPattern:        {"name": "M1", "meant": "M2", "allowed": []string{"left", "right"}},
	machine.NoteOfOneSide:    {"key": "torque", "example": "[M1, M2]"},
	machine.OfJoints:         {"key": "torque", "owner": "part"},
	machine.OfParts:          {"key": "torque", "owner": "part"},
	overhaul.AgainAfterAngle: {"kinds": []string{"main"}},
	overhaul.AgainUsedOnce:   {"kinds": []string{"bolt"}},
	overhaul.OfOtherBank:     {"what": "right head gasket", "step": "Cylinder head, left bank"},
	overhaul.BanksShare:      {"title": "Cylinder head, right bank", "other": "Cylinder head, left bank", "labels": []string{"cyl 1", "cyl 2"}},
	overhaul.NotMirrored:     {"title": "Cylinder head, right bank", "other": "Cylinder head, left bank", "mirrored": "Camshaft caps, right bank"},
	overhaul.FigureApart:     {"text": "two people, 320 kg", "other": "two people, 32 kg"},
	overhaul.DrainedLate:     {"text": "Oil drained", "title": "Oil sump"},
	overhaul.NobodyTakesOff:  {"part": "sump", "joint": "Main bearing caps"},
	overhaul.PartTooEarly:    {"part": "cylinder head", "title": "Cylinder head, 4 cylinders"},
	overhaul.GasketOfOther:   {"gasket": "head gasket", "title": "Exhaust manifold", "other": "Cylinder head"},
	overhaul.GasketUnlisted:  {"title": "Cylinder head"},
	overhaul.LockInAgain:     {"lock": "Timing pin in"},
	overhaul.LockOutAgain:    {"lock": "Timing pin out"},
	overhaul.PartOtherSide:   {"part": "right cylinder head", "title": "Cylinder head, left bank"},
	overhaul.OffTooEarly:     {"part": "sump", "title": "Oil sump", "joint": "Main bearing caps"},
	overhaul.LockStaysIn:     {"lock": "Timing pin in"},
	machine.JointUnreadable:  {"name": "M1", "why": finding.Failed(thread.LeftHand, nil)},
})
