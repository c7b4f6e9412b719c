package bench

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/sequence/run"
	"drawdown/sequence/tension/wrench"
)

// ISO 6789:2003: usable from a fifth of the end of the scale, ±4 % above 10 N·m.
func TestFactsOfAWrench(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		from wrench.Wrench
		want run.WrenchFacts
	}{
		{wrench.Wrench{Name: "long", Min: 20, Max: 200, Number: "W7", Calibrated: "2026-03-01"}, run.WrenchFacts{Listed: true, FromNm: 40, ToNm: 200, Tolerance: 0.04, Calibrated: "2026-03-01"}},
		{wrench.Wrench{Name: "small", Max: 8, Number: "W1"}, run.WrenchFacts{Listed: true, FromNm: 1.6, ToNm: 8, Tolerance: 0.06}},
	} {
		if diff := cmp.Diff(&c.want, factsOf(c.from)); diff != "" {
			t.Errorf("%s: %s", c.from.Name, diff)
		}
	}
}
