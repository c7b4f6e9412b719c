package job

import (
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// DateAhead means that a file is dated long after today: a slip of the pen.
const DateAhead finding.Code = "date ahead" // date, today

// DatedAhead warns of a date more than a year after today. Drawings do not
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
