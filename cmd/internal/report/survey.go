package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
)

// Survey prints the wrong readings, the places, then what the user should
// check.
func (r Report) Survey(a job.SurveyAnswer) {
	r.line("", Surveyed, finding.Values{"title": a.Title, "holes": len(a.IDs), "readings": len(a.Readings)})
	r.lookAt(a.DoubtDiameters()...)
	r.lookAt(a.Suspects()...)
	columns := Columns{-14, 10, 10, 8}
	columns.Row(r.To, "  "+r.say(HoleColumn, nil), "x mm", "y mm", "± mm")
	why := looseness(a)
	for i, id := range a.IDs {
		if why[i] == survey.Free {
			columns.Row(r.To, "  "+id, "-", "-", r.say(LooseCell, nil))
			continue
		}
		columns.Row(r.To, "  "+id, r.hundredth(a.Points[i].X), r.hundredth(a.Points[i].Y), r.hundredth(a.ErrorsMm[i]))
	}
	r.lookAt(a.WayRound()...)
	r.lookAt(a.Agreement())
	r.residuals(a)
	r.lookAt(a.LooseHoles()...)
	r.lookAt(a.Doubts()...)
	if a.Offer != nil {
		r.line("", HolesNear, finding.Values{"off": unit.Length(a.Offer.OffMm), "layout": a.Offer.Named()})
	}
}

// SurveyLacks reports that holes are not fixed, so that no file is written.
func (r Report) SurveyLacks(holes int) {
	r.line("drawdown: ", NoFileMade, finding.Values{"holes": holes})
}

// labels introduce what to check.
var labels = map[finding.Code]finding.Code{
	survey.WrongReading: WrongReading, survey.MirrorFits: NotToldApart,
	survey.Free: NotFixed, survey.Weak: NotFixed, survey.Disputed: NotFixed, survey.TwoPlaces: NotFixed,
}

func (r Report) lookAt(found ...finding.Finding) {
	for _, one := range found {
		if label, ok := labels[one.Code]; ok {
			r.line("", label, finding.Values{"found": one})
		} else {
			fmt.Fprintln(r.To, r.Words.Say(one))
		}
	}
}

// hundredth writes millimetres.
func (r Report) hundredth(mm float64) string {
	return r.Words.Figure(fmt.Sprintf("%.2f", tidy(mm)))
}

// tidy removes the sign of a zero.
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

// residuals prints the readings with the largest residuals.
func (r Report) residuals(a job.SurveyAnswer) {
	const shown = 3
	var order []int
	for i := range a.Residuals {
		if !a.Out[i] && !slices.Contains(a.Solution.Unchecked, i) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, k int) int { return cmp.Compare(math.Abs(a.Residuals[k]), math.Abs(a.Residuals[i])) })
	if len(order) > 0 {
		r.line("", FurthestOut, nil)
	}
	for _, i := range order[:min(len(order), shown)] {
		fmt.Fprintf(r.To, "  %-12s %s\n", r.Words.Say(a.Reading(i)), r.Words.Figure(fmt.Sprintf("%+.2f mm", a.Residuals[i])))
	}
}
