package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	plan.SmallFirst:       {"small": "side", "small_thread": "M8", "large": "main", "large_thread": "", "small_hole": unit.Length(9), "large_hole": unit.Length(13.5)},
	plan.SizeByHole:       {"kinds": []string{"hole 11", "hole 6.6"}, "holes": []unit.Length{11, 6.6}},
	plan.SprungLoosen:     {},
	plan.SprungTighten:    {"turn": unit.Angle(90)},
	plan.SprungTurn:       {"kind": "cap", "turn": unit.Angle(360), "release": unit.Length(1.25), "most": unit.Length(0.5)},
	plan.SprungOut:        {"kind": "cap", "other": "cap", "rounds": 1, "least": 3, "until": "until: no spring presses", "unloaded": "loaded: no"},
	plan.UntilPressed:     {"until": "springs press", "usual": "until: no spring presses"},
	plan.UntilCut:         {"until": "no spring", "usual": "until: no spring presses"},
	plan.UntilOwn:         {"until": "the camshaft is level", "usual": "until: no spring presses"},
	plan.CapsUnstated:     {"clusters": "clusters: …", "rises": true},
	plan.CapsAllUnloaded:  {"unloaded": "loaded: no", "rises": true},
	plan.CapsSprungAlone:  {"clusters": []string{"cap 3"}, "of": 4, "unloaded": "loaded: no"},
	plan.SpringsTaken:     {"unloaded": "loaded: no"},
	plan.SpringsUnknown:   {"clusters": "clusters: …"},
	plan.SpringsAllDenied: {"unloaded": "loaded: no"},
	plan.StageFails:       {"side": "loosen", "stage": 2, "why": finding.Failed(thread.LeftHand, nil)},
})
