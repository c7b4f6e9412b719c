package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/run/teardown"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	teardown.ActOfARun:      {"act": "done", "allowed": []string{"part", "close"}},
	teardown.JobClosed:      {},
	teardown.NoPartStep:     {"step": 4},
	teardown.PartDone:       {"step": 4},
	teardown.PartOutOfOrder: {"step": 4, "next": 2},
	teardown.NoSuchEntry:    {"of": "a1"},
	teardown.UndoneAlready:  {},
	teardown.NotUndone:      {"act": "note"},
	teardown.LaterPartDone:  {"step": 4},
	teardown.NothingNewer:   {},
	teardown.NoSuchJoint:    {"joint": "p4-haed", "allowed": []string{"p4-head", "p4-sump"}},
	teardown.NoSuchPlace:    {"place": "T9", "joint": "p4-cam-caps"},
	teardown.WhichJoint:     {"place": "M1", "what": "bolt length", "allowed": []string{"p4-head", "p4-sump"}},
	teardown.PartFitted:     {"part": "cylinder head"},
	teardown.PartOut:        {"part": "cylinder head", "to": "Milltown Grinding"},
	teardown.NotSentOut:     {},
	teardown.PartsOut:       {"parts": []string{"cylinder head", "crankshaft"}},
	teardown.RunsOpen:       {"runs": []string{"R1", "R2"}},
})
