package run_test

import (
	"fmt"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/source"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// builtin plans a built-in pattern.
func builtin(t testing.TB, name string) plan.Plan {
	t.Helper()
	from, err := patterns.Open(name, nil)
	if err != nil {
		t.Fatal(err)
	}
	return planOf(t, from)
}

func planOf(t testing.TB, from source.Source) plan.Plan {
	t.Helper()
	in, problems := patterns.Read(from)
	if problems.Stops() {
		t.Fatal(problems)
	}
	p, err := plan.Build(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// planText plans the text of a pattern file.
func planText(t testing.TB, text string) plan.Plan {
	t.Helper()
	return planOf(t, patterns.FromBytes("made-up.yaml", []byte(text)))
}

// start is the server's clock when a run of a test starts.
var start = time.Date(2026, 3, 14, 8, 0, 0, 0, time.UTC)

// bench is one run with a clock and made-up entry ids.
type bench struct {
	t     testing.TB
	work  run.Work
	state *run.State
	now   time.Time
	n     int
	taken []run.Entry
}

func begin(t testing.TB, w run.Work) *bench {
	return &bench{t: t, work: w, state: w.Start(), now: start}
}

// try sends an entry a minute after the last one.
func (b *bench) try(e run.Entry) *run.Refusal {
	b.n++
	b.now = b.now.Add(time.Minute)
	if e.ID == "" {
		e.ID = fmt.Sprint("e", b.n)
	}
	if e.Who == "" {
		e.Who = "RA"
	}
	e.Time = b.now
	r := b.state.Take(e)
	if r == nil {
		b.taken = append(b.taken, e)
	}
	return r
}

// takes sends an entry that must be taken, and returns its id.
func (b *bench) takes(e run.Entry) string {
	b.t.Helper()
	if r := b.try(e); r != nil {
		b.t.Fatalf("%s %d: %s", e.Act, e.Step, words.English().Say(r.Finding))
	}
	return b.taken[len(b.taken)-1].ID
}

// refuses sends an entry that must be refused for a reason, and checks that
// nothing changes.
func (b *bench) refuses(e run.Entry, want finding.Code) *run.Refusal {
	b.t.Helper()
	before := b.state.At(b.now)
	now := b.now
	r := b.try(e)
	if r == nil {
		b.t.Fatalf("%s %d is taken, want %q", e.Act, e.Step, want)
	}
	if r.Finding.Code != want {
		b.t.Fatalf("%s %d is refused by %q, want %q", e.Act, e.Step, r.Finding, want)
	}
	if said := words.English().Say(r.Finding); said == "" {
		b.t.Errorf("%q has no words", want)
	}
	same(b.t, before, b.state.At(now))
	return r
}

func (b *bench) view() run.View { return b.state.At(b.now) }

func (b *bench) next() int { return b.state.Next(b.now) }

// all does what comes next until nothing does; waits are begun and waited for.
func (b *bench) all() {
	b.t.Helper()
	for b.next() != 0 {
		b.doNext()
	}
}

func (b *bench) doNext() {
	b.t.Helper()
	step := b.step(b.next())
	if step.Do == plan.Wait {
		if step.State == run.ToDo {
			b.takes(run.Entry{Act: run.Begin, Step: step.Number})
		}
		b.now = b.now.Add(time.Duration(step.WaitMin) * time.Minute)
		return
	}
	b.takes(run.Entry{Act: run.Done, Step: step.Number})
}

func (b *bench) step(number int) run.Step {
	b.t.Helper()
	for _, s := range b.view().Steps {
		if s.Number == number {
			return s
		}
	}
	b.t.Fatalf("there is no step %d", number)
	return run.Step{}
}
