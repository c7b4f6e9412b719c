package patterns

import (
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
)

// The head is a form or a width across flats, and affects the calculated
// torque: by first principles a wider bearing face needs more of it.
func TestHeadsOfKinds(t *testing.T) {
	var last unit.GivenTorque
	for _, c := range []struct {
		head   string
		form   head.Form
		across unit.Length
	}{
		{"16 mm", "", 16},
		{"socket", head.Socket, 0},
		{"flange", head.Flange, 0},
	} {
		in, problems := readText(lid + `kinds: {main: {thread: M10, class: "10.9", friction: 0.12, head: ` + c.head + `}}
fasteners: [{id: A, at: [0, 0]}]
tighten: {stages: [{percent: 100}]}
`)
		if problems.Stops() || len(in.Kinds) != 1 {
			t.Fatalf("%s: %v", c.head, problems)
		}
		if k := in.Kinds[0]; k.HeadForm != c.form || k.HeadAcross != c.across {
			t.Errorf("%s: %q and %v", c.head, k.HeadForm, k.HeadAcross)
		}
		p, err := plan.Build(in)
		if err != nil {
			t.Fatal(err)
		}
		torque := p.Tighten.Stages[0].Torque
		if torque.Nm() <= last.Nm() {
			t.Errorf("%s: %v after %v", c.head, torque, last)
		}
		last = torque
	}
}
