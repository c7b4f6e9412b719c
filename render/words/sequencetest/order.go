package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/judge"
)

var stepsOfAnOrder = finding.Noted(judge.AtSteps, finding.Values{"n": 2, "steps": []int{3, 5}})

var _ = exampleOf(map[finding.Code]finding.Values{
	judge.AtSteps:         {"n": 5, "steps": []int{1, 2, 3, 4, 5}, "from": 1, "to": 5},
	judge.UnknownName:     {"names": []string{`"M33"`}, "at": stepsOfAnOrder, "meant": "M3"},
	judge.NamedTwice:      {"id": "M8", "first": 2, "again": 3},
	judge.LeftOut:         {"ids": []string{"M1", "M2"}},
	judge.GroupsMixed:     {"n": 1, "ids": []string{"F1"}, "at": stepsOfAnOrder, "against": []string{"M3", "M8"}, "side": "loosen"},
	judge.ClusterParted:   {"ids": []string{"M2", "M7"}, "at": stepsOfAnOrder, "side": "tighten"},
	judge.UnloadedLate:    {"id": "M4", "step": 7, "against": "M3", "againststep": 1, "side": "tighten"},
	judge.UnloadedEarly:   {"id": "M4", "step": 1, "against": "M3", "againststep": 3, "side": "tighten"},
	judge.NotFromMiddle:   {"id": "M1", "middle": []string{"M3", "M8"}, "side": "tighten"},
	judge.Inwards:         {"id": "M2", "step": 2, "against": "M1", "againststep": 1, "n": 6, "side": "loosen"},
	judge.LongOneSide:     {"n": 5, "ids": []string{"M1", "M2", "M3"}, "at": stepsOfAnOrder, "most": 3.0},
	judge.NextNeighbours:  {"n": 8, "first": "M1", "second": "M2", "early": 1, "late": 2, "most": 6.0},
	judge.NotAcross:       {"n": 7, "of": 7, "first": "M1", "second": "M2", "early": 1, "late": 2},
	judge.PullsAside:      {"id": "M4", "step": 4, "pull": 2.613, "most": 1.0, "side": "tighten"},
	judge.BendsPart:       {"id": "M4", "step": 4, "bend": 2.9, "most": 2.4, "side": "tighten"},
	judge.StatedDeparts:   {"why": finding.Warned(judge.NotAcross, finding.Values{"n": 7, "of": 7, "first": "M1", "second": "M2", "early": 1, "late": 2, "side": "tighten"}), "more": 3},
	judge.StatedReversed:  {"first": "M1", "last": "M3"},
	judge.StatedExchanged: {"first": "M3", "second": "M8", "step": 1, "other": 7, "moved": false},
	judge.StatedParts:     {"name": "cap 2", "ids": []string{"A", "B"}, "steps": []int{1, 6}, "more": 4},
	judge.LongWay:         {"way": unit.Length(2242), "own": unit.Length(1400)},
	judge.NoNames:         {},
	judge.MixedNames:      {"id": "M2", "cast": "3"},
	judge.CastNotOne:      {"cast": "4", "ids": []string{"M1", "M4"}},
	sequence.NoCastNumber: {"id": "M2"},
	sequence.InTwoGroups:  {"id": "M2"},
	sequence.InNoGroup:    {"id": "M2"},
	sequence.NotOfGroup:   {"id": "M2"},
	sequence.NotInList:    {"id": "M2"},
	judge.WayNotAnOrder:   {"way": "spiral"},
})
