package run_test

import (
	"errors"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
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

// A tap that was held on a device keeps the time at which it was tapped, by the clock of
// the device; one that came at once, or of a device with a wrong date, does not. From
// first principles.
func TestTappedBeforeItCame(t *testing.T) {
	came := time.Date(2026, 11, 30, 20, 25, 37, 0, time.UTC)
	for written, late := range map[string]bool{
		"2026-11-30T20:25:24.500Z": true, "2026-11-30T21:25:24+01:00": true,
		"2026-11-30T20:25:36Z": false, "2026-11-28T20:25:24Z": false, "2026-11-30T20:26:00Z": false, "": false, "today": false,
	} {
		w := run.Work{Of: "lid", Direction: run.Loosen, Steps: []run.Step{{Number: 1, Stage: 1, Round: 1, IDs: []string{"A1"}, ID: "A1", Do: plan.Remove}}, Fasteners: []run.Fastener{{ID: "A1"}}}
		s := w.Replay([]run.Entry{{ID: "d", Act: run.Done, Step: 1, Who: "RA", Time: came, DeviceTime: written}})
		if st := s.At(came).Steps[0]; st.Tapped.IsZero() == late || !st.At.Equal(came) {
			t.Errorf("%q: tapped %v, taken %v", written, st.Tapped, st.At)
		}
	}
}
