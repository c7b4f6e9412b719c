package machine_test

import (
	"drawdown/patterns/problem"
	"drawdown/render/words"
)

// said returns problems in English.
func said(problems problem.List) problem.List {
	return problems.Worded(words.English().What, words.English().Allowed)
}
