package run_test

import (
	"testing"
	"time"

	"drawdown/sequence/run"
)

// The newest value counts, in the run itself and where the job has it: what was put
// right is no warning and is not accepted again. From first principles.
func TestNewestValueCounts(t *testing.T) {
	t.Parallel()
	leak := func(value string) run.Entry {
		return run.Entry{Act: run.Measure, Measure: "valve seat leak", Place: &run.Place{Label: "cyl 2"}, Value: run.Value(value), Unit: "%"}
	}
	loose := begin(t, run.New(builtin(t, "p4-head"), run.Loosen, nil))
	loose.takes(leak("7"))
	if v := loose.view(); len(v.Flags) != 1 || v.Readings[0].Past {
		t.Fatalf("%+v", v.Flags)
	}
	facts := run.FactsOf([]run.View{loose.view()})
	b := inJob(t, facts)
	if got := b.view().ToAccept; len(got) != 1 {
		t.Errorf("to accept: %+v", got)
	}
	better := facts.Measured[0]
	better.Entry, better.At, better.Verdict = "machine shop", better.At.Add(time.Hour), "within"
	facts.Measured = append(facts.Measured, better)
	if v := inJob(t, facts).view(); len(v.ToAccept)+len(v.Flags) != 0 {
		t.Errorf("after the machine shop: %+v, %+v", v.ToAccept, v.Flags)
	}
	loose.now = loose.now.Add(time.Hour)
	loose.takes(leak("3"))
	if v := loose.view(); len(v.Flags) != 0 || !v.Readings[0].Past || v.Readings[1].Past {
		t.Errorf("measured again: %+v, %+v", v.Flags, v.Readings)
	}
	loose.now = loose.now.Add(time.Hour)
	loose.takes(leak("9"))
	if v := loose.view(); len(v.Flags) != 1 {
		t.Errorf("worse again: %+v", v.Flags)
	}
}
