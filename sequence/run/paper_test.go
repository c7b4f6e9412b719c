package run_test

import (
	"errors"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// A step from paper has the day that the paper states, or none, beside the moment of
// its entry; a day without paper, one to come, or none at all is refused. From first
// principles.
func TestDayOnPaper(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	day := b.now.Format("2006-01-02")
	b.takes(run.Entry{Act: run.Done, Step: 1, Source: run.OnPaper, Day: day})
	b.takes(run.Entry{Act: run.Done, Step: 2, Source: run.OnPaper})
	b.takes(done(3))
	if st := b.step(1); st.Source != run.OnPaper || st.Day != day || st.At.IsZero() {
		t.Errorf("%+v", st)
	}
	if first, second, third := b.step(1), b.step(2), b.step(3); second.Source != run.OnPaper || second.Day != "" || third.Source != run.AtTheBench || first.Day == third.Day {
		t.Errorf("%+v %+v", second, third)
	}
	for written, want := range map[run.Entry]finding.Code{
		{Act: run.Done, Step: 4, Day: day}:                                                              run.ValueUnknown,
		{Act: run.Done, Step: 4, Day: "14.3.", Source: run.OnPaper}:                                     run.DayUnread,
		{Act: run.Done, Step: 4, Day: b.now.AddDate(0, 0, 3).Format("2006-01-02"), Source: run.OnPaper}: run.DayUnread,
	} {
		written.ID, written.Who, written.Time = "x", "RA", b.now
		if r := b.state.Take(written); r == nil || !errors.Is(r, want) {
			t.Errorf("%s: %v, want %s", written.Day, r, want)
		}
	}
}
