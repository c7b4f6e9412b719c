package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/exercise"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	exercise.HowMany:      {"count": 99, "most": exercise.Most},
	exercise.OrderDeparts: {"usable": true, "why": "M8 appears twice, at steps 2 and 3"},
})
