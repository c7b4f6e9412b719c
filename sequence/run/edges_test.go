package run_test

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

func TestLeftOutStepIsNotDone(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	out := b.takes(run.Entry{Act: run.LeaveOut, Step: 1, Who: "lead", Note: "bolt is short"})
	at := b.now
	b.by(b.refuses(done(1), run.StepLeftOut), "lead", at)
	b.by(b.refuses(run.Entry{Act: run.LeaveOut, Step: 1, Note: "n"}, run.StepLeftOut), "lead", at)
	if got := b.step(1); got.State != run.LeftOut || got.Reason != "bolt is short" || got.By != "lead" || b.next() != 2 {
		t.Errorf("%+v, next %d", got, b.next())
	}
	for step := 2; step <= 8; step++ {
		b.takes(done(step))
	}
	b.refuses(run.Entry{Act: run.Undo, Of: out}, run.LaterStepDone)
	b.takes(run.Entry{Act: run.LeaveOut, Step: 9, Note: "n"})
	b.refuses(run.Entry{Act: run.Unsure, Step: 9}, run.StepLeftOut)
	b.refuses(run.Entry{Act: run.LeaveOut, Step: 5, Note: "n"}, run.StepDone)
	b.takes(done(10))
	b.refuses(run.Entry{Act: run.LeaveOut, Step: 10, Note: "n"}, run.StepDone) // nobody is asked whether they turned it
}

func TestTroublesThatWereDealtWith(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	wrong := b.takes(trouble(1, run.Seized))
	b.takes(run.Entry{Act: run.Undo, Of: wrong})
	b.refuses(run.Entry{Act: run.Settle, Of: wrong, Note: "n"}, run.UndoneAlready)
	right := b.takes(trouble(1, run.Seized))
	b.takes(run.Entry{Act: run.Settle, Of: right, Who: "lead", Note: "n"})
	b.by(b.refuses(run.Entry{Act: run.Undo, Of: right}, run.SettledAlready), "lead", b.now.Add(-time.Minute))
	b.takes(trouble(1, run.Seized)) // it can seize again
	b.takes(trouble(1, run.BoltThread))
	b.takes(trouble(2, run.Seized))
	b.refuses(run.Entry{Act: run.Report, Place: &run.Place{Fastener: "B1"}, Trouble: run.Seized}, run.TroubleAlready)
}

// A trouble at a fastener is about the step that comes next on it, else its last.
func TestTroubleAtAPlace(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(4)
	b.takes(run.Entry{Act: run.Report, Place: &run.Place{Fastener: "B1"}, Trouble: run.Seized})
	if got := b.view().Troubles[0]; got.Step != 5 || !slices.Equal(got.IDs, []string{"B1"}) {
		t.Errorf("%+v", got)
	}
	b = tightening(t)
	b.all()
	b.takes(run.Entry{Act: run.Report, Place: &run.Place{Fastener: "B1"}, Trouble: run.Stretched})
	if got := b.step(9).State; got != run.InTrouble {
		t.Errorf("the last step of B1 is %s", got)
	}
	b.refuses(run.Entry{Act: run.Seal, Wrench: "W7"}, run.SealTroubles)
	b.takes(run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "B1"}})
	for _, step := range []int{16, 20, 24} {
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		b.takes(done(step))
	}
	b.takes(run.Entry{Act: run.Seal, Wrench: "W7"})
}

// A trouble while waiting is on no fastener and holds the wait.
func TestTroubleAtAWait(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(12)
	id := b.takes(trouble(13, run.OtherTrouble))
	b.refuses(run.Entry{Act: run.Begin, Step: 13}, run.FastenerBlocked)
	if b.next() != 14 {
		t.Errorf("next %d, want 14", b.next())
	}
	b.takes(run.Entry{Act: run.Settle, Of: id, Note: "n"})
	b.takes(run.Entry{Act: run.Begin, Step: 13})
	b.takes(run.Entry{Act: run.Undo, Of: b.taken[len(b.taken)-1].ID})
	if got := b.step(13); got.State != run.ToDo || !got.Ends.IsZero() {
		t.Errorf("%+v", got)
	}
	again := b.takes(run.Entry{Act: run.Begin, Step: 13})
	b.now = b.now.Add(10 * time.Minute)
	b.takes(done(13)) // said once more, when it is over
	b.takes(done(14))
	b.refuses(run.Entry{Act: run.Undo, Of: again}, run.LaterStepDone)
	b.refuses(done(13), run.StepDone)
}

