package run_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// works are runs of every sort: both directions, angles, a wait, springs, rounds
// until something holds, fasteners worked at once, a job, warnings.
var works = sync.OnceValue(func() []run.Work {
	t := &testing.T{}
	var all []run.Work
	for _, d := range []run.Direction{run.Loosen, run.Tighten} {
		all = append(all, run.New(planText(t, made), d, nil), run.New(builtin(t, "p4-cam-caps"), d, nil), run.New(builtin(t, "p4-rod-caps"), d, nil))
	}
	rounds := run.New(planText(t, made), run.Tighten, []finding.Finding{finding.Warned(plan.SmallFirst, nil)})
	for i := range rounds.Steps {
		if rounds.Steps[i].Stage == 2 {
			rounds.Steps[i].Until = "no nut turns"
		}
	}
	job := run.New(planText(t, made), run.Tighten, nil)
	job.Job = "J1"
	return append(all, rounds, job, atOnce(run.New(planText(t, made), run.Tighten, nil)))
})

// atOnce has two fasteners of a stage worked at a time.
func atOnce(w run.Work) run.Work {
	var steps []run.Step
	for _, s := range w.Steps {
		if n := len(steps); s.Stage < 3 && n > 0 && steps[n-1].Stage == s.Stage && len(steps[n-1].IDs) == 1 {
			steps[n-1].IDs = append(steps[n-1].IDs, s.ID)
			continue
		}
		s.Number = len(steps) + 1
		steps = append(steps, s)
	}
	w.Steps = steps
	return w
}

// drawn is a random entry on a run, sensible more often than not.
func drawn(t *rapid.T, v run.View, w run.Work, taken []run.Entry) run.Entry {
	e := run.Entry{
		Act: rapid.SampledFrom(append([]run.Act{run.Done, run.Done, run.Done, run.Done, run.Done, run.Done, run.Begin, run.Settle, run.Finished}, run.Acts...)).Draw(t, "act"),
		Who: rapid.SampledFrom([]string{"RA", "KB"}).Draw(t, "who"),
	}
	step := rapid.SampledFrom(v.Steps).Draw(t, "step")
	if v.Next != nil && rapid.IntRange(0, 4).Draw(t, "in order") > 0 {
		step = v.Steps[slices.IndexFunc(v.Steps, func(s run.Step) bool { return s.Number == *v.Next })]
	}
	e.Step = step.Number
	if rapid.IntRange(0, 2).Draw(t, "noted") == 0 || e.Act != run.Done {
		e.Note = "a reason"
	}
	if len(step.IDs) > 1 {
		e.Place = &run.Place{Fastener: rapid.SampledFrom(step.IDs).Draw(t, "fastener")}
	}
	switch e.Act {
	case run.Report:
		e.Trouble = rapid.SampledFrom(run.Troubles).Draw(t, "trouble")
	case run.Undo, run.Correct:
		if len(taken) > 0 {
			e.Of = taken[len(taken)-1-rapid.IntRange(0, min(len(taken)-1, 5)).Draw(t, "of")].ID
		}
	case run.Settle:
		for _, trouble := range v.Troubles {
			if trouble.Settled == nil {
				e.Of = trouble.Entry
			}
		}
	case run.Void, run.Seal:
		if rapid.IntRange(0, 9).Draw(t, "rare") > 0 && v.Now.Open.Steps > 0 {
			e.Act = run.Remark
		}
		e.Wrench = "W7"
	case run.Measure:
		e.Value = "21"
	case run.Printed:
		e.Sheet, e.Fingerprint = "card", w.Fingerprint
	}
	return e
}

// Random acts never reach what the rules forbid, a refused entry changes nothing,
// and a replay of what was taken returns the state that was seen.
func TestRandomActs(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.SampledFrom(works()).Draw(t, "work")
		state, now := w.Start(), start
		m := &model{}
		var taken []run.Entry
		for n := range rapid.IntRange(1, 80).Draw(t, "entries") {
			now = now.Add(time.Duration(rapid.SampledFrom([]int{-30, 0, 1, 1, 1, 20}).Draw(t, "minutes")) * time.Minute)
			before := state.At(now)
			e := drawn(t, before, w, taken)
			e.ID, e.Time = fmt.Sprint("e", n), now
			if r := state.Take(e); r != nil {
				mustBeSame(t, "a refused entry changed the run", before, state.At(now))
				continue
			}
			if forbidden := m.take(w, before, e); forbidden != "" {
				t.Fatalf("%s %d is taken: %s", e.Act, e.Step, forbidden)
			}
			taken = append(taken, e)
			after := state.At(now)
			if fault := impossible(w, after); fault != "" {
				t.Fatalf("after %s %d: %s", e.Act, e.Step, fault)
			}
			if r := state.Take(e); r != nil {
				t.Fatalf("sent twice, the entry is refused: %s", r)
			}
			mustBeSame(t, "sent twice", after, state.At(now))
		}
		mustBeSame(t, "replay", state.At(now), thawed(t, w).Replay(taken).At(now))
	})
}

