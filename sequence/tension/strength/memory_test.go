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
		{"4.8", "M8", 310, 340, 420},                               // ISO 898-1, table 3
		{"5.8", "M8", 380, 420, 520},                               // ISO 898-1, table 3
		{"9.8", "M16", 650, 720, 900},                              // ISO 898-1, table 3
		{"grade 2", "7/8-9", 33 * ksi, 36 * ksi, 60 * ksi},         // SAE J429, over 3/4 in
		{"grade 5", "1 1/8-7", 74 * ksi, 81 * ksi, 105 * ksi},      // SAE J429, over 1 in
		{"B7", "1-8", 0.85 * 105 * ksi, 105 * ksi, 125 * ksi},      // ASTM A193; proof by Shigley, 0.85 of yield
		{"B7", "3-8 UN", 0.85 * 95 * ksi, 95 * ksi, 115 * ksi},     // ASTM A193, over 2 1/2 to 4 in
		{"B7", "M72", 0.85 * 655, 655, 795},                        // ASTM A193M, over M64
		{"A193 B7M", "1-8", 0.85 * 80 * ksi, 80 * ksi, 100 * ksi},  // ASTM A193
		{"b7m", "M30", 0.85 * 550, 550, 690},                       // ASTM A193M
		{"B16", "4-8 UN", 0.85 * 95 * ksi, 95 * ksi, 110 * ksi},    // ASTM A193, over 2 1/2 in
		{"B16", "M24", 0.85 * 725, 725, 860},                       // ASTM A193M
		{"B8", "3/4-10", 0.85 * 30 * ksi, 30 * ksi, 75 * ksi},      // ASTM A193, class 1
		{"A193 B8M class 1", "M20", 0.85 * 205, 205, 515},          // ASTM A193M, class 1
		{"A320 L7", "1-8", 0.85 * 105 * ksi, 105 * ksi, 125 * ksi}, // ASTM A320
		{"A325", "1/2-13", 85 * ksi, 92 * ksi, 120 * ksi},          // ASTM A325, to 1 in
		{"ASTM A325", "1 1/8-7", 74 * ksi, 81 * ksi, 105 * ksi},    // ASTM A325 (2010), over 1 in
		{"A490", "7/8-9", 120 * ksi, 130 * ksi, 150 * ksi},         // ASTM A490
		{"A2-80", "M8", 0.85 * 600, 600, 800},                      // ISO 3506-1, table 2
		{"A4-80", "M24", 0.85 * 600, 600, 800},                     // ISO 3506-1, table 2
	} {
		got := mustClass(t, c.class, tensiontest.Thread(t, c.thread))
		tensiontest.Near(t, c.class+" proof", float64(got.Proof), c.proof, 1e-9)
		tensiontest.Near(t, c.class+" yield", float64(got.Yield), c.yield, 1e-9)
		tensiontest.Near(t, c.class+" tensile", float64(got.Tensile), c.tensile, 1e-9)
	}
}
