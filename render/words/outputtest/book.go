package outputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
)

// The codes are named in full: their packages stand above this one.
var _ = exampleOf(map[finding.Code]finding.Values{
	"book joint":          {"joint": "Cylinder head", "what": "the label \"water pump\" found no room on a5"},
	"book which machine":  {},
	"book example alone":  {"file": "p4.yaml"},
	"book tray of no use": {"joint": "Cylinder head", "why": finding.Failed("sheet most no room", finding.Values{"left": 67, "of": 100, "paper": ""})},
	"book not drawn":      {"why": finding.Failed(thread.LeftHand, nil)},
})