func mustBeSame(t *rapid.T, what string, want, got any) {
	t.Helper()
	if reflect.DeepEqual(want, got) {
		return
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Fatalf("%s (- want, + got):\n%s", what, d)
	}
}

// thawed is a work as the record has kept it.
func thawed(t *rapid.T, w run.Work) run.Work {
	text, err := json.Marshal(w)
	if err != nil {
		t.Fatal(err)
	}
	var back run.Work
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	return back
}

// model keeps the rules in another way than the code: over the list of entries
// that count.
type model struct {
	accepted bool
	done     map[int]string // step → entry
	open     []run.Entry    // troubles and unsure angles
	sealed   bool
	void     bool
	ready    bool
}

// take says why an entry should not have been taken; it is given the view before
// it.
func (m *model) take(w run.Work, v run.View, e run.Entry) string {
	if (m.sealed || m.void) && e.Act != run.Correct {
		return "the run is closed"
	}
	step := stepIn(v, e.Step)
	switch e.Act {
	case run.Done:
		if why := m.forbids(w, v, e, step); why != "" {
			return why
		}
		if m.done == nil {
			m.done = map[int]string{}
		}
		m.done[e.Step] = e.ID
	case run.Report, run.Unsure:
		m.open = append(m.open, e)
	case run.Settle:
		m.close(func(o run.Entry) bool { return o.ID == e.Of })
	case run.Replace:
		if w.Direction == run.Loosen {
			return "nothing goes in while loosening"
		}
		id := fastenerOf(e, step)
		m.close(func(o run.Entry) bool { return fastenerOf(o, stepIn(v, o.Step)) == id })
	case run.Undo:
		for number, id := range m.done {
			if id == e.Of {
				delete(m.done, number)
			}
		}
		m.close(func(o run.Entry) bool { return o.ID == e.Of })
	case run.Accept:
		m.accepted = true
	case run.Ready:
		m.ready = true
	case run.Void:
		m.void = true
	case run.Seal:
		m.sealed = true
		if v.Now.Open.Steps > 0 || len(m.open) > 0 {
			return "it is sealed with open steps or troubles"
		}
	}
	return ""
}

// forbids says why a step must not be done (rules 2, 3, 5, 6, 8, 9, 11).
func (m *model) forbids(w run.Work, v run.View, e run.Entry, step run.Step) string {
	if m.done[e.Step] != "" || step.Old {
		return "it is done a second time"
	}
	if len(w.ToAccept) > 0 && !m.accepted {
		return "nothing was accepted"
	}
	if w.Job != "" && !m.ready {
		return "nothing was ready"
	}
	if e.Note == "" && step.State != run.IsDone && (v.Next == nil || *v.Next != e.Step) {
		return "it is out of order without a reason"
	}
	if step.Do == plan.Wait && step.State != run.IsDone {
		return "the wait is not over"
	}
	for _, o := range m.open {
		at := stepIn(v, o.Step)
		stage := w.Direction == run.Tighten && o.Act == run.Report && o.Trouble != run.Seized && o.Trouble != run.OtherTrouble
		if id := fastenerOf(o, at); id != "" && slices.Contains(step.IDs, id) || o.Step == e.Step {
			return "its fastener is blocked by " + o.ID
		}
		if stage && step.Recovery == 0 && step.Stage >= at.Stage && at.Recovery == 0 {
			return "its stage is blocked by " + o.ID
		}
	}
	return ""
}

func (m *model) close(which func(run.Entry) bool) { m.open = slices.DeleteFunc(m.open, which) }

func stepIn(v run.View, number int) run.Step {
	i := slices.IndexFunc(v.Steps, func(s run.Step) bool { return s.Number == number })
	if i < 0 {
		return run.Step{}
	}
	return v.Steps[i]
}

func fastenerOf(e run.Entry, step run.Step) string {
	if e.Place != nil {
		return e.Place.Fastener
	}
	return step.ID
}

// impossible says what of a view can never be.
func impossible(w run.Work, v run.View) string {
	numbers := map[int]bool{}
	for _, s := range v.Steps {
		if numbers[s.Number] {
			return fmt.Sprintf("step number %d is there twice", s.Number)
		}
		numbers[s.Number] = true
		if v.Status == run.Sealed && s.State != run.IsDone && s.State != run.LeftOut {
			return fmt.Sprintf("sealed with step %d %s", s.Number, s.State)
		}
		if s.State == run.LeftOut && s.Reason == "" {
			return fmt.Sprintf("step %d is left out without a reason", s.Number)
		}
	}
	for _, s := range w.Steps {
		if !numbers[s.Number] {
			return fmt.Sprintf("step %d of the plan is gone", s.Number)
		}
	}
	if v.Next != nil {
		next := stepIn(v, *v.Next)
		if next.State != run.ToDo && next.State != run.Waiting || next.Old || v.Status != run.Open {
			return fmt.Sprintf("next is step %d, which is %s", next.Number, next.State)
		}
	}
	if v.Now.Done.Steps+v.Now.Open.Steps > len(v.Steps) {
		return "more steps are counted than there are"
	}
	return ""
}

