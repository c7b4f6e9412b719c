package wrench

import (
	"math"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// TM 9-254: 12 in wrench, 2 in extension, 60 lbf·in set give 70 lbf·in.
func TestExtensionOfTM9_254(t *testing.T) {
	tensiontest.Near(t, "torque", float64(FastenerTorque(60*tensiontest.PoundInch, 12*in, 2*in, 0))/tensiontest.PoundInch, tensiontest.Worked(t, "TM 9-254", "fastener torque"), 1e-12)
}

// TM 1-1500-204-23-9: 300 lbf·in with 4 in on 10 in; printed in whole lbf·in.
func TestExtensionOfTM1_1500(t *testing.T) {
	got := float64(Setting(300*tensiontest.PoundInch, 10*in, 4*in, 0)) / tensiontest.PoundInch
	if math.Round(got) != tensiontest.Worked(t, "TM 1-1500", "setting") {
		t.Errorf("%.3f lbf·in", got)
	}
}

func TestAdaptersAgainstIndependentArithmetic(t *testing.T) {
	for _, row := range tensiontest.Published(t, "adapters.csv") {
		v := func(i int) float64 { return testkit.Number(t, row[i]) }
		got := float64(Setting(unit.Torque(v(0)), unit.Length(v(1)), unit.Length(v(2)), unit.Angle(v(3))))
		if math.Abs(got-v(4)) > 0.00051 {
			t.Errorf("%v: %.5f", row, got)
		}
	}
}

// TM 1-1500-204-23-9: with a shortening adapter the setting is T L/(L − A); at
// a right angle there is exactly no change.
func TestAdapterBackAndAcross(t *testing.T) {
	tensiontest.Near(t, "back", float64(Setting(100, 400, 50, 180)), 100.0*400/350, 1e-12)
	if got := Setting(100, 400, 50, 90); got != 100 {
		t.Errorf("at a right angle %v", got)
	}
}

// ISO 6789:2003 (seen in a data sheet): ±4 % above 10 N·m, ±6 % to 10 N·m;
// tested from 20 % of the maximum.
func TestToleranceOfISO6789(t *testing.T) {
	for maxNm, want := range map[float64]float64{5: 0.06, 10: 0.06, 10.5: 0.04, 200: 0.04} {
		if got := Tolerance(maxNm); got != want {
			t.Errorf("%v N·m: %v; want %v", maxNm, got, want)
		}
	}
	least, most := Wrench{Min: 5, Max: 100}.UsableNm()
	if least != 20 || most != 100 {
		t.Errorf("usable %v to %v", least, most)
	}
}
