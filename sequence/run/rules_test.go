package run_test

import (
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// A joint of four bolts and two nuts: two torques, an angle, a wait and a check.
// Steps 1–4, 5–8: torque on B, 9–12: angle on B, 13: wait, 14–15: torque on S.
const made = `
drawdown: 1
title: Bearing cover
machine: Fernhollow P4 pump engine
kinds:
  bolt: {thread: M10, class: "10.9", lubricant: engine oil, reuse: once}
  stud: {thread: M8, class: "8.8", lubricant: engine oil}
fasteners:
  - {id: B1, at: [0, 0], kind: bolt}
  - {id: B2, at: [80, 0], kind: bolt}
  - {id: B3, at: [0, 60], kind: bolt}
  - {id: B4, at: [80, 60], kind: bolt}
  - {id: S1, at: [-60, 30], kind: stud}
  - {id: S2, at: [140, 30], kind: stud}
stations: [{id: T1, at: [40, 30]}]
tighten:
  order: [B1, B4, B2, B3, S1, S2]
  stages:
    - {of: [bolt], torque: 20 N·m}
    - {of: [bolt], torque: 40 N·m}
    - {of: [bolt], angle: 90°}
    - {wait: 10 min}
    - {of: [stud], torque: 24 N·m}
  source: invented for teaching
cautions:
  - tighten: Oil the threads
`

func tightening(t testing.TB, toAccept ...finding.Finding) *bench {
	return begin(t, run.New(planText(t, made), run.Tighten, toAccept))
}

func loosening(t testing.TB) *bench {
	return begin(t, run.New(planText(t, made), run.Loosen, nil))
}

func done(step int) run.Entry { return run.Entry{Act: run.Done, Step: step} }

func (b *bench) doneUpTo(last int) {
	b.t.Helper()
	for step := 1; step <= last; step++ {
		b.takes(done(step))
	}
}

func trouble(step int, what run.Trouble) run.Entry {
	return run.Entry{Act: run.Report, Step: step, Trouble: what}
}

// by checks who and when a refusal names.
func (b *bench) by(r *run.Refusal, who string, at time.Time) {
	b.t.Helper()
	if r.By != who || !r.At.Equal(at) || r.Malformed {
		b.t.Errorf("refused by %q at %s (malformed: %v), want %q at %s", r.By, r.At, r.Malformed, who, at)
	}
}

func TestRule1SentTwiceCountsOnce(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.takes(run.Entry{ID: "tap", Act: run.Done, Step: 1, Who: "RA", DeviceTime: "08:00"})
	before := b.view()
	if r := b.try(run.Entry{ID: "tap", Act: run.Done, Step: 1, Who: "RA", DeviceTime: "08:00"}); r != nil {
		t.Errorf("the second time it is refused: %s", r)
	}
	same(t, before, b.state.At(b.now.Add(-time.Minute)))
	r := b.refuses(run.Entry{ID: "tap", Act: run.Done, Step: 2, Who: "RA"}, run.IDUsed)
	b.by(r, "RA", start.Add(time.Minute))
}

func TestRule2Order(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	r := b.refuses(done(3), run.OutOfOrder)
	if r.Finding.Values["next"] != 1 {
		t.Errorf("next %v, want 1", r.Finding.Values["next"])
	}
	b.takes(run.Entry{Act: run.Done, Step: 3, Note: "the socket is on it"})
	if got := b.step(3); got.State != run.IsDone || got.Reason != "the socket is on it" {
		t.Errorf("step 3: %s, reason %q", got.State, got.Reason)
	}
	for _, step := range []int{1, 2, 4, 5} {
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		b.takes(done(step))
	}
	b.refuses(run.Entry{Act: run.Begin, Step: 13}, run.OutOfOrder)
	b.refuses(run.Entry{Act: run.Done, Step: 8, Note: " "}, run.OutOfOrder)
}

func TestRule3DoneOnce(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(8)
	r := b.refuses(run.Entry{Act: run.Done, Step: 5, Who: "KB", Note: "again"}, run.StepDone)
	b.by(r, "RA", start.Add(5*time.Minute))

	b.takes(run.Entry{Act: run.Done, Step: 9, Who: "LM"})
	at := b.now
	r = b.refuses(run.Entry{Act: run.Done, Step: 9, Who: "KB"}, run.AngleDone) // asks whether KB turned it too
	b.by(r, "LM", at)
	if got := r.Finding.Values["angle"]; got != unit.Angle(90) {
		t.Errorf("asked about %v, want 90°", got)
	}
	b.takes(run.Entry{Act: run.Report, Step: 9, Who: "KB", Trouble: run.TurnedTwice})
	if got := b.step(9).State; got != run.InTrouble {
		t.Errorf("step 9 is %s, want trouble", got)
	}
	b.refuses(done(10), run.StageBlocked)
}

func TestRule4Undo(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	first := b.takes(done(1))
	b.takes(run.Entry{Act: run.Undo, Of: first, Who: "KB"})
	if b.step(1).State != run.ToDo || b.next() != 1 {
		t.Errorf("step 1 is %s, next %d", b.step(1).State, b.next())
	}
	b.refuses(run.Entry{Act: run.Undo, Of: first}, run.UndoneAlready)
	b.refuses(run.Entry{Act: run.Undo, Of: "nothing"}, run.NoSuchEntry)

	first = b.takes(done(1))
	for step := 2; step <= 4; step++ {
		b.takes(done(step))
	}
	b.takes(run.Entry{Act: run.Done, Step: 5, Who: "KB"}) // on the fastener of step 1
	r := b.refuses(run.Entry{Act: run.Undo, Of: first}, run.LaterStepDone)
	b.by(r, "KB", b.now.Add(-time.Minute))

	accept := b.takes(run.Entry{Act: run.Accept})
	b.refuses(run.Entry{Act: run.Undo, Of: accept}, run.NotUndone)
	out := b.takes(run.Entry{Act: run.LeaveOut, Step: 6, Note: "no room"})
	b.takes(run.Entry{Act: run.Undo, Of: out})
	wrong := b.takes(trouble(6, run.Broken))
	b.takes(run.Entry{Act: run.Undo, Of: wrong})
	if v := b.view(); len(v.Troubles)+len(v.Condemned) != 0 || b.next() != 6 {
		t.Errorf("a trouble that was undone is still there: %+v", v.Troubles)
	}
}

func TestRule5UnsureAngle(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(8)
	b.refuses(run.Entry{Act: run.Unsure, Step: 5}, run.NotAnAngle)
	unsure := b.takes(run.Entry{Act: run.Unsure, Step: 9, Who: "LM", Note: "the phone rang"})
	at := b.now
	if b.step(9).State != run.IsUnsure || b.next() != 10 {
		t.Errorf("step 9 is %s, next %d", b.step(9).State, b.next())
	}
	b.by(b.refuses(done(9), run.FastenerUnsure), "LM", at)
	b.by(b.refuses(run.Entry{Act: run.Done, Step: 9, Note: "about half a turn"}, run.FastenerUnsure), "LM", at)
	b.by(b.refuses(run.Entry{Act: run.LeaveOut, Step: 9, Note: "about right"}, run.FastenerUnsure), "LM", at)
	b.by(b.refuses(run.Entry{Act: run.Unsure, Step: 9}, run.UnsureAlready), "LM", at)
	b.refuses(run.Entry{Act: run.Undo, Of: unsure}, run.NotUndone)
	b.takes(done(10)) // the others go on

	b.takes(run.Entry{Act: run.Settle, Of: unsure, Who: "lead", Note: "slackened, 40 N·m again, mark set anew"})
	if b.next() != 9 {
		t.Errorf("next %d, want 9", b.next())
	}
	b.takes(done(9))

	b.takes(run.Entry{Act: run.Unsure, Step: 11})
	b.takes(run.Entry{Act: run.Replace, Step: 11})
	if got := b.step(b.next()); got.Recovery != 3 || got.TorqueNm != 20 {
		t.Errorf("next is step %d, recovery of %d", got.Number, got.Recovery)
	}
}

// What becomes of an interrupted angle is one of three, with who decided it; a new
// fastener goes in by a replace. A settle with a note alone is taken as before. From
// first principles.
func TestDecidedAngle(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(8)
	unsure := b.takes(run.Entry{Act: run.Unsure, Step: 9})
	settle := run.Entry{Act: run.Settle, Of: unsure, DecidedBy: "LM"}
	for what, change := range map[finding.Code]func(*run.Entry){
		run.FieldMissing: func(e *run.Entry) { e.Decided, e.DecidedBy = run.CountsAsDone, " " },
		run.NumberUnread: func(e *run.Entry) { e.Decided, e.Value = run.TurnOn, "-40" },
		run.ValueUnknown: func(e *run.Entry) { e.Decided = run.NewFastener },
	} {
		wrong := settle
		change(&wrong)
		b.refuses(wrong, what)
	}
	for _, without := range []run.Decision{run.TurnOn, run.OtherDecision} { // its degrees, its note
		wrong := settle
		wrong.Decided = without
		b.refuses(wrong, run.FieldMissing)
	}
	settle.Decided = run.CountsAsDone
	b.takes(settle)
	at := b.view().DecidedAt(9)
	if got := b.step(9); got.State != run.IsDone || at == nil || at.Decided != run.CountsAsDone || at.Settled.DecidedBy != "LM" || at.Settled.By != "RA" {
		t.Errorf("step 9 is %s, decided: %+v", got.State, at)
	}
	b.refuses(done(9), run.AngleDone)

	on := b.takes(run.Entry{Act: run.Unsure, Step: 10})
	b.takes(run.Entry{Act: run.Settle, Of: on, Decided: run.TurnOn, Value: "40", DecidedBy: "LM"})
	if at := b.view().DecidedAt(10); b.step(10).State != run.ToDo || b.next() != 10 || at == nil || at.TurnOn != "40" {
		t.Errorf("step 10 is %s, decided: %+v", b.step(10).State, at)
	}
	b.takes(done(10))

	again := b.takes(run.Entry{Act: run.Unsure, Step: 11})
	b.takes(run.Entry{Act: run.Replace, Step: 11, Decided: run.NewFastener, DecidedBy: "LM"})
	if at := b.view().DecidedAt(11); at != nil {
		t.Errorf("the new fastener is to be turned as was decided of the old one: %+v", at)
	}
	b.refuses(run.Entry{Act: run.Settle, Of: again, Note: "late"}, run.SettledAlready)
}

// What each trouble blocks: bench.md, rule 6.
func TestRule6Troubles(t *testing.T) {
	t.Parallel()
	for _, what := range run.Troubles {
		b := tightening(t)
		b.doneUpTo(5)
		id := b.takes(run.Entry{Act: run.Report, Step: 6, Trouble: what, Who: "KB", Note: "as seen"})
		at := b.now
		b.by(b.refuses(trouble(6, what), run.TroubleAlready), "KB", at)
		r := b.refuses(done(6), run.FastenerBlocked)
		b.by(r, "KB", at)
		blocks := run.BlocksStage
		if what == run.Seized || what == run.OtherTrouble {
			blocks = run.BlocksFastener
			if b.next() != 7 {
				t.Errorf("%s: next %d, want 7", what, b.next())
			}
			b.takes(done(7))
		} else {
			b.by(b.refuses(done(7), run.StageBlocked), "KB", at)
			b.by(b.refuses(run.Entry{Act: run.Done, Step: 9, Note: "no matter"}, run.StageBlocked), "KB", at)
			if b.view().Next != nil {
				t.Errorf("%s: next %d, want none", what, b.next())
			}
		}
		if got := b.view().Troubles[0]; got.Blocks != blocks || got.Step != 6 || got.Settled != nil {
			t.Errorf("%s: %+v, want it to block the %s", what, got, blocks)
		}
		b.takes(run.Entry{Act: run.Settle, Of: id, Who: "lead", Note: "cleaned and oiled"})
		b.by(b.refuses(run.Entry{Act: run.Settle, Of: id, Note: "again"}, run.SettledAlready), "lead", b.now.Add(-time.Minute))
		if b.next() != 6 || b.view().Troubles[0].Settled.By != "lead" {
			t.Errorf("%s: next %d after it is settled", what, b.next())
		}
		b.takes(done(6))
	}
}

// While loosening, work continues elsewhere in the order, whatever the trouble.
func TestRule6WhileLoosening(t *testing.T) {
	t.Parallel()
	for _, what := range run.Troubles {
		b := loosening(t)
		first := b.step(b.next())
		b.takes(trouble(first.Number, what))
		b.all()
		for _, s := range b.view().Steps {
			on := s.ID == first.ID
			if (s.State == run.IsDone) == on {
				t.Errorf("%s on %s: step %d on %s is %s", what, first.ID, s.Number, s.ID, s.State)
			}
		}
	}
}

// Settling is for troubles alone.
func TestRule6SettleWhat(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	id := b.takes(done(1))
	b.refuses(run.Entry{Act: run.Settle, Of: id, Note: "well"}, run.NotATrouble)
	b.refuses(run.Entry{Act: run.Settle, Of: "none", Note: "well"}, run.NoSuchEntry)
}

func TestRule7Replace(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(9)
	b.takes(trouble(10, run.Broken)) // the angle of B4
	b.takes(run.Entry{Act: run.Replace, Step: 10, Who: "lead"})

	var again, old []int
	for _, s := range b.view().Steps {
		if s.Recovery != 0 {
			again = append(again, s.Number)
		}
		if s.Old {
			old = append(old, s.Number)
		}
	}
	same(t, []int{2 + 15, 6 + 15}, again) // the two torques of B4, above all numbers of the plan
	same(t, []int{2, 6}, old)
	if v := b.view(); v.Troubles[0].Settled.By != "lead" || v.Condemned[0].Replaced.By != "lead" {
		t.Errorf("the trouble is not settled: %+v", v.Troubles[0])
	}
	b.refuses(done(10), run.OutOfOrder)
	for _, step := range []int{17, 21, 10, 11, 12} {
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		b.takes(done(step))
	}
	b.refuses(done(2), run.StepReplaced)
	b.refuses(trouble(2, run.Seized), run.StepReplaced)

	ask := b.view().Asks[0]
	if ask.Kind != run.AskNeighbours || ask.IDs[0] != "B4" {
		t.Errorf("asked %+v, want the neighbours of B4", ask)
	}
	b.takes(run.Entry{Act: run.Remark, Of: ask.Of, Who: "lead", Note: "B1 and B3 stay"})
	if asks := b.view().Asks; len(asks) != 0 {
		t.Errorf("still asked: %+v", asks)
	}
}

// A second new fastener starts from the first stage too.
func TestRule7ReplaceTwice(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(10)
	b.takes(run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "B4"}})
	for _, step := range []int{17, 21} {
		b.takes(done(step))
	}
	b.takes(run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "B4"}})
	for _, step := range []int{32, 36, 25, 11} { // the angle of the first new one was not done yet
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		b.takes(done(step))
	}
	loose := loosening(t)
	loose.refuses(run.Entry{Act: run.Replace, Step: 1}, run.NotWhileLoosen)
}

