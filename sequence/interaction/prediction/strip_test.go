package prediction_test

import (
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// First principles: where nothing is said of the gasket's width, what is taken
// for it is listed, whatever the part; where it is stated, nothing is assumed.
func TestTheWidthOfTheGasketIsListed(t *testing.T) {
	head, inside := builtin(t, "p4-head"), builtin(t, "p4-cover")
	inside.Joint.Fasteners = slices.Clone(inside.Joint.Fasteners)
	inside.Joint.Fasteners[0].At = geometry.Point{X: 1, Y: 2}
	for _, c := range []struct {
		name   string
		p      plan.Plan
		stated setup.Setup
		want   string
	}{
		{"between bores", head, setup.Setup{}, "gasket over the whole face, assumed"},
		{"bolts inside the edge", inside, setup.Setup{}, "much depends on its width: state it"},
		{"stated", inside, setup.Setup{Strip: 14}, ""},
	} {
		m, err := prediction.ModelOf(c.p, c.stated)
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Join(m.Assumptions, "\n")
		if said := strings.Contains(got, "whole face"); said != (c.want != "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: assumed\n%s\nwant %q", c.name, got, c.want)
		}
	}
}

// A shop calls a thin sheet of fibre paper.
func TestPaperIsFibreSheet(t *testing.T) {
	if g, err := compliance.ParseGasket("Paper"); err != nil || g != compliance.FibreSheet {
		t.Errorf("paper is %q, %v", g, err)
	}
}
