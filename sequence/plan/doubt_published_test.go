package plan

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"drawdown/geometry/unit"
)

func rows(t *testing.T, path string) [][]string {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	table, err := reader.ReadAll()
	if err != nil || len(table) < 2 {
		t.Fatalf("%s: %d rows, %v", path, len(table), err)
	}
	return table[1:]
}

func figure(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Published: VDI 2230 Part 1, table A1 (testdata), the torques that use 90 % of
// the yield stress. None of them is doubted at its own friction, and a quarter
// more, 112 %, always is.
func TestTorquesOfTheTableAreNotDoubted(t *testing.T) {
	for _, row := range rows(t, "testdata/vdi_2230_table_a1.csv") {
		mu, torque := figure(t, row[2]), figure(t, row[4])
		k := Kind{Name: "main", Thread: named(t, row[0]), Class: row[1], Friction: &Friction{Range{mu, mu}, Range{mu, mu}}}
		if doubts := doubtsOn(t, k, torqueOf(torque)); len(doubts) > 0 {
			t.Errorf("%v: %v", row, doubts)
		}
		if doubts := doubtsOn(t, k, torqueOf(1.25*torque)); about(doubts) != "1 torque" {
			t.Errorf("%v, a quarter more: %v", row, doubts)
		}
	}
}

// Published: RCSC, table 8.2 (testdata), nut rotations that take structural
// bolts past yield by design. The grip is the length less a nut and two turns;
// snug is a tenth of the bolt's own torque. Bolts that are used once are not
// doubted, others are.
func TestTurnOfNutIsNotDoubted(t *testing.T) {
	for _, row := range rows(t, "testdata/turn_of_nut.csv") {
		k := Kind{Name: "main", Thread: named(t, row[0]), Class: row[1], Lubricant: "as delivered"}
		d := k.Thread.MajorMm
		k.Length = unit.Length(figure(t, row[2]) * d)
		k.Grip = k.Length - unit.Length(0.9*d+2*k.Thread.PitchMm)
		target, err := k.target()
		if err != nil {
			t.Fatal(err)
		}
		stages := []StageInput{torqueOf(float64(target.Torque) / 10), angleOf(unit.Angle(figure(t, row[3])))}
		k.Reuse = ReuseOnce
		if doubts := doubtsOn(t, k, stages...); len(doubts) > 0 {
			t.Errorf("%v: %v", row, doubts)
		}
		k.Reuse = ReuseYes
		if doubts := doubtsOn(t, k, stages...); about(doubts) != "2 reuse" {
			t.Errorf("%v, used again: %v", row, doubts)
		}
	}
}