// The step that was left out on the old fastener is there again for the new one.
func TestReplaceRepeatsWhatWasLeftOut(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.takes(run.Entry{Act: run.LeaveOut, Step: 1, Note: "no socket"})
	for step := 2; step <= 5; step++ {
		b.takes(done(step))
	}
	b.takes(run.Entry{Act: run.Replace, Step: 5})
	for _, step := range []int{16, 20, 6} {
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		b.takes(done(step))
	}
}

// Of fasteners worked at once, the new one alone starts again.
func TestReplaceOneOfSeveral(t *testing.T) {
	t.Parallel()
	b := begin(t, atOnce(run.New(planText(t, made), run.Tighten, nil)))
	b.doneUpTo(3) // B1 with B4, B2 with B3, at 20 N·m; B1 with B4 at 40 N·m
	b.refuses(run.Entry{Act: run.Replace, Step: 3}, run.StepNeedsName)
	b.refuses(trouble(3, run.Broken), run.StepNeedsName)
	b.takes(run.Entry{Act: run.Replace, Step: 3, Place: &run.Place{Fastener: "B4"}})
	planned := len(b.work.Steps)
	for _, step := range []int{1 + planned, 3 + planned, 4} {
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		if got := b.step(step); step > planned && !slices.Equal(got.IDs, []string{"B4"}) || got.Old {
			t.Errorf("%+v", got)
		}
		b.takes(done(step))
	}
}

func TestSentTwiceWithAnotherPlace(t *testing.T) {
	t.Parallel()
	at := func(x float64) *run.Place { return &run.Place{At: &[2]float64{x, 0}} }
	places := []*run.Place{nil, {Fastener: "B1"}, {Fastener: "B2"}, {Station: "T1"}, at(1), at(2)}
	for i, first := range places {
		for j, second := range places {
			b := tightening(t)
			b.takes(run.Entry{ID: "a", Act: run.Find, Note: "n", Place: first})
			if r := b.try(run.Entry{ID: "a", Act: run.Find, Note: "n", Place: second}); (r == nil) != (i == j) {
				t.Errorf("%+v, then %+v: %v", first, second, r)
			}
		}
	}
}

func TestReadyIsCounted(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	for _, c := range []struct {
		value run.Value
		want  int
	}{{"1", 1}, {"-3", 1}, {"2", 3}, {"5", 4}, {"1e300", 4}} {
		b.takes(run.Entry{Act: run.Ready, Kind: "bolt", Value: c.value})
		if got := b.view().Needs[0].Ready; got != c.want {
			t.Errorf("after %s more: %d ready, want %d", c.value, got, c.want)
		}
	}
	b = tightening(t)
	b.takes(run.Entry{Act: run.Ready, Kind: "stud"})
	if got := b.view().Needs[0].Ready; got != 0 {
		t.Errorf("studs count as %d bolts", got)
	}
	b.takes(run.Entry{Act: run.Ready, Kind: "bolt"})
	b.takes(trouble(1, run.Stretched))
	want := []run.Need{{Kind: "bolt", Count: 4, Ready: 4, Counted: true}, {Kind: "bolt", Count: 1, ID: "B1", Trouble: run.Stretched}}
	same(t, want, b.view().Needs)
	b.takes(run.Entry{Act: run.Ready, Place: &run.Place{Fastener: "B2"}})
	same(t, want, b.view().Needs)
	b.takes(run.Entry{Act: run.Ready, Place: &run.Place{Fastener: "B1"}})
	want[1].Ready = 1
	same(t, want, b.view().Needs)
	b.takes(run.Entry{Act: run.Replace, Step: 1})
	same(t, want, b.view().Needs) // it was used
	if v := loosening(t).view(); len(v.Needs) != 0 {
		t.Errorf("loosening needs %+v", v.Needs)
	}
}

