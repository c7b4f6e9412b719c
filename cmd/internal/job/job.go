// Package job is the pipeline from a pattern to its papers, each stage named
// in turn. The command line and the page both call it.
package job

import (
	"errors"
	"io"
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/condition"
	"drawdown/render/sheet/drawing"
	"drawdown/render/sheet/tray"
	"drawdown/sequence"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
)

// Load reads a pattern (a built-in name, a path, or - for stdin) and plans the
// work. A way or turn that is not empty goes before the file's own. The
// problems are those of the file, and what its figures leave in doubt; where
// they stop the work the plan is empty.
// The error is for a pattern that could not be read at all.
func Load(name string, stdin io.Reader, way sequence.Way, turn sequence.Turn) (plan.Plan, problem.List, error) {
	source, err := patterns.Open(name, stdin)
	if err != nil {
		return plan.Plan{}, nil, err
	}
	p, problems := planned(source, way, turn)
	return p, problems, nil
}

// planned reads a pattern that is open and plans the work.
func planned(from source.Source, way sequence.Way, turn sequence.Turn) (plan.Plan, problem.List) {
	from.Printable = font.Missing
	input, places, problems := meaning.Read(from)
	if problems.Stops() {
		return plan.Plan{}, problems
	}
	input.Way, input.Turn = way, turn
	p, err := plan.Build(input)
	if err != nil {
		problems = append(problems, stopped(err, places))
	}
	for _, f := range p.Figures {
		if f.Severity == finding.Warning {
			problems = append(problems, placed(f, places))
		}
	}
	problems.Sort()
	return p, problems
}

// Card draws a plan's card, one side of it or both, in every format asked for.
// The notes tell what found no room on the paper. Nothing is written to disk.
func Card(p plan.Plan, side card.Sides, ask Printing) (files []render.File, notes []string, err error) {
	document, notes := card.Document(p, side, ask.Request)
	files, err = ask.files(document, p.Name, dated(p.Date))
	return files, notes, err
}

// Condition draws the sheet on which the state of a plan's fasteners is noted.
// The notes tell what found no room.
func Condition(p plan.Plan, ask Printing) (files []render.File, notes []string, err error) {
	document, notes := condition.Document(p, ask.Request)
	files, err = ask.filesOf(document, p.Name, "condition", dated(p.Date))
	return files, notes, err
}

// Tray draws the full-size sheets to lay a plan's fasteners on. The notes tell
// what found no room; the error, that they would be too many.
func Tray(p plan.Plan, underside, onePage bool, ask Printing) (files []render.File, notes []string, err error) {
	document, notes, err := tray.Document(p, tray.Style{Underside: underside, OnePage: onePage}, ask.Request)
	if err != nil {
		return nil, notes, err
	}
	files, err = ask.filesOf(document, p.Name, "tray", dated(p.Date))
	return files, notes, err
}

// CheckDrawing draws a plan's places plainly, reduced or at their true size. The
// notes tell what found no room; the error, that the sheets would be too many.
func CheckDrawing(p plan.Plan, actualSize bool, ask Printing) (files []render.File, notes []string, err error) {
	document, notes, err := drawing.Document(p, actualSize, ask.Request)
	if err != nil {
		return nil, notes, err
	}
	files, err = ask.filesOf(document, p.Name, "check", dated(p.Date))
	return files, notes, err
}

// dated gives the date that a file states; the zero time where it states none.
func dated(date string) time.Time {
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return time.Time{}
	}
	return day
}

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
