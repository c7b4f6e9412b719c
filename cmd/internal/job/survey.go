package job

import (
	"errors"
	"io"

	"drawdown/geometry"
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
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// SurveyAnswer is a survey file with what its readings say.
type SurveyAnswer struct {
	survey.Report
	Title string
	// Offer is the regular layout that the holes come near to; nil for none.
	Offer   *writing.Layout
	Pattern render.File
}

// Survey reads a survey file and works its network out. The pattern is in the
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
	for _, doubt := range a.Side() {
		problems = append(problems, problem.Problem{File: source.File, Severity: problem.Warning, Found: &doubt})
	}
	a.Pattern = render.File{Name: read.Name + ".yaml", Data: writing.Pattern(read.Draft(solved), c.Say)}
	return a, problems, nil
}

// doubtsOf gives what the readings of a file leave in doubt. Holes that they do
// not locate make no pattern.
func (a SurveyAnswer) doubtsOf(file string) (problems problem.List) {
	add := func(severity finding.Severity, all []finding.Finding) {
		for _, one := range all {
			if one.Severity != finding.Note {
				problems = append(problems, problem.Problem{File: file, Severity: severity, Found: &one})
			}
		}
	}
	add(problem.Warning, a.Suspects())
	add(problem.Error, a.LooseHoles())
	add(problem.Warning, a.Doubts())
	return problems
}

// Points reads a table of points, which has no built-in names.
func Points(name string, stdin io.Reader) (geometry.Joint, problem.List, error) {
	from, err := source.Open(name, stdin, source.MostBytes)
	if err != nil {
		return geometry.Joint{}, nil, err
	}
	from.Printable = font.Missing
	joint, problems := table.Read(from)
	return joint, problems, nil
}

// Drawing makes a pattern of a drawing, which has none either.
func Drawing(name string, stdin io.Reader, ask drawn.Options) (writing.Draft, problem.List, error) {
	source, err := drawn.Open(name, stdin)
	if err != nil {
		return writing.Draft{}, nil, err
	}
	draft, problems := drawn.Read(source, ask)
	return draft, problems, nil
}

// DrawingOf writes the places of a plan as a drawing. The kinds are those that
// are drawn as points, because the file does not say how wide their holes are.
func DrawingOf(p plan.Plan) (data []byte, asPoints []string) {
	wide := map[string]float64{}
	for _, k := range p.Kinds {
		if wide[k.Name] = float64(k.Hole); k.Hole == 0 {
			asPoints = append(asPoints, k.Name)
		}
	}
	return drawn.Write(p.Joint, wide), asPoints
}
