package cli

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
)

// printSurvey prints the wrong readings, the places, then what the user should
// look at.
func (p *Program) printSurvey(to io.Writer, a job.SurveyAnswer) {
	say := func(format string, args ...any) { fmt.Fprintf(to, format+"\n", args...) }
	sayAll := func(found ...finding.Finding) {
		for _, one := range found {
			say("%s%s", surveyLabels[one.Code], p.words.Say(one))
		}
	}
	say("%s: %s, %s", a.Title, counted(len(a.IDs), "hole"), counted(len(a.Readings), "reading"))
	sayAll(a.Suspects()...)
	columns := report.Columns{-14, 10, 10, 8}
	columns.Row(to, "  hole", "x mm", "y mm", "± mm")
	why := looseness(a)
	for i, id := range a.IDs {
		if why[i] == survey.Free {
			columns.Row(to, "  "+id, "-", "-", "loose")
			continue
		}
		columns.Row(to, "  "+id, hundredth(a.Points[i].X), hundredth(a.Points[i].Y), hundredth(a.ErrorsMm[i]))
	}
	sayAll(a.WayRound()...)
	sayAll(a.Agreement())
	printResiduals(to, a)
	sayAll(a.LooseHoles()...)
	sayAll(a.Doubts()...)
	if a.Offer != nil {
		say("all holes lie within %.2f mm of %s", a.Offer.OffMm, a.Offer.Words())
	}
}

// surveyLabels stand before what has to be looked at.
var surveyLabels = map[finding.Code]string{
	survey.WrongReading: "wrong: ", survey.Free: "not fixed: ", survey.Weak: "not fixed: ", survey.TwoPlaces: "not fixed: ",
	survey.MirrorFits: "not told apart: ",
}

// hundredth writes millimetres.
func hundredth(mm float64) string { return fmt.Sprintf("%.2f", tidy(mm)) }

// tidy takes the sign off a zero.
func tidy(v float64) float64 {
	if math.Abs(v) < 0.005 {
		return 0
	}
	return v
}

func looseness(a job.SurveyAnswer) map[int]finding.Code {
	why := map[int]finding.Code{}
	for _, l := range a.Loose {
		why[l.Hole] = l.Why
	}
	return why
}

// printResiduals prints the readings that are furthest out.
func printResiduals(to io.Writer, a job.SurveyAnswer) {
	const shown = 3
	var order []int
	for i := range a.Residuals {
		if !a.Out[i] && !slices.Contains(a.Solution.Unchecked, i) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, k int) int { return cmp.Compare(math.Abs(a.Residuals[k]), math.Abs(a.Residuals[i])) })
	if len(order) > 0 {
		fmt.Fprintln(to, "furthest out, what was read less what fits best:")
	}
	for _, i := range order[:min(len(order), shown)] {
		r := a.Readings[i]
		fmt.Fprintf(to, "  %-12s %+.2f mm\n", a.IDs[r.From]+" to "+a.IDs[r.To], a.Residuals[i])
	}
}
