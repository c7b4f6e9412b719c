package figures_test

import (
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"
)

// Published: VDI 2230 Part 1, table A1 (testdata), the torques that use 90 % of
// the yield stress. None gives a warning at its own friction, and a quarter
// more, 112 %, always does.
func TestTorquesOfTheTableAreNotDoubted(t *testing.T) {
	for _, row := range tensiontest.Published(t, "vdi_2230_table_a1.csv") {
		mu, torque := testkit.Number(t, row[2]), testkit.Number(t, row[4])
		friction := screw.Same(screw.Range{Low: mu, Nominal: mu, High: mu + 0.01}) // a single mu would get the range of its class
		k := plan.Kind{Name: "main", Thread: named(t, row[0]), Class: row[1], Friction: &friction}
		if doubts := doubtsOn(t, k, torqueOf(torque)); strings.Contains(about(doubts), "torque") {
			t.Errorf("%v: %v", row, doubts)
		}
		if doubts := doubtsOn(t, k, torqueOf(1.25*torque)); !strings.HasPrefix(about(doubts), "1 torque") {
			t.Errorf("%v, a quarter more: %v", row, doubts)
		}
	}
}

// Published: RCSC, table 8.2 (testdata), nut rotations that take structural
// bolts past yield by design. The grip is the length less a nut and two turns;
// snug is a tenth of the bolt's own torque. Bolts that are used once give no
// warning, others do.
func TestTurnOfNutIsNotDoubted(t *testing.T) {
	for _, row := range tensiontest.Published(t, "turn_of_nut.csv") {
		k := plan.Kind{Name: "main", Thread: named(t, row[0]), Class: row[1], Lubricant: "as delivered"}
		d := k.Thread.MajorMm
		k.Length = unit.Length(testkit.Number(t, row[2]) * d)
		k.Grip = k.Length - unit.Length(0.9*d+2*k.Thread.PitchMm)
		target, err := screw.Target(k.Bolt())
		if err != nil {
			t.Fatal(err)
		}
		stages := []plan.StageInput{torqueOf(float64(target.Torque) / 10), angleOf(unit.Angle(testkit.Number(t, row[3])))}
		k.Reuse = plan.ReuseOnce
		if doubts := doubtsOn(t, k, stages...); len(doubts) > 0 {
			t.Errorf("%v: %v", row, doubts)
		}
		k.Reuse = plan.ReuseYes
		if doubts := doubtsOn(t, k, stages...); about(doubts) != "2 reuse" {
			t.Errorf("%v, used again: %v", row, doubts)
		}
	}
}
