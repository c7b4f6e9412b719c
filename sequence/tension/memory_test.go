package tension

import (
	"testing"

	"drawdown/geometry/unit"
)

// The figures of this file are values from memory of the tables named.

func TestStrengthsFromMemory(t *testing.T) {
	const ksi = 6.894757293168361
	for _, c := range []struct {
		class, thread         string
		proof, yield, tensile float64
	}{
		{"4.8", "M8", 310, 340, 420},                          // ISO 898-1, table 3
		{"5.8", "M8", 380, 420, 520},                          // ISO 898-1, table 3
		{"9.8", "M16", 650, 720, 900},                         // ISO 898-1, table 3
		{"grade 2", "7/8-9", 33 * ksi, 36 * ksi, 60 * ksi},    // SAE J429, over 3/4 in
		{"grade 5", "1 1/8-7", 74 * ksi, 81 * ksi, 105 * ksi}, // SAE J429, over 1 in
		{"B7", "1-8", 0.85 * 105 * ksi, 105 * ksi, 125 * ksi}, // ASTM A193; proof by Shigley, 0.85 of yield
		{"A2-80", "M8", 0.85 * 600, 600, 800},                 // ISO 3506-1, table 2
		{"A4-80", "M24", 0.85 * 600, 600, 800},                // ISO 3506-1, table 2
	} {
		got := mustClass(t, c.class, mustThread(t, c.thread))
		near(t, c.class+" proof", float64(got.Proof), c.proof, 1e-9)
		near(t, c.class+" yield", float64(got.Yield), c.yield, 1e-9)
		near(t, c.class+" tensile", float64(got.Tensile), c.tensile, 1e-9)
	}
}

// ISO 4014 tables: s, least dw, ISO 273 medium. ASME B18.2.1 across flats and
// ASME B18.2.8 normal holes, in inches.
func TestHeadsAndHolesFromMemory(t *testing.T) {
	for _, c := range []struct {
		thread             string
		across, face, hole float64 // mm
	}{
		{"M3", 5.5, 4.57, 3.4},
		{"M4", 7, 5.88, 4.5},
		{"M5", 8, 6.88, 5.5},
		{"M30", 46, 42.75, 33},
		{"M36", 55, 51.11, 39},
		{"M48", 75, 69.45, 52},
		{"1/4-20", 25.4 * 7 / 16, 0.9 * 25.4 * 7 / 16, 25.4 * 9 / 32},
		{"3/8-16", 25.4 * 9 / 16, 0.9 * 25.4 * 9 / 16, 25.4 * 13 / 32},
		{"1/2-13", 25.4 * 3 / 4, 0.9 * 25.4 * 3 / 4, 25.4 * 9 / 16},
		{"1-8", 25.4 * 3 / 2, 0.9 * 25.4 * 3 / 2, 25.4 * 35 / 32},
		{"1 1/2-6", 25.4 * 9 / 4, 0.9 * 25.4 * 9 / 4, 25.4 * 13 / 8},
	} {
		s := mustThread(t, c.thread)
		across, _, err := HexagonAcross(s)
		if err != nil {
			t.Error(err)
		}
		hole, _ := ClearanceHole(s)
		near(t, c.thread+" across flats", float64(across), c.across, 1e-9)
		near(t, c.thread+" face", float64(BearingFace(across, s.Unified())), c.face, 0.0003) // printed to 0.01 mm
		near(t, c.thread+" hole", float64(hole), c.hole, 1e-9)
	}
}

// VDI 2230, table A5: oiled austenitic steel reaches class D, 0.35.
func TestAustenitic(t *testing.T) {
	m8 := mustThread(t, "M8")
	for lubricant, want := range map[string]Range{
		"engine oil": {0.08, 0.215, 0.35},
		"moly paste": {0.08, 0.12, 0.16},
	} {
		got, err := Target(Bolt{Thread: m8, Class: "A4-70", Lubricant: lubricant, HeadAcross: unit.Length(13)})
		if err != nil {
			t.Error(err)
		}
		near(t, lubricant+" low", got.Friction.Thread.Low, want.Low, 1e-9)
		near(t, lubricant+" nominal", got.Friction.Thread.Nominal, want.Nominal, 1e-9)
		near(t, lubricant+" high", got.Friction.Head.High, want.High, 1e-9)
	}
}
