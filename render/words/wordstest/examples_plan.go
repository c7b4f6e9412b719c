package wordstest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/sequence/plan"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	plan.SmallFirst: {"small": "side", "small_thread": "M8", "large": "main", "large_thread": "M12"},
	plan.StageFails: {"side": "loosen", "stage": 2, "why": finding.Failed(thread.LeftHand, nil)},
})
