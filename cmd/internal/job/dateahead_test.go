package job_test

import (
	"testing"
	"time"

	"drawdown/cmd/internal/job"
	"drawdown/sequence/plan"
)

// Common practice, no source: a card is dated ahead by weeks, not by years.
func TestDatedAhead(t *testing.T) {
	t.Parallel()
	today := time.Date(2026, 11, 30, 10, 0, 0, 0, time.UTC)
	for date, want := range map[string]int{"": 0, "2026-03-14": 0, "2026-12-24": 0, "2027-11-30": 0, "2027-12-01": 1, "2062-03-14": 1, "1999-01-01": 0} {
		if got := job.DatedAhead("a.yaml", plan.Heading{Date: date}, today); len(got) != want {
			t.Errorf("%q: %v", date, got)
		}
	}
}
