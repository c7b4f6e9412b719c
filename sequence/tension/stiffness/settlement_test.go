package stiffness

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"
)

// VDI 2230-1, table 5, and the examples of its text: a bolt with nut and two
// plates has one thread, two faces and one joint (values from memory).
func TestEmbeddingFromMemory(t *testing.T) {
	if got := embedding(2, 1); got != 3+6+2 {
		t.Errorf("%v µm", got)
	}
}

// The loss follows from the flattening and the stiffness of the joint; a long
// grip loses less.
func TestSettlementFollowsTheStiffness(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}
	var last unit.Force = 1e9
	for _, grip := range []unit.Length{10, 20, 40, 80, 160} {
		r, err := Settle(b, Grip{Layers: []Layer{{grip / 2, "steel"}, {grip / 2, "steel"}}}, 40000)
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, "flattening", r.Micrometres, 11, 1e-12)
		series := 1 / (1/float64(r.Joint.Bolt) + 1/float64(r.Joint.Members))
		tensiontest.Near(t, "loss", float64(r.Loss), math.Min(0.011*series, 40000), 1e-9)
		if r.Loss >= last || math.Abs(r.LossShare*40000-float64(r.Loss)) > 1e-9 {
			t.Errorf("grip %v loses %v after %v", grip, r.Loss, last)
		}
		last = r.Loss
	}
	// Screwed in: one face and one joint, 3 + 3 + 2 µm.
	if r, err := Settle(b, Grip{Layers: []Layer{{20, "steel"}}, TappedIn: "steel"}, 40000); err != nil || r.Micrometres != 8 {
		t.Errorf("%v µm, %v", r.Micrometres, err)
	}
}
