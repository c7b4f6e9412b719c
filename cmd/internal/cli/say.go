package cli

import (
	"drawdown/patterns/problem"
	"drawdown/render/words"
)

// said gives problems in words.
func said(problems problem.List) problem.List {
	return problems.Worded(words.English().What, words.English().Allowed)
}

// saidError gives the words of an error.
func saidError(err error) string { return words.English().Error(err) }