func TestRule8WithoutAJob(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	v := b.view()
	same(t, []run.Need{{Kind: "bolt", Count: 4}}, v.Needs)
	if len(v.Asks) != 1 || v.Asks[0].Kind != run.AskReadiness || len(v.Flags) != 0 {
		t.Errorf("asked %+v, flagged %+v", v.Asks, v.Flags)
	}
	b.takes(done(1))
	v = b.view()
	if len(v.Asks) != 0 || len(v.Flags) != 1 || v.Flags[0].Finding.Code != run.ReadinessOpen {
		t.Errorf("asked %+v, flagged %+v", v.Asks, v.Flags)
	}

	b = tightening(t)
	b.takes(run.Entry{Act: run.Ready, Kind: "bolt", Value: "4"})
	b.takes(done(1))
	if v := b.view(); !v.Needs[0].Met() || len(v.Asks)+len(v.Flags) != 0 {
		t.Errorf("needs %+v, asked %+v, flagged %+v", v.Needs, v.Asks, v.Flags)
	}
}

func TestRule8InAJob(t *testing.T) {
	t.Parallel()
	loose := loosening(t)
	loose.takes(trouble(loose.next(), run.Broken))
	condemned := loose.view().Condemned
	id := condemned[0].ID

	w := run.New(planText(t, made), run.Tighten, nil)
	w.Job = "J1"
	b := begin(t, w)
	b.now = loose.now
	b.state.InJob(run.JobFacts{Condemned: condemned})
	r := b.refuses(done(1), run.NotReady)
	if n := len(r.Finding.Values["needs"].([]finding.Finding)); n != 2 {
		t.Errorf("%d needs, want the bolts and the one for %s", n, id)
	}
	b.takes(run.Entry{Act: run.Ready, Kind: "bolt", Value: "3"})
	b.refuses(done(1), run.NotReady)
	b.takes(run.Entry{Act: run.Ready, Kind: "bolt", Value: "1"})
	b.refuses(done(1), run.NotReady)
	wrong := b.takes(run.Entry{Act: run.Ready, Place: &run.Place{Fastener: id}})
	b.takes(run.Entry{Act: run.Undo, Of: wrong})
	b.refuses(done(1), run.NotReady)
	facts := run.JobFacts{Condemned: condemned, Ready: []run.Entry{{ID: "j1", Act: run.Ready, Who: "KB", Place: &run.Place{Fastener: id}, Time: b.now}}}
	b.state.InJob(facts)
	b.takes(done(1))

	b.takes(trouble(2, run.HoleThread))
	b.takes(run.Entry{Act: run.Settle, Of: b.taken[len(b.taken)-1].ID, Note: "insert fitted"})
	b.refuses(done(2), run.NotReady) // nobody recorded a repair of the hole
	b.takes(run.Entry{Act: run.Ready})
	b.takes(done(2))
}

