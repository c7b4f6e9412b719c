package run_test

import (
	"slices"
	"testing"

	"drawdown/sequence/run"
)

// A new fastener catches up by steps that are counted apart: the four of M3 that
// the old one had done (p4-head: torque, torque, angle, angle). A second new one
// at the same place begins at 1 again.
func TestStepsOfANewFastener(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-head"), run.Tighten, nil))
	count := func() (counted []int) {
		for _, s := range b.view().Steps {
			if nth, of := b.view().CatchUp(s); of > 0 && !s.Old {
				counted = append(counted, nth*10+of)
			}
		}
		return counted
	}
	for range 40 {
		b.doNext()
	}
	replace := run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "M3"}}
	b.takes(replace)
	if got, want := count(), []int{14, 24, 34, 44}; !slices.Equal(got, want) {
		t.Errorf("the first new one: %v, want %v", got, want)
	}
	b.doNext()
	b.takes(replace)
	if got, want := count(), []int{14, 24, 34, 44}; !slices.Equal(got, want) {
		t.Errorf("the second new one: %v, want %v", got, want)
	}
	if nth, of := b.view().CatchUp(b.step(1)); nth != 0 || of != 0 {
		t.Errorf("a step of the plan is %d of %d", nth, of)
	}
}

// What was done goes by its time, also on a new fastener; what is to do follows in
// the order of work.
func TestAsDone(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-head"), run.Tighten, nil))
	for range 15 {
		b.doNext()
	}
	b.takes(run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "M3"}})
	b.doNext()
	steps := b.view().AsDone()
	open := slices.IndexFunc(steps, func(s run.Step) bool { return s.At.IsZero() })
	if open != 17 || !slices.IsSortedFunc(steps[:open], func(a, b run.Step) int { return a.At.Compare(b.At) }) || steps[15].Fresh == nil || steps[16].Recovery == 0 {
		t.Errorf("%d steps lead, the last of them %+v", open, steps[15])
	}
	var left []int
	for _, s := range steps[open:] {
		left = append(left, s.Number)
	}
	var want []int
	for _, s := range b.view().Steps {
		if s.At.IsZero() {
			want = append(want, s.Number)
		}
	}
	if !slices.Equal(left, want) {
		t.Errorf("left to do: %v, want %v", left, want)
	}
}

// The gasket of the file is asked for beside the bolts that are used once
// (p4-head: ten main bolts and one gasket). Nothing waits for it: whether it
// is used again the file does not say; that it came late is flagged. Where somebody said that
// none is there, the work waits for it.
func TestGasketIsAskedFor(t *testing.T) {
	t.Parallel()
	work := run.New(builtin(t, "p4-head"), run.Tighten, nil)
	work.Job = "J1"
	b := begin(t, work)
	want := []run.Need{{Kind: "main", Count: 10}, {Kind: run.GasketKind, Count: 1, Gasket: "multi-layer steel"}}
	same(t, want, b.view().Needs)
	b.takes(run.Entry{Act: run.Ready, Kind: "main", Value: "10"})
	b.doNext()
	b.takes(run.Entry{Act: run.Ready, Kind: run.GasketKind, Value: "1"})
	want[0].Ready, want[1].Ready = 10, 1
	want[0].Counted, want[1].Counted = true, true
	same(t, want, b.view().Needs)
	if flags := b.view().Flags; len(flags) != 1 || flags[0].Finding.Code != run.GasketLate {
		t.Errorf("flagged %+v", flags)
	}
	none := begin(t, work)
	none.takes(run.Entry{Act: run.Ready, Kind: "main", Value: "10"})
	none.takes(run.Entry{Act: run.Ready, Kind: run.GasketKind, Value: "0"})
	none.refuses(run.Entry{Act: run.Done, Step: 1}, run.NotReady)
	none.takes(run.Entry{Act: run.Ready, Kind: run.GasketKind, Value: "1"})
	none.doNext()
	loose := begin(t, run.New(builtin(t, "p4-head"), run.Loosen, nil))
	loose.refuses(run.Entry{Act: run.Ready, Kind: run.GasketKind}, run.NoSuchKind)
}
