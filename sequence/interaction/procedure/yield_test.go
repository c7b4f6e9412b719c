package procedure

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// While the nut is turned, torsion takes its share: √(1 + 3 (3 arm/dS)²) of the
// yield load at nominal friction (VDI 2230-1, section 5.4.3). Elongation by
// Hooke's law: see TestStretchByHooke.
func TestTurnedBoltYieldsEarlier(t *testing.T) {
	t.Parallel()
	k := kindOf(t, "main", "M10", "10.9", screw.Between(0.10, 0.14))
	arm := screw.ThreadArmMm(*k.Thread, 0.12, screw.Exact)
	ratio := 3 * arm / k.Thread.StressDiameterMm()
	want := YieldN(k) / math.Sqrt(1+3*ratio*ratio)
	if got := YieldTurnedN(k); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("%v N; want %v", got, want)
	}
	if got := StretchMm(k, 20000); got != 0 {
		t.Errorf("%v mm without a grip", got)
	}
	k.Grip, k.FullThread = unit.Length(95), true
	if got := StretchMm(k, 29047); math.Abs(got-0.28) > 0.0005 {
		t.Errorf("%v mm", got)
	}
	k.Thread = nil
	if YieldTurnedN(k) != 0 || StretchMm(k, 20000) != 0 {
		t.Error("a bolt without a thread")
	}
}
