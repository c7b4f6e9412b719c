package teardown

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// lid is a joint with four single-use bolts.
func lid() plan.Plan {
	p := plan.Plan{Kinds: []plan.Kind{{Name: "main", Reuse: plan.ReuseOnce}}}
	p.Name, p.Title, p.Fingerprint = "lid", "Lid", "7c1e 90b4"
	for i := range 4 {
		p.Joint.Fasteners = append(p.Joint.Fasteners, geometry.Fastener{ID: fmt.Sprint("A", i+1), Kind: "main"})
	}
	return p
}

// pump is a machine with a joint between notes and parts.
func pump() Work {
	p := lid()
	o := overhaul.Overhaul{Tasks: []overhaul.Task{
		{Note: "drain the oil", Side: plan.CautionLoosen, Warns: true},
		{Joint: &p, Gaskets: []string{"lid gasket"}, Sealant: "none"},
		{Part: "rotor", Loosen: "level", Tighten: "oil the bearing"},
		{Part: "seal"},
	}}
	o.Title, o.Machine, o.Fingerprint = "Overhaul", "Test pump", "1111 2222"
	return OfMachine("pump", o, nil)
}

var began = time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)

func entry(id string, act run.Act, step int, of string) run.Entry {
	return run.Entry{ID: id, Act: act, Step: step, Of: of, Who: "RA", Time: began}
}

