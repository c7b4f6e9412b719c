package stiffness

import (
	"slices"
	"strings"
	"testing"

	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"
)

// First principles: the head turns on the washer, whose hole is narrower than
// that of the part, so friction acts further in; the washer presses on a wider
// ring and adds its height and a joint.
func TestWasherUnderTheHead(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &screw.Friction{Thread: screw.Between(0.12, 0.12), Head: screw.Between(0.12, 0.12)}}
	bare, err := screw.Target(b)
	if err != nil {
		t.Fatal(err)
	}
	bareSettled, err := Settle(b, Simple(40), 40000, "", "")
	if err != nil {
		t.Fatal(err)
	}
	b.Washer = head.NormalWasher
	r, err := screw.Target(b)
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "preload", float64(r.Preload), float64(bare.Preload), 1e-12)
	tensiontest.Near(t, "effective", float64(r.Effective), (14.63+10.5)/2, 1e-9)
	tensiontest.Near(t, "pressed face", float64(r.PartFace), 14.63+1.6*2, 1e-9)
	tensiontest.Near(t, "hole of the part", float64(r.PartHole), 11, 1e-9)
	if r.Torque >= bare.Torque || !r.OnWasher || bare.OnWasher || bare.PartFace != bare.Face || bare.PartHole != bare.Hole {
		t.Errorf("%+v after %+v", r, bare)
	}
	if !slices.Contains(r.Assumptions, "washer 20 mm across, 2 mm thick, with a hole of 10.5 mm (ISO 7089 M10, 300 HV), which the head turns on, assumed") {
		t.Error(strings.Join(r.Assumptions, "\n"))
	}
	washed, err := screw.Complete(b)
	if err != nil {
		t.Fatal(err)
	}
	p, err := head.UnderHead(washed.Bearing, 40000, "cast aluminium")
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "pressure", float64(p.Pressure), float64(head.BearingPressure(40000, r.PartFace, 11)), 1e-12)
	if len(p.Notes) == 0 || !strings.HasPrefix(p.Notes[0], "the washer presses") {
		t.Error(p.Notes)
	}
	s, err := Settle(b, Simple(40), 40000, "", "")
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "grip", float64(s.Joint.Grip), 42, 1e-12)
	tensiontest.Near(t, "settlement", s.Micrometres, bareSettled.Micrometres+2, 1e-12) // VDI 2230-1, table 5: 2 µm for a joint
	// A washer of the bolt is as good as one that is stated as a layer.
	b.Washer = head.NoWasher
	layered, err := Of(b, Grip{Layers: []Layer{{2, "steel"}, {40, "steel"}}})
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "bolt", float64(s.Joint.Bolt), float64(layered.Bolt), 1e-12)
	tensiontest.Near(t, "members", float64(s.Joint.Members), float64(layered.Members), 1e-12)
}
