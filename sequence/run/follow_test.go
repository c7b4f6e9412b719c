package run_test

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

func same(t testing.TB, want, got any) {
	t.Helper()
	if d := cmp.Diff(want, got); d != "" {
		t.Fatalf("not the same (- want, + got):\n%s", d)
	}
}

// Every built-in pattern can be loosened, tightened and sealed.
func TestBuiltinsAreFollowed(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		for _, d := range []run.Direction{run.Loosen, run.Tighten} {
			t.Run(name+" "+string(d), func(t *testing.T) {
				t.Parallel()
				b := begin(t, run.New(builtin(t, name), d, nil))
				for len(b.view().Now.Open.Stages) > 0 || b.next() == 0 {
					b.all()
					if r := b.try(run.Entry{Act: run.Finished}); r != nil {
						break
					}
				}
				b.takes(run.Entry{Act: run.Seal, Wrench: "W7"})
				if got := b.view(); got.Status != run.Sealed || got.Next != nil || got.Now.Open.Steps != 0 {
					t.Errorf("state %s, next %v, %d steps open", got.Status, got.Next, got.Now.Open.Steps)
				}
				same(t, b.view(), b.work.Replay(b.taken).At(b.now))
			})
		}
	}
}

// The steps of a start are those of order --json, in its order.
func TestStepsAreNumberedAsPlanned(t *testing.T) {
	t.Parallel()
	p := builtin(t, "p4-head")
	w := run.New(p, run.Tighten, nil)
	for i, s := range p.Steps(p.Tighten) {
		got := w.Steps[i]
		if got.Number != i+1 || got.ID != s.Fastener.ID || got.Stage != s.Stage.Number || got.Do != s.Stage.Do {
			t.Errorf("step %d is %+v, want %s on %s in stage %d", i+1, got, s.Stage.Do, s.Fastener.ID, s.Stage.Number)
		}
	}
	if len(w.Steps) != len(p.Steps(p.Tighten)) || w.Steps[0].Do != plan.Tighten {
		t.Errorf("%d steps", len(w.Steps))
	}
}

// The record keeps a work as JSON without loss.
func TestWorkRoundTrip(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		p := builtin(t, name)
		w := run.New(p, run.Tighten, p.Figures)
		text, err := json.Marshal(w)
		if err != nil {
			t.Fatal(err)
		}
		var back run.Work
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		same(t, w, back)
	}
}
