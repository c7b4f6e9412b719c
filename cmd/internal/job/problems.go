package job

import (
	"errors"

	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/sequence/figures"
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

// placed reports what a figure comes to at its stage, or at its kind.
func placed(f finding.Finding, places meaning.Places) problem.Problem {
	at := places.Kind(f.At.Kind)
	if f.At.Stage > 0 {
		at = places.Stage(f.At.Stage)
	}
	found := figures.Placed(f)
	at.Severity, at.Found = problem.Warning, &found
	return at
}