func TestRule9Waits(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(12)
	b.refuses(done(13), run.NotBegun)
	b.refuses(run.Entry{Act: run.Begin, Step: 12}, run.NotAWait)
	b.takes(run.Entry{Act: run.Begin, Step: 13, Who: "KB"})
	begun := b.now
	got := b.step(13)
	if got.State != run.Waiting || !got.Ends.Equal(begun.Add(10*time.Minute)) || b.next() != 13 {
		t.Errorf("step 13: %s until %s, next %d", got.State, got.Ends, b.next())
	}
	b.by(b.refuses(run.Entry{Act: run.Begin, Step: 13}, run.BegunAlready), "KB", begun)
	b.by(b.refuses(done(13), run.NotOver), "KB", begun)
	b.refuses(done(14), run.OutOfOrder)

	// A clock set back makes a wait longer, never shorter.
	b.now = begun.Add(-time.Hour)
	b.refuses(done(14), run.OutOfOrder)
	if s := b.work.Replay(b.taken).At(begun.Add(9 * time.Minute)).Steps[12]; s.State != run.Waiting {
		t.Errorf("after a restart: %s", s.State)
	}
	b.now = begun.Add(10 * time.Minute)
	if b.step(13).State != run.IsDone || b.next() != 14 {
		t.Errorf("at its end step 13 is %s, next %d", b.step(13).State, b.next())
	}
	b.takes(done(14))
	b.now = begun // set back again
	if b.step(13).State != run.IsDone || b.next() != 15 {
		t.Errorf("after its end step 13 is %s, next %d", b.step(13).State, b.next())
	}
}

