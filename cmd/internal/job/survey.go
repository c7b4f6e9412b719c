package job

import (
	"io"

	"drawdown/geometry"
	"drawdown/geometry/survey"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/measured"
	"drawdown/patterns/problem"
	"drawdown/patterns/table"
	"drawdown/patterns/writing"
	"drawdown/render/font"
	"drawdown/sequence/plan"
)

// SurveyAnswer is a survey file with what its readings say.
type SurveyAnswer struct {
	measured.Survey
	survey.Solution
	// Offer is the regular layout that the holes come near to; nil for none.
	Offer *writing.Layout
}

// Survey reads a survey file (a built-in name, a path, or - for stdin) and
// works its network out. Where the problems stop the work the answer is empty.
// The error is for a file that could not be read at all.
func Survey(name string, stdin io.Reader) (SurveyAnswer, problem.List, error) {
	source, err := patterns.OpenSurvey(name, stdin)
	if err != nil {
		return SurveyAnswer{}, nil, err
	}
	source.Printable = font.Missing
	read, problems := measured.Read(source)
	if problems.Stops() {
		return SurveyAnswer{}, problems, nil
	}
	solved, err := survey.Solve(read.Network)
	if err != nil {
		problems = append(problems, problem.Problem{File: source.File, Severity: problem.Error, What: err.Error()})
		return SurveyAnswer{}, problems, nil
	}
	if doubt := read.SideDoubt(solved); doubt != "" {
		problems = append(problems, problem.Problem{File: source.File, Severity: problem.Warning, What: doubt})
	}
	return SurveyAnswer{Survey: read, Solution: solved, Offer: read.Offer(solved)}, problems, nil
}

// Pattern gives the pattern file of the survey, with its name.
func (a SurveyAnswer) Pattern() (name string, data []byte) {
	return a.Name + ".yaml", writing.Pattern(a.Draft(a.Solution))
}

// Points reads a table of points (a path, or - for stdin).
func Points(name string, stdin io.Reader) (geometry.Joint, problem.List, error) {
	source, err := table.Open(name, stdin)
	if err != nil {
		return geometry.Joint{}, nil, err
	}
	source.Printable = font.Missing
	joint, problems := table.Read(source)
	return joint, problems, nil
}

// Drawing makes a pattern of a drawing (a path, or - for stdin).
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
