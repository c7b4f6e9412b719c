package stiffness

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"
)

// VDI 2230-1, section 5.1.2.1 (value from memory): if grip divided by face is 2
// and the members are as wide as the face, the logarithms for the bolted joint
// are zero; for the tapped joint this is so at 1. The others by independent
// arithmetic from the same equations, to 3 decimals.
func TestConeTangentsFromMemory(t *testing.T) {
	for _, c := range []struct {
		grip, outer unit.Length // over a face of 1
		tapped      bool
		want        float64
	}{
		{2, 1, false, 0.362}, {1, 1, true, 0.348},
		{6, 2, false, 0.503}, // 0.362 + 0.032·1.0986 + 0.153·0.6931
		{6, 2, true, 0.505},  // 0.348 + 0.013·1.7918 + 0.193·0.6931
		{2, unit.Length(math.Inf(1)), false, 0.530},
	} {
		if got := ConeTangent(c.grip, 1, c.outer, c.tapped); math.Abs(got-c.want) > 0.00051 {
			t.Errorf("%+v: %.4f", c, got)
		}
	}
}

// VDI 2230-1, section 5.1.1.1 (lengths from memory), by independent arithmetic:
// hexagon and socket M10, 95 mm of grip of which 11 mm are thread. δ in mm/MN.
func TestBoltResilienceFromMemory(t *testing.T) {
	const elastic = 0.205 // N/mm² divided by 10⁶
	area, core := math.Pi/4*100, math.Pi/4*8.159696*8.159696
	for _, c := range []struct {
		head          head.Form
		tapped        string
		headMm, other float64
	}{
		{head.Hexagon, "", 5, 4 / (elastic * area)},
		{head.Socket, "", 4, 4 / (elastic * area)},
		{head.Flange, "", 5, 4 / (elastic * area)},
		{head.Hexagon, "cast aluminium", 5, 3.3 / (0.075 * area)},
	} {
		j, err := Of(screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil", HeadForm: c.head},
			Grip{Layers: []Layer{{95, "steel"}}, TappedIn: c.tapped, Shank: []Section{{84, 10}}})
		if err != nil {
			t.Fatal(err)
		}
		want := (c.headMm+84)/(elastic*area) + (11+5)/(elastic*core) + c.other
		tensiontest.Near(t, string(c.head)+" "+c.tapped, 1e6/float64(j.Bolt), want, 1e-6)
	}
}
