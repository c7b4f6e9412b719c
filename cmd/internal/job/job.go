// Package job is the pipeline from a pattern to its sheets, one named stage
// after another. The command line and the bench page both call it.
//
// Its input is a built-in name, a path, or - for stdin; an error means that it
// could not be read at all. If the problems of an input stop the work, the
// result is empty. It draws in every format asked for and writes nothing to the
// disk; notes report what did not fit on the paper.
package job

import (
	"errors"
	"io"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/texts"
	"drawdown/render/font"
	"drawdown/sequence"
	"drawdown/sequence/figures"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
	"drawdown/sequence/service"
	"drawdown/sequence/stages"
)

// Load reads a pattern and plans the work. A way or turn that is not empty goes
// before the file's own. The problems are those of the file, and what its figures
// leave in doubt.
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
	r := readAndPlanned(from, way, turn)
	return r.plan, r.problems
}

// reading is a pattern that is read and planned.
type reading struct {
	input    plan.Input
	plan     plan.Plan
	places   meaning.Places
	problems problem.List
}

func readAndPlanned(from source.Source, way sequence.Way, turn sequence.Turn) reading {
	from.Printable = font.Missing
	input, places, problems := meaning.Read(from)
	if problems.Stops() {
		return reading{input, plan.Plan{}, places, acknowledged(places.Meant(), problems)}
	}
	input.Way, input.Turn = way, turn
	p, err := plan.Build(input)
	if err != nil {
		problems = append(problems, stopped(err, places))
	}
	if err == nil {
		p.Figures = append(p.Figures, service.Judge(p)...)
	}
	senseless := stages.Senseless(p)
	for i, f := range p.Figures {
		at := places.At(f.At.Kind, f.At.Stage)
		p.Figures[i].At.File, p.Figures[i].At.Line = at.File, at.Line
		if f.Severity == finding.Warning && !(f.Code == figures.TwoWrenches && finding.Has(senseless, stages.StepTooLarge)) {
			problems = append(problems, placed(f, places, figures.Placed(f)))
		}
	}
	for _, f := range senseless {
		problems = append(problems, placed(f, places, f))
	}
	problems = append(problems, textsOf(p, places)...)
	if f, found := judge.Stated(input, p); found && err == nil && !warned(problems, meaning.StarOffCircle) {
		problems = append(problems, warnedAt(places.Order(f.At.Kind), f))
	}
	problems = acknowledged(places.Meant(), problems)
	problems.SortFrom(from.File)
	return reading{input, p, places, problems}
}

// textsOf reports what the texts of a file state and the file does not.
func textsOf(p plan.Plan, places meaning.Places) (list problem.List) {
	for _, f := range texts.Title(p) {
		list = append(list, warnedAt(places.Title(), f))
	}
	for _, f := range texts.Machine(p) {
		list = append(list, warnedAt(places.Machine(), f))
	}
	for _, f := range texts.View(p) {
		list = append(list, warnedAt(places.View(), f))
	}
	for _, f := range texts.Source(p) {
		list = append(list, warnedAt(places.Source(), f))
	}
	for _, f := range texts.Notes(p) {
		list = append(list, warnedAt(places.Stage(f.At.Stage), f))
	}
	for _, f := range texts.LoosenNotes(p) {
		list = append(list, warnedAt(places.LoosenStage(f.At.Stage), f))
	}
	for i, found := range texts.Measures(p) {
		for _, f := range found {
			list = append(list, warnedAt(places.Measure(i+1), f))
		}
	}
	for i, found := range texts.Cautions(p) {
		for _, f := range found {
			list = append(list, warnedAt(places.Caution(i+1), f))
		}
	}
	return list
}

// stopped reports what stops the plan at the stage that cannot be planned, or
// for the whole file: a way that the user asked for stands nowhere in it.
func stopped(err error, places meaning.Places) problem.Problem {
	var found finding.Finding
	if !errors.As(err, &found) {
		found = finding.Failed(plan.Fails, finding.Values{"why": err})
	}
	at := places.Stage(found.At.Stage)
	at.Severity, at.Found = problem.Error, &found
	return at
}

// placed reports what was found at its stage, or at its kind, in the words of said.
func placed(f finding.Finding, places meaning.Places, said finding.Finding) problem.Problem {
	at := places.At(f.At.Kind, f.At.Stage)
	at.Severity, at.Found, at.Code = f.Severity, &said, f.Code // not that of its place
	return at
}

// warned reports whether the problems name a mistake already.
func warned(problems problem.List, code finding.Code) bool {
	return slices.ContainsFunc(problems, func(p problem.Problem) bool { return p.Found != nil && p.Found.Code == code })
}
