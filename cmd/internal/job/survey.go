package job

import (
	"errors"
	"io"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/measured"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/table"
	"drawdown/patterns/writing"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/sheet/readings"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// SurveyAnswer is a survey file with the results of its readings.
type SurveyAnswer struct {
	survey.Report
	Title string
	// Offer is the regular layout that the holes nearly fit; nil for none.
	Offer *writing.Layout
	// Warnings are the warnings of the report, at the lines of the readings.
	Warnings problem.List
	Pattern  render.File
}

// Survey reads a survey file and adjusts its network. The pattern is in the
// words of c.
func Survey(name string, stdin io.Reader, c *words.Catalogue) (a SurveyAnswer, problems problem.List, err error) {
	source, err := patterns.Surveys.Open(name, stdin)
	if err != nil {
		return a, nil, err
	}
	source.Printable = font.Missing
	read, problems := measured.Read(source)
	if problems.Stops() {
		return a, problems, nil
	}
	solved, err := survey.Solve(read.Network)
	var found finding.Finding
	if errors.As(err, &found) {
		return a, append(problems, problem.Problem{File: source.File, Severity: problem.Error, Found: &found}), nil
	}
	a = SurveyAnswer{Report: read.Report(solved), Title: read.Title, Offer: read.Offer(solved)}
	a.Warnings = warningsOf(a.Report, read, source.File)
	for _, doubt := range a.Side() {
		problems = append(problems, warnedAt(problem.Problem{File: source.File}, doubt))
	}
	for _, doubt := range a.DoubtAccuracy() {
		problems = append(problems, warnedAt(read.AccuracyAt, doubt))
	}
	a.Pattern = render.File{Name: read.Name + ".yaml", Data: writing.Pattern(read.Draft(solved), c.Say)}
	return a, problems, nil
}

// SurveySheet draws the sheet for the readings of a survey file: all of them
// where it has none yet, else those that it still needs.
func SurveySheet(name string, stdin io.Reader, ask Printing) (files []render.File, notes []string, problems problem.List, err error) {
	from, err := patterns.Surveys.Open(name, stdin)
	if err != nil {
		return nil, nil, nil, err
	}
	from.Printable = font.Missing
	read, problems := measured.ReadBlank(from)
	if problems.Stops() {
		return nil, nil, problems, nil
	}
	part := readings.Part{Title: read.Title, Machine: read.Machine, File: read.Name + ".yaml", IDs: read.IDs, DiametersMm: read.Network.Diameters}
	if len(read.Network.Readings) > 0 {
		solved, err := survey.Solve(read.Network)
		var found finding.Finding
		if errors.As(err, &found) {
			return nil, nil, append(problems, problem.Problem{File: from.File, Severity: problem.Error, Found: &found}), nil
		}
		part.At, part.Pairs = solved.Points, read.Report(solved).ToMeasure()
	}
	if len(part.Pairs) == 0 { // nothing was measured, or all is well: once more
		at := part.At
		if at == nil {
			at = survey.RoundTheEdge(len(read.IDs))
		}
		part.Pairs = survey.Pairs(at)
	}
	ask = ask.counting()
	document, notes := readings.Document(part, ask.Request)
	files, err = ask.files(document, read.Name, "readings", "")
	return files, notes, problems, err
}

// warningsOf returns the warnings in the report of a survey, each at its
// reading, or at the file if it is about a hole.
func warningsOf(r survey.Report, read measured.Survey, file string) (list problem.List) {
	numbers := r.SuspectReadings()
	for k, doubt := range r.Suspects() {
		list = append(list, warnedAt(read.ReadingsAt[numbers[k]], doubt))
	}
	for _, doubt := range slices.Concat(r.DoubtDiameters(), r.LooseHoles(), r.Doubts()) {
		if doubt.Severity == finding.Warning {
			list = append(list, warnedAt(problem.Problem{File: file}, doubt))
		}
	}
	return list
}

// warnedAt returns a finding as a warning at a place.
func warnedAt(at problem.Problem, found finding.Finding) problem.Problem {
	at.Severity, at.Found = found.Severity, &found
	return at
}

// Points reads a table of points, which has no built-in names.
func Points(name string, stdin io.Reader) (writing.Draft, problem.List, error) {
	from, err := source.Open(name, stdin, source.MostBytes)
	if err != nil {
		return writing.Draft{}, nil, err
	}
	from.Printable = font.Missing
	draft, problems := table.Read(from)
	return draft, problems, nil
}

// Drawing makes a pattern from a drawing, which has no built-in names either.
func Drawing(name string, stdin io.Reader, ask drawn.Options) (writing.Draft, problem.List, error) {
	source, err := drawn.Open(name, stdin)
	if err != nil {
		return writing.Draft{}, nil, err
	}
	draft, problems := drawn.Read(source, ask)
	return draft, problems, nil
}

// DrawingOf writes the places of a plan as a drawing. asPoints are the kinds
// drawn as points, because the file does not give the width of their holes.
func DrawingOf(p plan.Plan) (data []byte, asPoints []string) {
	wide := map[string]float64{}
	for _, k := range p.Kinds {
		if wide[k.Name] = float64(k.Hole); k.Hole == 0 {
			asPoints = append(asPoints, k.Name)
		}
	}
	return drawn.Write(p.Joint, wide), asPoints
}
