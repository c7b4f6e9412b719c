package job

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/sequence/run"
	"drawdown/sequence/tension/wrench"
)

// ISO 6789:2003: usable from a fifth of the end of the scale, ±4 % above 10 N·m.
func TestWrenchFacts(t *testing.T) {
	t.Parallel()
	list := []wrench.Wrench{{Name: "plain", Max: 12}, {Name: "long", Min: 20, Max: 200, Number: "W7", Calibrated: "2026-03-01"}}
	for number, want := range map[string]run.WrenchFacts{
		"W7": {Listed: true, FromNm: 40, ToNm: 200, Tolerance: 0.04, Calibrated: "2026-03-01"},
		"W8": {},
		"":   {}, // an empty number does not match a wrench without a number
	} {
		if diff := cmp.Diff(&want, WrenchFacts(list, number)); diff != "" {
			t.Errorf("%q: %s", number, diff)
		}
	}
}