// What another run of the job condemned is no longer needed once it is replaced.
func TestJobsCondemnedIsReplaced(t *testing.T) {
	t.Parallel()
	w := run.New(planText(t, made), run.Tighten, nil)
	w.Job = "J1"
	b := begin(t, w)
	broken := run.Condemned{ID: "B1", Kind: "bolt", Trouble: run.Broken, Mark: run.Mark{Entry: "x", At: start}}
	b.state.InJob(run.JobFacts{Condemned: []run.Condemned{broken, broken}}) // as two other runs know it
	b.takes(run.Entry{Act: run.Ready, Kind: "bolt"})
	b.takes(run.Entry{Act: run.Replace, Step: 1, Who: "lead"})
	b.takes(done(1))
	if c := b.view().Condemned; len(c) != 1 || c[0].Replaced == nil || c[0].Replaced.By != "lead" {
		t.Errorf("%+v", c)
	}
	if asks := b.view().Asks; len(asks) != 1 || asks[0].Kind != run.AskNeighbours {
		t.Errorf("in a job readiness is not asked: %+v", asks)
	}
	other := run.Condemned{ID: "B3", Kind: "bolt", Trouble: run.Broken, Mark: run.Mark{Entry: "y", At: start}}
	later := broken
	later.Mark = run.Mark{Entry: "z", At: b.now.Add(time.Hour)}
	b.state.InJob(run.JobFacts{Condemned: []run.Condemned{other, later}})
	for _, c := range b.view().Condemned { // the new B1 is no B3, and was there before it was condemned again
		if c.Replaced != nil {
			t.Errorf("%s counts as replaced by %+v", c.ID, c.Replaced)
		}
	}
}

// A seal's own wrench is looked at too, and readings that are undone are not.
func TestFlagsOfSealAndReadings(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.takes(run.Entry{Act: run.Ready})
	wrong := b.takes(run.Entry{Act: run.Done, Step: 1, Value: "30", Unit: "N·m"})
	measured := b.takes(run.Entry{Act: run.Measure, Step: 1, Value: "25", Unit: "N·m", Wrench: "W9"})
	if v := b.view(); len(v.Flags) != 3 || len(v.Readings) != 2 {
		t.Errorf("flags %+v", v.Flags)
	}
	b.takes(run.Entry{Act: run.Undo, Of: measured})
	b.takes(run.Entry{Act: run.Undo, Of: wrong})
	if v := b.view(); len(v.Flags)+len(v.Readings) != 0 {
		t.Errorf("flags %+v, readings %+v", v.Flags, v.Readings)
	}
	b.all()
	b.takes(run.Entry{Act: run.Seal, Wrench: "W7"})
	if f := b.view().Flags; len(f) != 2 || f[0].Finding.Code != run.AngleNoTool || f[1].Finding.Code != run.WrenchUnknown || f[1].Finding.Values["wrench"] != "W7" {
		t.Errorf("flags %+v", f)
	}
	if asks := b.view().Asks; len(asks) != 0 {
		t.Errorf("a sealed run asks %+v", asks)
	}
}

// A wrench named once in a stage is enough for it; stages without a torque need
// none.
func TestWrenchOfEachStage(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	for b.next() != 0 {
		step := b.step(b.next())
		if step.Do == plan.Wait {
			b.doNext()
			continue
		}
		wrench := map[int]string{2: "W7", 5: "W7", 14: "W2"}[step.Number]
		b.takes(run.Entry{Act: run.Done, Step: step.Number, Wrench: wrench})
	}
	b.takes(run.Entry{Act: run.Seal})
	loose := loosening(t)
	loose.all()
	loose.takes(run.Entry{Act: run.Seal})
}

