package job

import (
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/wrench"
)

// DateAhead is of a file that is dated long after today: a slip of the pen.
const DateAhead finding.Code = "date ahead" // date, today

// DatedAhead warns of a date more than a year after today. What is drawn does not
// depend on it: the plan never sees the clock.
func DatedAhead(file string, h plan.Heading, today time.Time) problem.List {
	date, err := time.Parse(time.DateOnly, h.Date)
	if err != nil || !date.After(today.AddDate(1, 0, 0)) {
		return nil
	}
	one := problem.Of(finding.Warned(DateAhead, finding.Values{"date": h.Date, "today": today.Format(time.DateOnly)}))
	one.File = file
	return problem.List{one}
}

// CalibratedAhead is of a wrench that is calibrated tomorrow or later.
const CalibratedAhead finding.Code = "wrench calibrated ahead" // name, date, today

func calibratedAhead(file string, list []wrench.Wrench, today time.Time) (problems problem.List) {
	for _, w := range list {
		date, err := time.Parse(time.DateOnly, w.Calibrated)
		if err != nil || !date.After(today.AddDate(0, 0, 1)) {
			continue
		}
		one := problem.Of(finding.Warned(CalibratedAhead, finding.Values{"name": w.Name, "date": w.Calibrated, "today": today.Format(time.DateOnly)}))
		one.File = file
		problems = append(problems, one)
	}
	return problems
}
