package wordstest

import (
	"maps"

	"drawdown/geometry/finding"
	"drawdown/render/words/inputtest"
	"drawdown/render/words/outputtest"
	"drawdown/render/words/sequencetest"
)

// Examples are values of findings as they come up, one of every code.
var Examples = examples()

func examples() map[finding.Code]finding.Values {
	all := map[finding.Code]finding.Values{}
	maps.Copy(all, inputtest.Examples)
	maps.Copy(all, sequencetest.Examples)
	maps.Copy(all, outputtest.Examples)
	return all
}
