package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/service"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	service.Needs:          {"seating": unit.Stress(69), "work": unit.Stress(35), "crush": unit.Stress(250)},
	service.UsesHot:        {"cold": 0.61, "hot": 0.74, "high": 0.92},
	service.Alternates:     {"amplitude": unit.Stress(8.2), "limit": unit.Stress(46)},
	service.AimIs:          {"torque": unit.Torque(182), "by": "gasket", "low": unit.Force(41_000), "high": unit.Force(63_000), "needed": unit.Force(38_000), "reaches": true},
	service.NoPreload:      {"kind": "main"},
	service.NoGrip:         {"kind": "main"},
	service.NoFace:         {},
	service.NoWindow:       {"gasket": finding.Term("composite")},
	service.NoExpansion:    {"material": "70 GPa"},
	service.EqualShares:    {"bolts": 16},
	service.TightenedAlone: {},
	service.SealedInside:   {"sealed": unit.Length(120)},
	service.Introduced:     {"n": 1.0, "assumed": true},
	service.UsualWindow:    {"gasket": finding.Term("spiral-wound")},
	service.Creeps:         {"gasket": finding.Term("spiral-wound"), "low": 0.85, "high": 0.97},
	service.Expansion:      {"material": finding.Term("cast aluminium"), "part": 23.0, "bolt": 11.5},
	service.FlangeAside:    {},
	service.TorsionStays:   {},
	service.Crushes:        {"stage": 3, "low": unit.Stress(180), "stress": unit.Stress(260), "high": unit.Stress(310), "crush": unit.Stress(250), "area": 6362.0, "assumed": true},
	service.NotSeated:      {"low": unit.Stress(31), "stress": unit.Stress(44), "high": unit.Stress(58), "seating": unit.Stress(69), "area": 6362.0, "assumed": false},
	service.BelowWork:      {"state": "settled", "low": unit.Stress(21), "stress": unit.Stress(30), "high": unit.Stress(41), "work": unit.Stress(35), "assumed": false},
	service.YieldsHot:      {"kind": "main", "cold": 0.9, "hot": 1.04, "high": 1.12, "torque": unit.Torque(52)},
	service.PartsOpen:      {"kind": "main", "low": unit.Force(0), "clamp": unit.Force(1200)},
	service.Fatigues:       {"kind": "main", "amplitude": unit.Stress(61), "limit": unit.Stress(51)},
	service.LimitPassed:    {"kind": "main", "hot": true, "high": unit.Force(51_600), "by": "thread", "limit": unit.Force(49_400), "torque": unit.Torque(37)},
	service.NothingFits:    {"kind": "main", "least": unit.Force(21_000), "needed": unit.Force(26_000), "most": unit.Force(40_000), "by": "gasket"},
})
