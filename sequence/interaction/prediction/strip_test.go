package prediction_test

import (
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// First principles: if the gasket's width is not stated, the assumption is
// listed, for any part; if it is stated, there is none.
func TestTheWidthOfTheGasketIsListed(t *testing.T) {
	head, inside := builtin(t, "p4-head"), builtin(t, "p4-cover")
	inside.Joint.Fasteners = slices.Clone(inside.Joint.Fasteners)
	inside.Joint.Fasteners[0].At = geometry.Point{X: 1, Y: 2}
	for _, c := range []struct {
		name   string
		p      plan.Plan
		stated setup.Setup
		want   finding.Values // nil: nothing
	}{
		{"between bores", head, setup.Setup{}, finding.Values{}},
		{"bolts inside the edge", inside, setup.Setup{}, finding.Values{"why": "inside"}},
		{"stated", inside, setup.Setup{Strip: 14}, nil},
	} {
		m, err := prediction.ModelOf(c.p, c.stated)
		if err != nil {
			t.Fatal(err)
		}
		k := slices.IndexFunc(m.Assumed, func(f finding.Finding) bool { return f.Code == setup.GasketWhole })
		if (k >= 0) != (c.want != nil) || k >= 0 && m.Assumed[k].Values["why"] != c.want["why"] {
			t.Errorf("%s: assumed %v, want %v", c.name, m.Assumed, c.want)
		}
	}
}

// The workshop calls thin fibre sheet paper.
func TestPaperIsFibreSheet(t *testing.T) {
	if g, err := compliance.ParseGasket("Paper"); err != nil || g != compliance.FibreSheet {
		t.Errorf("paper is %q, %v", g, err)
	}
}