// Findings of every sort of value survive JSON; an error of the system becomes
// the text that it prints.
func TestFindingsRoundTrip(t *testing.T) {
	t.Parallel()
	inner := finding.Failed(plan.SmallFirst, finding.Values{"why": finding.Noted(plan.SprungLoosen, nil)})
	all := run.Findings{
		finding.Warned(plan.SprungTurn, finding.Values{
			"text": "a", "term": finding.Term("other"), "count": 3, "number": 0.1, "flag": true, "length": unit.Length(1.5), "angle": unit.Angle(90),
			"force": unit.Force(1e3), "stress": unit.Stress(830), "torque": unit.Torque(20), "wait": unit.Duration(10),
			"given": unit.GivenTorque{Value: 15, Unit: unit.PoundForceFoot}, "texts": []string{"a", "b"}, "terms": []finding.Term{"other"},
			"counts": []int{1, 2}, "lengths": []unit.Length{1, 2}, "finding": inner, "findings": []finding.Finding{inner, inner},
		}).From("ISO 898-1").About(finding.Place{Kind: "bolt", Stage: 2, IDs: []string{"B1"}, Steps: []int{3}}),
		finding.Noted(plan.SprungLoosen, nil),
	}
	text, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	var back run.Findings
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	same(t, all, back)

	odd := run.Findings{finding.Warned(plan.Fails, finding.Values{"why": errors.New("disk full"), "size": math.NaN()})}
	text, err = json.Marshal(odd)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &back); err != nil || back[0].Values["why"] != "disk full" || back[0].Values["size"] != "NaN" {
		t.Errorf("%v, %v", back, err)
	}
	for _, wrong := range []string{
		`{}`, `[1]`, `[{"values":{"a":{"type":"count","value":"x"}}}]`, `[{"values":{"a":{"type":"finding","value":1}}}]`,
		`[{"values":{"a":{"type":"findings","value":1}}}]`,
	} {
		if err := json.Unmarshal([]byte(wrong), &back); err == nil {
			t.Errorf("%s is read as %v", wrong, back)
		}
	}
	if err := json.Unmarshal([]byte(`[{"code":"x","values":{"a":{"type":"of a newer program","value":{"b":1}}}}]`), &back); err != nil || back[0].Values["a"] != `{"b":1}` {
		t.Errorf("%v, %v", back, err)
	}
}

func TestWhatIsAllowedIsNamed(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	for _, c := range []struct {
		entry   run.Entry
		code    finding.Code
		allowed []string
	}{
		{run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "M9"}}, run.NoSuchFastener, []string{"B1", "B2", "B3", "B4", "S1", "S2"}},
		{run.Entry{Act: run.Find, Note: "n", Place: &run.Place{Station: "M9"}}, run.NoSuchStation, []string{"T1"}},
		{run.Entry{Act: run.Ready, Kind: "cap"}, run.NoSuchKind, []string{"bolt", "stud"}},
		{run.Entry{Act: run.Done, Step: 1, Source: "memory"}, run.ValueUnknown, []string{"paper"}},
	} {
		r := b.refuses(c.entry, c.code)
		same(t, c.allowed, r.Finding.Values["allowed"].([]string))
	}
	_, r := run.ReadEntry([]byte(`{"place":{"row":1}}`))
	same(t, []string{"fastener", "station", "label", "at"}, r.Finding.Values["allowed"].([]string))
	_, r = run.ReadEntry([]byte(`{"steps":1}`))
	if allowed := strings.Join(r.Finding.Values["allowed"].([]string), " "); !strings.HasPrefix(allowed, "entry act step who device_time") || strings.Contains(allowed, " time") {
		t.Errorf("allowed: %s", allowed)
	}
}