// Entries on different fasteners give the same state in any accepted order.
func TestOrderOfEntriesOnDifferentFasteners(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.SampledFrom(works()[:8]).Draw(t, "work") // one fastener a step
		entries := onFasteners(t, w)
		first := allTaken(w, entries)
		other := allTaken(w, shuffled(t, entries))
		if first == nil || other == nil {
			t.Skip("one of the orders is refused")
		}
		mustBeSame(t, "another order", *first, *other)
	})
}

// placed is an entry with the fastener that it is on; none for the whole run.
type placed struct {
	run.Entry
	fastener string
}

// onFasteners draws entries on fasteners, those of each in an order that holds.
func onFasteners(t *rapid.T, w run.Work) []placed {
	state, now := w.Start(), start
	var all []placed
	on := map[string]string{} // of an entry
	take := func(e run.Entry, fastener string) {
		now = now.Add(time.Minute)
		e.ID, e.Time = fmt.Sprint("e", len(all)), now
		if state.Take(e) == nil {
			all, on[e.ID] = append(all, placed{e, fastener}), fastener
		}
	}
	take(run.Entry{Act: run.Accept, Who: "RA"}, "")
	take(run.Entry{Act: run.Ready, Who: "RA"}, "")
	for range rapid.IntRange(2, 24).Draw(t, "entries") {
		v := state.At(now)
		e := drawn(t, v, w, entriesOf(all))
		if !slices.Contains([]run.Act{run.Done, run.Report, run.Unsure, run.Settle, run.Replace, run.LeaveOut, run.Undo}, e.Act) {
			e.Act, e.Of = run.Done, ""
		}
		if e.Act == run.Report && w.Direction == run.Tighten {
			e.Trouble = rapid.SampledFrom([]run.Trouble{run.Seized, run.OtherTrouble}).Draw(t, "that blocks no stage")
		}
		e.Note = "a reason"
		fastener := stepIn(v, e.Step).ID
		if e.Of != "" {
			e.Step, fastener = 0, on[e.Of]
		}
		if fastener != "" {
			take(e, fastener)
		}
	}
	return all
}

func entriesOf(all []placed) []run.Entry {
	entries := make([]run.Entry, len(all))
	for i, p := range all {
		entries[i] = p.Entry
	}
	return entries
}

// shuffled keeps the order of the entries on each fastener; those on the whole
// run stay first.
func shuffled(t *rapid.T, entries []placed) []placed {
	var all []placed
	byFastener := map[string][]placed{}
	var names []string
	for _, p := range entries {
		switch {
		case p.fastener == "":
			all = append(all, p)
			continue
		case byFastener[p.fastener] == nil:
			names = append(names, p.fastener)
		}
		byFastener[p.fastener] = append(byFastener[p.fastener], p)
	}
	for len(names) > 0 {
		name := rapid.SampledFrom(names).Draw(t, "fastener next")
		all = append(all, byFastener[name][0])
		if byFastener[name] = byFastener[name][1:]; len(byFastener[name]) == 0 {
			names = slices.DeleteFunc(names, func(n string) bool { return n == name })
		}
	}
	return all
}

// allTaken returns the view after entries; nil where one of them is refused.
func allTaken(w run.Work, entries []placed) *run.View {
	state := w.Start()
	for _, p := range entries {
		if state.Take(p.Entry) != nil {
			return nil
		}
	}
	v := state.At(start.Add(24 * time.Hour))
	return &v
}

// A record that somebody changed is replayed without a panic.
func TestReplayOfAnything(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.SampledFrom(works()).Draw(t, "work")
		texts := rapid.SampledFrom([]string{"", "e1", "e2", "B1", "S9", "T1", "bolt", "1e400"})
		var entries []run.Entry
		for n := range rapid.IntRange(1, 20).Draw(t, "entries") {
			e := run.Entry{
				ID: fmt.Sprint("e", n), Act: rapid.SampledFrom(append([]run.Act{"", "part", "none"}, run.Acts...)).Draw(t, "act"),
				Step: rapid.IntRange(-1, 60).Draw(t, "step"), Of: texts.Draw(t, "of"), Kind: texts.Draw(t, "kind"),
				Value: run.Value(texts.Draw(t, "value")), Trouble: rapid.SampledFrom(run.Troubles).Draw(t, "trouble"), Time: start,
			}
			if rapid.Bool().Draw(t, "placed") {
				e.Place = &run.Place{Fastener: texts.Draw(t, "fastener"), Station: texts.Draw(t, "station")}
			}
			entries = append(entries, e)
		}
		if got := w.Replay(entries).At(start).Version; got != len(entries) {
			t.Errorf("version %d of %d entries", got, len(entries))
		}
	})
}
