package strength

import (
	"testing"

	"drawdown/sequence/tension/tensiontest"
)

// The figures in this file are values from memory of the named tables.

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
		got := mustClass(t, c.class, tensiontest.Thread(t, c.thread))
		tensiontest.Near(t, c.class+" proof", float64(got.Proof), c.proof, 1e-9)
		tensiontest.Near(t, c.class+" yield", float64(got.Yield), c.yield, 1e-9)
		tensiontest.Near(t, c.class+" tensile", float64(got.Tensile), c.tensile, 1e-9)
	}
}