// A wait that began under a clock set back lasts as long as any other.
func TestRule9ClockSetBackBefore(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(12)
	b.now = start.Add(-5 * time.Hour)
	b.takes(run.Entry{Act: run.Begin, Step: 13})
	if got, want := b.step(13).Ends, b.now.Add(10*time.Minute); !got.Equal(want) || b.next() != 13 {
		t.Errorf("ends %s, want %s; next %d", got, want, b.next())
	}
}

// Paper says that a wait was kept; no times are invented.
func TestRule9OnPaper(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.doneUpTo(12)
	b.takes(run.Entry{Act: run.Done, Step: 13, Source: run.OnPaper})
	b.takes(done(14))
}

// The tolerance is that of ISO 6789:2003, table 3: ±4 %; 20 N·m ± 0.8 N·m.
func TestRule10Readings(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		value, unit string
		tolerance   float64
		want        finding.Code
	}{
		{"20.8", "N·m", 0, ""},
		{"20.81", "N·m", 0, run.ReadingOutside},
		{"19.2", "", 0, ""},
		{"19.1", "", 0, run.ReadingOutside},
		{"21,2", "Nm", 0.06, ""},
		{"14.75", "lbf·ft", 0, ""}, // 20.0 N·m
		{"18", "lbf·ft", 0, run.ReadingOutside},
		{"20", "bar", 0, run.ReadingUnread},
	} {
		b := tightening(t)
		e := run.Entry{Act: run.Done, Step: 1, Value: run.Value(c.value), Unit: c.unit}
		if c.tolerance > 0 {
			e.Wrench, e.WrenchFacts = "W7", &run.WrenchFacts{Listed: true, Tolerance: c.tolerance}
		}
		b.takes(run.Entry{Act: run.Ready})
		b.takes(e)
		v := b.view()
		got := finding.Code("")
		if len(v.Flags) > 0 {
			got = v.Flags[0].Finding.Code
		}
		if got != c.want || v.Steps[0].State != run.IsDone || string(v.Readings[0].Value) != c.value || v.Readings[0].Outside != (got == run.ReadingOutside) {
			t.Errorf("%s %s: flagged %q, want %q; kept %+v", c.value, c.unit, got, c.want, v.Readings[0])
		}
	}
	b := tightening(t)
	b.takes(run.Entry{Act: run.Measure, Measure: "bolt length", Value: "110,3", Unit: "mm", Place: &run.Place{Fastener: "B1"}})
	if got := b.view().Readings[0]; got.Value != "110,3" || got.Measure != "bolt length" || got.Outside {
		t.Errorf("%+v", got)
	}
}

