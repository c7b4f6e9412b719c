package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/patterns/machine"
	"drawdown/patterns/texts"
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
	overhaul.AgainLocked:     {"kinds": []string{"bolt"}},
	machine.TextOfJoint:      {"title": "Gearbox cover", "why": finding.Warned(texts.TextTorque, finding.Values{"text": "Cover bolts to 28 N·m", "torque": unit.GivenTorque{Value: 28}})},
	overhaul.AgainUsedOnce:   {"kinds": []string{"bolt"}},
	overhaul.PartTooEarly:    {"part": "cylinder head", "title": "Cylinder head, 4 cylinders"},
	overhaul.GasketOfOther:   {"gasket": "head gasket", "title": "Exhaust manifold", "other": "Cylinder head"},
	overhaul.GasketUnlisted:  {"title": "Cylinder head"},
	overhaul.LockInAgain:     {"lock": "Timing pin in"},
	overhaul.LockOutAgain:    {"lock": "Timing pin out"},
	overhaul.PartOtherSide:   {"part": "right cylinder head", "title": "Cylinder head, left bank"},
	overhaul.OffTooEarly:     {"part": "sump", "title": "Oil sump", "joint": "Main bearing caps"},
	overhaul.LockStaysIn:     {"lock": "Timing pin in"},
	overhaul.TitleTwice:      {"title": "Cylinder head"},
	overhaul.PartBehind:      {"part": "Main bearing caps", "over": "Oil sump"},
	overhaul.DrainedLate:     {"text": "oil drained", "side": "loosen", "name": "Oil sump"},
	overhaul.TurnedOnce:      {"text": "Engine turned over on the stand", "side": "tighten"},
	overhaul.StopperStays:    {"text": "ports closed with rag"},
	overhaul.TextOfOther:     {"text": "filled with oil", "side": "loosen"},
	overhaul.ItemOfOtherSide: {"item": "right cover gasket", "name": "left cam cover"},
	overhaul.GasketNowhere:   {"gasket": "sump gasket", "title": "Oil sump"},
	overhaul.SisterLacks:     {"name": "left cam cover", "sister": "right cam cover", "item": "right cover gasket"},
	overhaul.SisterMissing:   {"part": "right camshaft", "title": "Camshaft caps, left bank"},
	overhaul.SistersOrder:    {"first": "left camshaft", "second": "left cylinder head", "earlier": "right cylinder head", "later": "right camshaft"},
	overhaul.MassesDiffer:    {"text": "32 kg", "name": "left cylinder head", "other": "320 kg", "sister": "right cylinder head"},
	overhaul.BanksDiffer:     {"title": "Cylinder head, right bank", "other": "Camshaft caps, right bank", "turn": "mirror x"},
	overhaul.ItemOfOther:     {"item": "front crankshaft seal", "name": "rear seal carrier"},
	overhaul.ItemTwice:       {"item": "sump bolts", "name": "rear seal carrier", "other": "oil sump"},
	overhaul.FluidOneWay:     {"text": "oil drained", "side": "tighten"},
	overhaul.SwitchedOn:      {"text": "Battery on", "side": "loosen"},
	overhaul.ToolMissing:     {"text": "Timing pin in"},
	overhaul.TooHeavy:        {"text": "two people, 440 kg", "each": "220 kg"},
	overhaul.GearTooWeak:     {"text": "Engine 390 kg; crane for 100 kg", "load": "390 kg", "gear": "100 kg"},
	overhaul.MassUnlikeJoint: {"text": "82 kg, on the guide studs", "other": "Flywheel weighs 28 kg"},
	overhaul.CylinderLeftOut: {"what": "compression", "missing": 4},
	overhaul.CylinderNowhere: {"what": "compression", "labels": []string{`"cyl 5"`, `"cyl 6"`}, "most": 4},
	overhaul.LimitsDiffer:    {"what": "warp of the face", "title": "Cylinder head, right bank", "sister": "Cylinder head, left bank"},
	overhaul.FrontUnturned:   {"title": "Cylinder head, right bank", "sister": "Cylinder head, left bank", "front": "left"},
	overhaul.CylindersShared: {"title": "Cylinder head, right bank", "other": "Cylinder head, left bank", "labels": []string{`"cyl 1"`, `"cyl 2"`}},
	overhaul.CylinderUnknown: {"title": "Camshaft caps, right bank", "labels": []string{`"in 7"`, `"ex 7"`}, "other": "Cylinder head, right bank"},
	machine.JointUnreadable:  {"name": "M1", "why": finding.Failed(thread.LeftHand, nil)},
})
