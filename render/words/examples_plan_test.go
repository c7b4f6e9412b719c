package words

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/sequence/plan"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	plan.StageFails: {"side": "loosen", "stage": 2, "why": finding.Failed(thread.LeftHand, nil)},
})