// A refusal is an error by its code.
func TestRefusalIsAnError(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	var err error = b.refuses(done(2), run.OutOfOrder)
	if !errors.Is(err, run.OutOfOrder) || errors.Is(err, run.StepDone) || !strings.Contains(err.Error(), "next=1") {
		t.Error(err)
	}
}

// A trouble blocks its stage and what follows, not what was left of a stage
// before.
func TestEarlierStagesAreNotBlocked(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	for _, step := range []int{1, 2, 4, 5} {
		b.takes(run.Entry{Act: run.Done, Step: step, Note: "the lead asked for it"})
	}
	b.takes(trouble(6, run.TurnsOn))
	if b.next() != 3 {
		t.Errorf("next %d, want 3", b.next())
	}
	b.takes(done(3))
	b.refuses(done(7), run.StageBlocked)
}

func TestUndoOnAReplacedFastener(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	first := b.takes(done(1))
	b.takes(run.Entry{Act: run.Replace, Step: 1})
	b.refuses(run.Entry{Act: run.Undo, Of: first}, run.StepReplaced)
	of := b.taken[len(b.taken)-1].ID
	b.takes(run.Entry{Act: run.Remark, Note: "another matter"})
	b.takes(run.Entry{Act: run.Find, Note: "marks", Of: of})
	if asks := b.view().Asks; len(asks) != 1 || asks[0].Of != of {
		t.Errorf("asked %+v", asks)
	}
	waiting := b.view().Now.Waiting
	if i := slices.IndexFunc(waiting, func(a run.Awaited) bool { return a.Ask != nil && a.Ask.Kind == run.AskNeighbours }); i < 0 {
		t.Errorf("waiting for %+v", waiting)
	}
	same(t, b.work, b.state.Work())
}

// A broken bolt that is settled and not replaced is flagged: the steps of the old
// one still count.
func TestCondemnedAndKept(t *testing.T) {
	t.Parallel()
	flags := func(b *bench) (codes []finding.Code) {
		for _, f := range b.view().Flags {
			codes = append(codes, f.Finding.Code)
		}
		return codes
	}
	for _, what := range run.Troubles {
		b := tightening(t)
		b.takes(run.Entry{Act: run.Ready})
		id := b.takes(trouble(1, what))
		b.takes(run.Entry{Act: run.Settle, Of: id, Who: "lead", Note: "new one in"})
		kept := what == run.Broken || what == run.Stretched || what == run.BoltThread
		if got := flags(b); slices.Contains(got, run.CondemnedKept) != kept || len(got) > 1 {
			t.Errorf("%s, settled: flagged %q", what, got)
		}
		b.takes(run.Entry{Act: run.Replace, Step: 1})
		if got := flags(b); len(got) != 0 {
			t.Errorf("%s, replaced: flagged %q", what, got)
		}
	}
	loose := loosening(t)
	id := loose.takes(trouble(1, run.Broken))
	loose.takes(run.Entry{Act: run.Settle, Of: id, Note: "drilled out"})
	if got := flags(loose); len(got) != 0 {
		t.Errorf("while loosening: flagged %q", got)
	}
}

// A fastener that no stage covers can be in trouble all the same.
func TestFastenerWithoutSteps(t *testing.T) {
	t.Parallel()
	w := run.New(planText(t, made), run.Tighten, nil)
	w.Steps = w.Steps[:13] // without those of the studs
	b := begin(t, w)
	id := b.takes(run.Entry{Act: run.Report, Place: &run.Place{Fastener: "S1"}, Trouble: run.Broken})
	if got := b.view().Troubles[0]; got.Step != 0 || got.IDs[0] != "S1" {
		t.Errorf("%+v", got)
	}
	b.refuses(done(1), run.StageBlocked)
	b.takes(run.Entry{Act: run.Settle, Of: id, Note: "n"})
	b.takes(done(1))
	if f := b.view().Flags; len(f) != 2 {
		t.Errorf("flags %+v", f)
	}
	b.takes(run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "S1"}})
}
