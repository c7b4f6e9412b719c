package run_test

import (
	"testing"

	"drawdown/sequence/run"
)

// inJob tightens the head of the P4 in a job that knows something.
func inJob(t *testing.T, facts run.JobFacts) *bench {
	t.Helper()
	w := run.New(builtin(t, "p4-head"), run.Tighten, nil)
	w.Job = "J1"
	b := begin(t, w)
	b.state.InJob(facts)
	return b
}

// An insert has the thread of its bolt (p4-head: main bolts of M10×1.5), and only a
// settle or a replace has one. From first principles.
func TestInsertHasTheThreadOfItsBolt(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-head"), run.Loosen, nil))
	id := b.takes(run.Entry{Act: run.Report, Place: &run.Place{Fastener: "M2"}, Trouble: run.HoleThread})
	settle := run.Entry{Act: run.Settle, Of: id, Repair: run.ThreadInsert}
	b.refuses(settle, run.FieldMissing)
	settle.Thread = "M10 x 1.25"
	r := b.refuses(settle, run.ThreadDiffers)
	if v := r.Finding.Values; v["thread"] != "M10×1.5" || v["insert"] != "M10×1.25" || v["id"] != "M2" {
		t.Errorf("%+v", v)
	}
	settle.Thread = "M10 by a lot"
	if r := b.try(settle); r == nil || !r.Malformed {
		t.Errorf("%+v", r)
	}
	settle.Thread, settle.DecidedBy = "M10 x 1.5", "MT"
	b.takes(settle)
	v := b.view()
	if got := v.Repaired; len(got) != 1 || got[0].ID != "M2" || got[0].Thread != "M10×1.5" || got[0].DecidedBy != "MT" || got[0].Of != id {
		t.Errorf("%+v", got)
	}
	if f := v.Flags; len(f) != 1 || f[0].Finding.Code != run.HoleRepaired {
		t.Errorf("flagged %+v", f)
	}
}

// Whoever tightens is told once of the inserts and of the values outside their limits
// of the loosening; the broken bolt is among the ten new ones (p4-head), and the
// repaired hole needs nothing.
func TestWhatTheLooseningFound(t *testing.T) {
	t.Parallel()
	loose := begin(t, run.New(builtin(t, "p4-head"), run.Loosen, nil))
	loose.takes(run.Entry{ID: "l1", Act: run.Report, Place: &run.Place{Fastener: "M2"}, Trouble: run.Broken})
	hole := loose.takes(run.Entry{ID: "l2", Act: run.Report, Place: &run.Place{Fastener: "M2"}, Trouble: run.HoleThread})
	loose.takes(run.Entry{ID: "l3", Act: run.Settle, Of: hole, Repair: run.ThreadInsert, Thread: "M10"})
	loose.takes(run.Entry{ID: "l4", Act: run.Measure, Measure: "valve seat leak", Place: &run.Place{Label: "cyl 2"}, Value: "7", Unit: "%"})
	loose.takes(run.Entry{ID: "l5", Act: run.Measure, Measure: "valve seat leak", Place: &run.Place{Label: "cyl 1"}, Value: "3", Unit: "%"})
	facts := run.FactsOf([]run.View{loose.view()})
	b := inJob(t, facts)
	b.now = loose.now
	v := b.view()
	if len(v.ToAccept) != 2 || len(facts.Measured) != 2 {
		t.Fatalf("to accept: %+v", v.ToAccept)
	}
	same(t, []run.Need{
		{Kind: "main", Count: 10}, {Kind: run.GasketKind, Count: 1, Gasket: "multi-layer steel"},
		{Kind: "main", Count: 1, ID: "M2", Trouble: run.Broken, Among: true},
	}, v.Needs)
	b.takes(run.Entry{Act: run.Ready, Kind: "main", Value: "10"})
	b.takes(run.Entry{Act: run.Ready, Kind: run.GasketKind})
	b.refuses(done(1), run.AcceptFirst)
	b.takes(run.Entry{Act: run.Accept})
	b.takes(done(1))
	v = b.view()
	if len(v.ToAccept) != 0 || len(v.WasAccepted) != 2 || len(v.Flags) != 2 {
		t.Errorf("to accept %+v, accepted %+v, flagged %+v", v.ToAccept, v.WasAccepted, v.Flags)
	}
	voided := loose.view()
	voided.Status = run.Voided
	if facts := run.FactsOf([]run.View{voided}); len(facts.Measured)+len(facts.Repaired)+len(facts.Condemned) > 0 {
		t.Errorf("of a void run: %+v", facts)
	}
}

// What the lead looks at first: a wait and steps that were left out, a gasket that
// nobody reported, angles without a gauge. From first principles.
func TestWhatIsFlagged(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-pump-flange"), run.Tighten, nil))
	b.doNext()
	for b.next() > 0 {
		if st := b.step(b.next()); len(st.IDs) == 0 || st.ID == "S3" {
			b.takes(run.Entry{Act: run.LeaveOut, Step: st.Number, Note: "no time"})
		} else {
			b.doNext()
		}
	}
	count := map[any]int{}
	for _, f := range b.view().Flags {
		count[f.Finding.Code]++
		if n, ok := f.Finding.Values["steps"]; ok && n != 5 { // the torques of five stages
			t.Errorf("%v steps left out", n)
		}
	}
	if count[run.WaitLeftOut] != 1 || count[run.StepsLeftOut] != 1 || count[run.GasketNotSaid] != 1 || len(count) != 3 {
		t.Errorf("flagged %+v", count)
	}
}

// A hand over says which step comes next; what was met and what was fitted stand
// among the steps.
func TestWhatStandsAmongTheSteps(t *testing.T) {
	t.Parallel()
	b := inJob(t, run.JobFacts{})
	b.takes(run.Entry{Act: run.Ready})
	for range 22 {
		b.doNext()
	}
	b.takes(run.Entry{Act: run.HandOver, To: "KB"})
	b.takes(run.Entry{Act: run.Unsure, Step: 23})
	b.takes(run.Entry{Act: run.Replace, Step: 23, Note: "slipped", DecidedBy: "MT"})
	for range 3 {
		b.doNext()
	}
	v := b.view()
	if got := v.HandOvers[0].NextStep; got != 23 {
		t.Errorf("next is %d", got)
	}
	var got []string
	for _, st := range v.AsDone()[22:27] {
		switch {
		case st.Met != nil:
			got = append(got, "met")
		case st.Fresh != nil:
			got = append(got, "new")
		default:
			got = append(got, st.Figure)
		}
	}
	same(t, []string{"met", "new", "20 N·m", "40 N·m", "90°"}, got)
	if n := v.Needs[len(v.Needs)-1]; !n.Met() || n.ID != "M9" || n.Trouble != "" {
		t.Errorf("the bolt that was used beside the ten: %+v", v.Needs)
	}
}
