package job

import (
	"slices"
	"testing"

	"drawdown/render/sheet/handout"
)

// Figures are held up only where they tell the orders apart at every stiffness
// of the gasket. Which parts these are is pinned from our own output: the soft
// gasket of the head loses most when the edges go first, the flange with its
// gasket inside the bolts tips when it is gone round; a stiff manifold does not
// care.
func TestWhyFigures(t *testing.T) {
	for _, c := range []struct {
		pattern        string
		lowest, uneven bool
	}{{"p4-head", true, false}, {"p4-pump-flange", false, true}, {"p4-manifold", false, false}} {
		p, problems, err := Load(c.pattern, nil, "", "")
		if err != nil || problems.Stops() {
			t.Fatal(err, problems)
		}
		f := whyFigures(p)
		if f == nil {
			t.Fatalf("%s has no figures", c.pattern)
		}
		if f.TellsLowest != c.lowest || f.TellsUneven != c.uneven {
			t.Errorf("%s tells lowest %v, uneven %v: %+v", c.pattern, f.TellsLowest, f.TellsUneven, *f)
		}
		for _, band := range slices.Concat(f.LowestPercent[:], f.UnevenMm[:]) {
			if !(band.Low <= band.Nominal && band.Nominal <= band.High && band.High > 0) {
				t.Errorf("%s: a band of %+v", c.pattern, band)
			}
		}
		other := otherOrder(p)
		if handout.IsCircle(p) {
			// Once round goes from neighbour to neighbour.
			first := p.Joint.Fasteners[other[0]].At.Distance(p.Joint.Fasteners[other[1]].At)
			for k := 2; k < len(other); k++ {
				if step := p.Joint.Fasteners[other[k]].At.Distance(p.Joint.Fasteners[other[k-1]].At); step > first*1.01 {
					t.Errorf("%s: round the rim steps %g mm, then %g mm", c.pattern, first, step)
				}
			}
		} else if other[0] != p.Tighten.Order[len(other)-1] {
			t.Errorf("%s: edges first begins with %d", c.pattern, other[0])
		}
		slices.Sort(other)
		if len(slices.Compact(other)) != len(p.Joint.Fasteners) {
			t.Errorf("%s: the other order is no order: %v", c.pattern, other)
		}
	}
}
