package run_test

import (
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// asked is the question about a round; nil where there is none.
func (b *bench) asked() *run.Ask {
	for _, a := range b.view().Asks {
		if a.Kind == run.AskRound {
			return &a
		}
	}
	return nil
}

// Caps under springs come off by small turns until no spring presses, and only
// then out: the rounds of the built-in cam caps.
func TestSprungCapsComeOffInRounds(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-cam-caps"), run.Loosen, nil))
	planned := len(b.work.Steps)
	b.refuses(run.Entry{Act: run.Finished}, run.RoundOpen)
	b.refuses(run.Entry{Act: run.AnotherRound}, run.RoundOpen)
	b.all()
	ask := b.asked()
	if ask == nil || ask.Until != plan.NoSpringPresses || ask.Round != 1 || b.view().Next != nil {
		t.Fatalf("asked %+v, next %v", ask, b.view().Next)
	}
	var out run.Step
	for _, s := range b.view().Steps {
		if s.Do == plan.Remove {
			out = s
			break
		}
	}
	b.refuses(done(out.Number), run.RoundsOpen)
	b.refuses(run.Entry{Act: run.Seal, Wrench: "W7"}, run.SealSteps)

	round := b.takes(run.Entry{Act: run.AnotherRound})
	first := b.step(b.next())
	last := b.step(first.Number - planned)
	if first.Number <= planned || first.Round != 2 || first.ID != last.ID || first.Stage != ask.Stage || first.Do != plan.TurnBack {
		t.Errorf("the next round begins with %+v, the last with %+v", first, last)
	}
	if first.FromDeg != last.ToDeg || first.ToDeg != last.ToDeg+last.AngleDeg {
		t.Errorf("marks %g to %g, want them to go on from %g", first.FromDeg, first.ToDeg, last.ToDeg)
	}
	b.takes(run.Entry{Act: run.Undo, Of: round})
	if b.asked() == nil || len(b.view().Steps) != planned {
		t.Errorf("%d steps after the round was taken back, want %d", len(b.view().Steps), planned)
	}
	b.refuses(run.Entry{Act: run.Done, Step: first.Number, Note: "n"}, run.NoSuchStep)
	round = b.takes(run.Entry{Act: run.AnotherRound})
	if again := b.next(); again == first.Number {
		t.Errorf("step number %d is given a second time", again)
	}
	b.doNext()
	b.refuses(run.Entry{Act: run.Undo, Of: round}, run.LaterStepDone)
	b.all()
	if ask := b.asked(); ask == nil || ask.Round != 2 {
		t.Fatalf("asked %+v after the second round", ask)
	}
	finished := b.takes(run.Entry{Act: run.Finished})
	b.refuses(run.Entry{Act: run.Undo, Of: round}, run.LaterStepDone)
	b.refuses(run.Entry{Act: run.AnotherRound}, run.NoRounds)
	b.takes(run.Entry{Act: run.Undo, Of: finished})
	finished = b.takes(run.Entry{Act: run.Finished})
	if got := b.next(); got != out.Number {
		t.Errorf("next %d, want %d, the first out", got, out.Number)
	}
	b.doNext()
	b.refuses(run.Entry{Act: run.Undo, Of: finished}, run.LaterStepDone)
	b.all()
	b.takes(run.Entry{Act: run.Seal})
}

// They come down by small turns too, before the first torque.
func TestSprungCapsComeDownInRounds(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-cam-caps"), run.Tighten, nil))
	ask := b.asked()
	if ask == nil || ask.Stage != 1 || ask.Round != 0 || ask.Until != "" || b.view().Next != nil {
		t.Fatalf("asked %+v, next %v", ask, b.view().Next)
	}
	b.refuses(done(1), run.RoundsOpen)
	b.takes(run.Entry{Act: run.AnotherRound})
	got, torque := b.step(b.next()), b.step(1)
	if got.Do != plan.TurnBack || got.Turn != run.Clockwise || got.AngleDeg != torque.ByTurnsDeg || got.TorqueNm != 0 || got.Name() != run.Seat || got.ID != torque.ID {
		t.Errorf("the round begins with %+v", got)
	}
	b.all()
	b.takes(run.Entry{Act: run.Finished})
	if b.next() != 1 {
		t.Errorf("next %d, want 1", b.next())
	}
	b.all()
	b.takes(run.Entry{Act: run.Seal, Wrench: "W7"})
}

// Passes go on until no nut turns.
func TestUntilNoNutTurns(t *testing.T) {
	t.Parallel()
	w := run.New(planText(t, made), run.Tighten, nil)
	for i := range w.Steps {
		if w.Steps[i].Stage == 2 {
			w.Steps[i].Until = "no nut turns"
		}
	}
	b := begin(t, w)
	b.doneUpTo(8)
	if ask := b.asked(); ask == nil || ask.Until != "no nut turns" || ask.Stage != 2 {
		t.Fatalf("asked %+v", ask)
	}
	b.takes(run.Entry{Act: run.AnotherRound})
	for _, step := range []int{20, 21, 22, 23} { // the steps 5–8 once more
		b.takes(done(step))
	}
	b.takes(run.Entry{Act: run.AnotherRound})
	b.takes(done(35))
	b.takes(trouble(36, run.TurnsOn))
	b.refuses(run.Entry{Act: run.Finished}, run.StageBlocked)
	b.takes(run.Entry{Act: run.Replace, Step: 36})
	for _, step := range []int{17, 51, 36, 37, 38} { // its first stage, and one pass of its second
		if b.next() != step {
			t.Fatalf("next %d, want %d", b.next(), step)
		}
		b.takes(done(step))
	}
	b.takes(run.Entry{Act: run.Finished})
	b.all()
	b.takes(run.Entry{Act: run.Seal, Wrench: "W7"})
}

// A seized cap does not keep the others from going on.
func TestRoundsPassTheSeized(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-cam-caps"), run.Loosen, nil))
	id := b.takes(trouble(b.next(), run.Seized))
	b.all()
	b.takes(run.Entry{Act: run.Finished})
	b.all()
	b.refuses(run.Entry{Act: run.Seal}, run.SealTroubles)
	b.takes(run.Entry{Act: run.Settle, Of: id, Note: "warmed"})
	if b.next() != 1 {
		t.Errorf("next %d, want 1", b.next())
	}
}

// Rounds have an end.
func TestRoundsAreBounded(t *testing.T) {
	t.Parallel()
	w := run.New(builtin(t, "p4-cam-caps"), run.Tighten, nil)
	b := begin(t, w)
	for range 100 {
		b.takes(run.Entry{Act: run.AnotherRound})
		for _, s := range b.view().Steps {
			if s.Do == plan.TurnBack && s.State == run.ToDo {
				b.takes(run.Entry{Act: run.LeaveOut, Step: s.Number, Note: "sits"})
			}
		}
	}
	b.refuses(run.Entry{Act: run.AnotherRound}, run.TooManyRounds)
	b.takes(run.Entry{Act: run.Finished})
}

// The rules of tightening hold for rounds too.
func TestRoundsWaitForTheRest(t *testing.T) {
	t.Parallel()
	w := run.New(builtin(t, "p4-cam-caps"), run.Tighten, []finding.Finding{finding.Warned(plan.SmallFirst, nil)})
	b := begin(t, w)
	b.refuses(run.Entry{Act: run.AnotherRound}, run.AcceptFirst)
	b.refuses(run.Entry{Act: run.Finished}, run.AcceptFirst)
	plain := tightening(t)
	plain.refuses(run.Entry{Act: run.Finished}, run.NoRounds)
}

// A round in which every fastener was in trouble counts once the stage has gone
// on.
func TestRoundIsOver(t *testing.T) {
	t.Parallel()
	w := run.New(planText(t, made), run.Tighten, nil)
	for i := range w.Steps {
		if w.Steps[i].Stage == 2 {
			w.Steps[i].Until = "no nut turns"
		}
	}
	b := begin(t, w)
	b.doneUpTo(8)
	round := b.takes(run.Entry{Act: run.AnotherRound})
	var seized []string
	for b.asked() == nil {
		seized = append(seized, b.takes(trouble(b.next(), run.Seized)))
	}
	b.refuses(run.Entry{Act: run.Undo, Of: round}, run.LaterStepDone)
	b.takes(run.Entry{Act: run.Finished, Who: "lead"})
	finished := b.now
	for _, id := range seized {
		b.takes(run.Entry{Act: run.Settle, Of: id, Note: "n"})
	}
	b.by(b.refuses(run.Entry{Act: run.Undo, Of: round}, run.RoundOver), "lead", finished)
}

// A run that ends on rounds is signed once they are finished, not before.
func TestSealWaitsForTheLastRounds(t *testing.T) {
	t.Parallel()
	w := run.New(planText(t, made), run.Tighten, nil)
	for i := range w.Steps {
		if w.Steps[i].Stage == 5 {
			w.Steps[i].Until = "no nut turns"
		}
	}
	b := begin(t, w)
	b.all()
	seal := run.Entry{Act: run.Seal, Wrench: "W7"}
	if r := b.refuses(seal, run.SealRounds); r.Finding.Values["stage"] != 5 {
		t.Errorf("%v", r.Finding.Values)
	}
	b.takes(run.Entry{Act: run.Finished})
	b.takes(seal)
}
