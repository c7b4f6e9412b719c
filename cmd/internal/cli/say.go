package cli

import (
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render/words"
)

// said gives problems in words.
func said(problems problem.List) problem.List {
	return problems.Worded(words.English().What, words.English().Allowed)
}

// saidAll gives findings in words, on one line.
func saidAll(found []finding.Finding) string {
	return strings.Join(words.English().SayAll(found), "; ")
}

// saidError gives the words of an error.
func saidError(err error) string { return words.English().Error(err) }
