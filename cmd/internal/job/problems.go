package job

import (
	"errors"

	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// stopped reports what stops the plan at the stage that cannot be planned, or
// for the whole file: a way that the user asked for stands nowhere in it.
func stopped(err error, places meaning.Places) problem.Problem {
	var found finding.Finding
	if !errors.As(err, &found) {
		at := places.Stage(0)
		at.Severity, at.What = problem.Error, err.Error()
		return at
	}
	at := places.Stage(found.At.Stage)
	at.Severity, at.Found = problem.Error, &found
	return at
}

// doubted reports a doubt at its stage, or at its kind.
func doubted(d plan.Doubt, places meaning.Places) problem.Problem {
	at := places.Kind(d.Kind)
	if d.Stage > 0 {
		at = places.Stage(d.Stage)
	}
	at.Severity, at.What = problem.Warning, d.String()
	return at
}
