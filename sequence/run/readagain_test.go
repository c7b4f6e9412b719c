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
	if v := loose.view().Since(facts.Measured); len(v.Flags) != 0 || !v.Readings[0].Past || len(loose.view().Flags) != 1 {
		t.Errorf("with what was read since: %+v", v.Flags)
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

// Of a newer revision only what differs is named, by its stage; where stages were added
// it is all of it. From first principles.
func TestPartsOfAChange(t *testing.T) {
	t.Parallel()
	before := "B3,B8; bolt 30 N·m; bolt 60 N·m"
	change := func(what run.Changed, after string) []run.ChangedPart {
		return run.Difference{What: what, Before: before, After: after}.Parts()
	}
	same(t, []run.ChangedPart{{Stage: 2, Before: "bolt 60 N·m", After: "bolt 58 N·m"}}, change(run.ChangedTighten, "B3,B8; bolt 30 N·m; bolt 58 N·m"))
	same(t, []run.ChangedPart{{Before: "B3,B8", After: "B8,B3"}}, change(run.ChangedLoosen, "B8,B3; bolt 30 N·m; bolt 60 N·m"))
	same(t, []run.ChangedPart{{Before: before, After: "B3,B8; bolt 30 N·m"}}, change(run.ChangedTighten, "B3,B8; bolt 30 N·m"))
}