func TestRule11Accept(t *testing.T) {
	t.Parallel()
	warned := finding.Warned(plan.SmallFirst, nil)
	b := tightening(t, warned)
	for _, e := range []run.Entry{done(1), {Act: run.Begin, Step: 13, Note: "now"}, {Act: run.Replace, Step: 1}} {
		b.refuses(e, run.AcceptFirst)
	}
	if got := b.view().ToAccept; len(got) != 1 {
		t.Errorf("to accept: %v", got)
	}
	b.takes(run.Entry{Act: run.Accept, Who: "lead"})
	b.by(b.refuses(run.Entry{Act: run.Accept}, run.AcceptedAlready), "lead", b.now.Add(-time.Minute))
	b.takes(done(1))
	if v := b.view(); len(v.ToAccept) != 0 || v.Accepted.By != "lead" {
		t.Errorf("to accept %v, accepted %+v", v.ToAccept, v.Accepted)
	}
	if w := run.New(planText(t, made), run.Loosen, []finding.Finding{warned}); len(w.ToAccept) != 0 {
		t.Error("loosening asks for warnings")
	}
}

func TestRule12Seal(t *testing.T) {
	t.Parallel()
	seal := run.Entry{Act: run.Seal, Who: "lead"}
	b := tightening(t)
	b.refuses(seal, run.SealSteps)
	b.doneUpTo(12)
	b.takes(run.Entry{Act: run.LeaveOut, Step: 13, Note: "no gasket"})
	b.takes(run.Entry{Act: run.Done, Step: 14, Wrench: "W2"})
	wrong := b.takes(trouble(15, run.Seized))
	b.refuses(seal, run.SealTroubles)
	b.takes(run.Entry{Act: run.Settle, Of: wrong, Note: "thread cleaned"})
	b.refuses(seal, run.SealSteps)
	b.takes(done(15))
	r := b.refuses(seal, run.SealWrench) // none is named for the stages 1 and 2
	same(t, []int{1, 2}, r.Finding.Values["stages"].([]int))
	b.refuses(run.Entry{Act: run.Seal, Who: "lead", Wrench: "W7", Second: "Lead "}, run.SealSecond)
	id := b.takes(run.Entry{Act: run.Seal, Who: "lead", Wrench: "W7", Second: "RA"})
	sealed := b.now
	if v := b.view(); v.Status != run.Sealed || v.Signed.Second != "RA" || v.Signed.By != "lead" {
		t.Errorf("%s, %+v", v.Status, v.Signed)
	}

	for _, act := range run.Acts {
		if act == run.Correct {
			continue
		}
		e := run.Entry{Act: act, Step: 1, Of: id, Note: "n", Trouble: run.Broken, Value: "1", Sheet: "card", Fingerprint: "f"}
		b.by(b.refuses(e, run.RunSealed), "lead", sealed)
	}
	before := b.view()
	b.takes(run.Entry{Act: run.Correct, Of: id, Note: "the wrench was W8"})
	after := b.view()
	if len(after.Corrections) != 1 || after.Corrections[0].Of != id {
		t.Errorf("%+v", after.Corrections)
	}
	if n := len(after.Flags); n != len(before.Flags)+1 || after.Flags[n-1].Finding.Code != run.Corrected {
		t.Errorf("flagged %+v", after.Flags)
	}
	after.Corrections, before.Version, after.Flags = nil, after.Version, before.Flags
	same(t, before, after)
	b.refuses(run.Entry{Act: run.Correct, Of: "none", Note: "n"}, run.NoSuchEntry)
}

func TestVoid(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	id := b.takes(done(1))
	b.takes(run.Entry{Act: run.Void, Who: "lead", Note: "the gasket slipped"})
	if v := b.view(); v.Status != run.Voided || v.Next != nil || v.VoidedBy.Note != "the gasket slipped" {
		t.Errorf("%s, next %v, %+v", v.Status, v.Next, v.VoidedBy)
	}
	b.by(b.refuses(done(2), run.RunVoid), "lead", b.now.Add(-time.Minute))
	b.takes(run.Entry{Act: run.Correct, Of: id, Note: "that was B2"})
}
