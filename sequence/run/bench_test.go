package run_test

import (
	"fmt"
	"testing"

	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// large is a run of 5,000 steps: 1,000 bolts, four torques and an angle.
func large() run.Work {
	w := run.Work{Direction: run.Tighten, Kinds: []run.Kind{{Name: "bolt", Count: 1000}}}
	for n := range 1000 {
		w.Fasteners = append(w.Fasteners, run.Fastener{ID: fmt.Sprint("B", n), Kind: "bolt"})
	}
	for stage := 1; stage <= 5; stage++ {
		for _, f := range w.Fasteners {
			s := run.Step{Number: len(w.Steps) + 1, Stage: stage, Round: 1, ID: f.ID, IDs: []string{f.ID}, Do: plan.Tighten, TorqueNm: 20, State: run.ToDo}
			if stage == 5 {
				s.Do, s.TorqueNm, s.AngleDeg = plan.Advance, 0, 90
			}
			w.Steps = append(w.Steps, s)
		}
	}
	return w
}

func BenchmarkTake(b *testing.B) {
	w := large()
	state := w.Start()
	for n := 0; b.Loop(); n++ {
		step := n%5000 + 1
		if step == 1 {
			state = w.Start()
		}
		if r := state.Take(run.Entry{ID: fmt.Sprint(n), Act: run.Done, Step: step, Who: "RA", Time: start}); r != nil {
			b.Fatal(r)
		}
	}
}

func BenchmarkReplay(b *testing.B) {
	w := large()
	var entries []run.Entry
	for n := range 5000 {
		entries = append(entries, run.Entry{ID: fmt.Sprint(n), Act: run.Done, Step: n + 1, Who: "RA", Time: start})
	}
	for b.Loop() {
		w.Replay(entries)
	}
}

func BenchmarkAt(b *testing.B) {
	state := large().Start()
	for b.Loop() {
		state.At(start)
	}
}