// First principles: the uppermost part goes on last. A note for one side is
// only in the list of that side.
func TestListsRunBothWays(t *testing.T) {
	w := pump()
	got := [][]string{{}, {}}
	for i, list := range [][]Line{w.Teardown, w.Rebuild} {
		for _, l := range list {
			got[i] = append(got[i], fmt.Sprint(l.Number, " ", l.Joint, l.Part, l.Note, l.Remark, l.Caution))
		}
	}
	want := [][]string{
		{"1 drain the oiltrue", "2 lidfalse", "3 rotorlevelfalse", "4 sealfalse"},
		{"5 sealfalse", "6 rotoroil the bearingfalse", "7 lidfalse"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	one := OfJoint("lid", lid(), nil)
	if len(one.Teardown) != 1 || len(one.Rebuild) != 1 || one.Teardown[0].Number != 1 || one.Rebuild[0].Number != 2 || one.Rebuild[0].Fasteners != 4 {
		t.Errorf("%+v", one)
	}
}

// The record stores a job as JSON.
func TestWorkIsKeptWhole(t *testing.T) {
	w := pump()
	w.Warnings = run.Findings{finding.Warned(plan.GasketNotJudged, finding.Values{"kind": "paper"})}
	text, err := json.Marshal(w)
	if err != nil {
		t.Fatal(err)
	}
	var again Work
	if err := json.Unmarshal(text, &again); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(w, again); diff != "" {
		t.Error(diff)
	}
}

// Each rule refuses what it is meant to, and a refused entry changes nothing.
func TestRulesOfAJob(t *testing.T) {
	open, sealed := []RunFact{{Run: "R1", Status: run.Open}}, []RunFact{{Run: "R1", Status: run.Sealed}, {Run: "R2", Status: run.Voided}}
	note := entry("n", run.Part, 3, "")
	note.Note = "the oil was drained already"
	for name, test := range map[string]struct {
		before []run.Entry
		take   run.Entry
		runs   []RunFact
		want   finding.Code // empty: it is accepted
	}{
		"the first part":           {nil, entry("a", run.Part, 1, ""), nil, ""},
		"the second part":          {nil, entry("a", run.Part, 3, ""), nil, PartOutOfOrder},
		"with a reason":            {nil, note, nil, ""},
		"the rebuild has its own":  {nil, entry("a", run.Part, 5, ""), nil, ""},
		"and its order":            {nil, entry("a", run.Part, 6, ""), nil, PartOutOfOrder},
		"a joint is no part":       {nil, entry("a", run.Part, 2, ""), nil, NoPartStep},
		"no such part":             {nil, entry("a", run.Part, 8, ""), nil, NoPartStep},
		"a part twice":             {[]run.Entry{entry("a", run.Part, 1, "")}, entry("b", run.Part, 1, ""), nil, PartDone},
		"an act of a run":          {nil, entry("a", run.Done, 1, ""), nil, ActOfARun},
		"taken back":               {[]run.Entry{entry("a", run.Part, 1, "")}, entry("b", run.Undo, 0, "a"), nil, ""},
		"of nothing":               {nil, entry("b", run.Undo, 0, "a"), nil, NoSuchEntry},
		"twice":                    {[]run.Entry{entry("a", run.Part, 1, ""), entry("b", run.Undo, 0, "a")}, entry("c", run.Undo, 0, "a"), nil, UndoneAlready},
		"under a later one":        {[]run.Entry{entry("a", run.Part, 1, ""), entry("b", run.Part, 3, "")}, entry("c", run.Undo, 0, "a"), nil, LaterPartDone},
		"its later one taken back": {[]run.Entry{entry("a", run.Part, 1, ""), entry("b", run.Part, 3, ""), entry("u", run.Undo, 0, "b")}, entry("c", run.Undo, 0, "a"), nil, ""},
		"a part taken back":        {[]run.Entry{entry("a", run.Part, 1, ""), entry("u", run.Undo, 0, "a")}, entry("c", run.Part, 1, ""), nil, ""},
		"what was ready":           {[]run.Entry{entry("a", run.Ready, 0, ""), entry("b", run.Part, 1, "")}, entry("c", run.Undo, 0, "a"), nil, ""},
		"beside the rebuild":       {[]run.Entry{entry("a", run.Part, 1, ""), entry("b", run.Part, 5, "")}, entry("c", run.Undo, 0, "a"), nil, ""},
		"what was said stays":      {[]run.Entry{entry("a", run.Remark, 0, "")}, entry("c", run.Undo, 0, "a"), nil, NotUndone},
		"closed under an open run": {nil, entry("a", run.Close, 0, ""), open, RunsOpen},
		"closed":                   {nil, entry("a", run.Close, 0, ""), sealed, ""},
		"a closed job":             {[]run.Entry{entry("a", run.Close, 0, "")}, entry("b", run.Remark, 0, ""), nil, JobClosed},
		"a correction of it":       {[]run.Entry{entry("a", run.Close, 0, "")}, entry("b", run.Correct, 0, "a"), nil, ""},
		"a correction of nothing":  {nil, entry("b", run.Correct, 0, "a"), nil, NoSuchEntry},
		"somebody has to say it":   {nil, run.Entry{ID: "a", Act: run.Remark}, nil, run.FieldMissing},
		"a revision that is newer": {nil, run.Entry{ID: "a", Act: run.Adopt, Who: "RA", Revision: &run.Revision{}}, nil, ""},
		"nothing newer":            {nil, entry("a", run.Adopt, 0, ""), nil, NothingNewer},
	} {
		if needsNote := test.take.Act == run.Remark || test.take.Act == run.Correct; needsNote && test.take.Who != "" {
			test.take.Note = "x"
		}
		s := pump().Replay(test.before)
		refusal := s.Take(test.take, test.runs)
		switch {
		case test.want == "" && refusal != nil:
			t.Errorf("%s: %v", name, refusal)
		case test.want != "" && (refusal == nil || !errors.Is(refusal, test.want)):
			t.Errorf("%s: %v, want %s", name, refusal, test.want)
		case test.want != "" && s.Version() != len(test.before):
			t.Errorf("%s: a refused entry counts", name)
		}
	}
}

// The state of a joint is that of its latest valid run.
func TestJointsFollowTheirRuns(t *testing.T) {
	s := pump().Start()
	for name, test := range map[string]struct {
		runs []RunFact
		want Progress
	}{
		"none":            {nil, ToDo},
		"open":            {[]RunFact{{Of: "lid", Direction: run.Loosen, Status: run.Open}}, Underway},
		"sealed":          {[]RunFact{{Of: "lid", Direction: run.Loosen, Status: run.Sealed}}, IsDone},
		"void":            {[]RunFact{{Of: "lid", Direction: run.Loosen, Status: run.Voided}}, ToDo},
		"the other way":   {[]RunFact{{Of: "lid", Direction: run.Tighten, Status: run.Sealed}}, ToDo},
		"another joint":   {[]RunFact{{Of: "head", Direction: run.Loosen, Status: run.Sealed}}, ToDo},
		"a later check":   {[]RunFact{{Of: "lid", Direction: run.Loosen, Status: run.Open, Again: "R1"}}, ToDo},
		"void, then open": {[]RunFact{{Of: "lid", Direction: run.Loosen, Status: run.Voided}, {Of: "lid", Direction: run.Loosen, Status: run.Open}}, Underway},
	} {
		if got := s.View(test.runs, nil).Teardown[1].State; got != test.want {
			t.Errorf("%s: %s, want %s", name, got, test.want)
		}
	}
}

// A job shows who closed it, the run of each joint, and what goes on its faces.
func TestWhatAJobShows(t *testing.T) {
	w := pump()
	if j := w.Joints[0]; len(j.Sealants) != 1 || j.Sealants[0] != "none" || len(j.Gaskets) != 1 {
		t.Errorf("%+v", j)
	}
	shut := entry("c", run.Close, 0, "")
	shut.Who, shut.Note = "lead", "handed over"
	s := w.Replay([]run.Entry{entry("a", run.Part, 1, ""), shut})
	v := s.View([]RunFact{{Run: "R1", Of: "lid", Direction: run.Loosen, Status: run.Voided}, {Run: "R2", Of: "lid", Direction: run.Loosen, Status: run.Sealed}}, nil)
	if v.Status != Closed || v.ClosedBy == nil || v.ClosedBy.By != "lead" || v.ClosedBy.Note != "handed over" || !v.ClosedBy.At.Equal(began) || v.ClosedBy.Entry != "c" {
		t.Errorf("%s by %+v", v.Status, v.ClosedBy)
	}
	if first := v.Teardown[0]; first.State != IsDone || first.By != "RA" || !first.At.Equal(began) {
		t.Errorf("the first part: %+v", first)
	}
	if v.Teardown[1].Run != "R2" || v.Rebuild[2].Run != "" || v.Teardown[2].State != ToDo {
		t.Errorf("the joint's run is %q, in the rebuild %q", v.Teardown[1].Run, v.Rebuild[2].Run)
	}
	if open := w.Start().View(nil, nil); open.Status == Closed || open.ClosedBy != nil {
		t.Errorf("an open job: %s by %+v", open.Status, open.ClosedBy)
	}
}

// Four single-use bolts, and what was condemned, must be ready; an entry of the
// job records that they are.
func TestWhatMustBeReady(t *testing.T) {
	w := pump()
	broken := run.Condemned{ID: "A2", Kind: "main", Trouble: run.Broken, Mark: run.Mark{At: began}}
	needs := w.JointNeeds("lid", []run.Condemned{broken}, nil)
	if len(needs) != 2 || needs[0].Count != 4 || needs[0].Ready != 0 || needs[1].ID != "A2" || needs[1].Joint != "lid" {
		t.Fatalf("%+v", needs)
	}
	all := entry("r", run.Ready, 0, "")
	all.Time = began.Add(time.Minute)
	s := w.Replay([]run.Entry{all})
	for _, n := range w.JointNeeds("lid", []run.Condemned{broken}, s.Ready()) {
		if !n.Met() {
			t.Errorf("%+v is not ready", n)
		}
	}
	s = w.Replay([]run.Entry{all, entry("u", run.Undo, 0, "r")})
	if len(s.Ready()) != 0 {
		t.Error("what was taken back is ready")
	}
}

// After any entries, replaying the accepted ones returns the same state.
func TestReplayIsWhatWasSeen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := pump().Start()
		var taken []run.Entry
		for k := range rapid.IntRange(1, 25).Draw(t, "entries") {
			e := entry(fmt.Sprint("e", k), rapid.SampledFrom(Acts).Draw(t, "act"), rapid.IntRange(0, 8).Draw(t, "step"), fmt.Sprint("e", rapid.IntRange(0, 25).Draw(t, "of")))
			e.Note = rapid.SampledFrom([]string{"", "x"}).Draw(t, "note")
			e.To = e.Note
			before := s.View(nil, nil)
			if s.Take(e, nil) == nil {
				taken = append(taken, e)
			} else if diff := cmp.Diff(before, s.View(nil, nil)); diff != "" {
				t.Fatalf("%+v was refused and changed %s", e, diff)
			}
		}
		if diff := cmp.Diff(s.View(nil, nil), pump().Replay(taken).View(nil, nil)); diff != "" {
			t.Fatal(diff)
		}
	})
}
