package teardown

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/finding"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// rebuild is a machine with two joints that have the same four bolts, used once; one
// has a gasket and a sealant, a part between them is new in places.
func rebuild() Work {
	lid, caps := lid(), lid()
	caps.Name = "caps"
	for _, p := range []*plan.Plan{&lid, &caps} {
		p.Kinds[0].Class, p.Kinds[0].Length = "10.9", 120
	}
	return OfMachine("pump", overhaul.Overhaul{Tasks: []overhaul.Task{
		{Joint: &lid, Gaskets: []string{"lid gasket"}, Sealant: "liquid sealant"}, {Joint: &caps}, {Part: "rotor", New: []string{"shaft seal"}},
	}}, nil)
}

func ready(id, kind, joint, value string) run.Entry {
	e := entry(id, run.Ready, 0, "")
	e.Kind, e.Joint, e.Value, e.Time = kind, joint, run.Value(value), began.Add(time.Minute)
	return e
}

// needs are those of both joints.
func needs(w Work, s *State, condemned ...run.Condemned) []Need {
	return append(w.JointNeeds("lid", condemned, s.ReadyFor("lid")), w.JointNeeds("caps", nil, s.ReadyFor("caps"))...)
}

// Like bolts of two joints are one line, the condemned one is among them; what
// arrives is counted once.
func TestShopping(t *testing.T) {
	w := rebuild()
	s := w.Start()
	for _, e := range []run.Entry{ready("a", "main", "lid", "3"), ready("b", "lid gasket", "", ""), ready("c", "main", "lid", "9")} {
		if r := s.Take(e, nil); r != nil {
			t.Fatal(r)
		}
	}
	broken := run.Condemned{ID: "A2", Kind: "main", Trouble: run.Broken, Mark: run.Mark{At: began}}
	v := s.View(nil, needs(w, s, broken))
	want := []Supply{
		{Sort: Bolt, What: "main", Class: "10.9", Count: 8, Ready: 4, Joints: []string{"lid", "caps"}, Condemned: []string{"Lid A2"}},
		{Sort: Gasket, What: "lid gasket", Count: 1, Ready: 1, Joints: []string{"lid"}},
		{Sort: NewPart, What: "shaft seal", Part: "rotor"},
		{Sort: Sealant, What: "liquid sealant", Joints: []string{"lid"}},
	}
	if diff := cmp.Diff(want, v.Shopping()); diff != "" {
		t.Error(diff)
	}
	if r := s.Take(ready("d", "", "", ""), nil); r != nil {
		t.Fatal(r)
	}
	for _, one := range s.View(nil, needs(w, s, broken)).Shopping() {
		if !one.Met() {
			t.Errorf("%+v is not ready", one)
		}
	}
}

// What is ready for one joint is not for another; what nobody asks for is refused.
func TestReadyForAJoint(t *testing.T) {
	w := rebuild()
	s := w.Replay([]run.Entry{ready("a", "main", "caps", ""), ready("b", "lid gasket", "", "")})
	for _, n := range needs(w, s) {
		if n.Met() != (n.Joint == "caps") {
			t.Errorf("%+v", n)
		}
	}
	if last := s.ReadyFor("lid"); len(last) != 2 || last[1].Kind != run.GasketKind {
		t.Errorf("%+v", last)
	}
	for want, e := range map[finding.Code]run.Entry{run.NoSuchKind: ready("x", "rubber band", "", ""), NoSuchJoint: ready("y", "main", "sump", "")} {
		if r := s.Take(e, nil); r == nil || r.Finding.Code != want {
			t.Errorf("%v, want %s", r, want)
		}
	}
	named := Need{Joint: "lid", Need: run.Need{Kind: run.GasketKind, Count: 1, Gasket: "fibre sheet"}}
	if v := s.View(nil, []Need{named}); !v.Named(named) || v.Shopping()[0].What != "lid gasket" {
		t.Errorf("the gasket is listed twice: %+v", v.Shopping())
	}
}
