package head

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

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
		s := tensiontest.Thread(t, c.thread)
		across, _, err := HexagonAcross(s)
		if err != nil {
			t.Error(err)
		}
		hole, _ := Hole(s)
		tensiontest.Near(t, c.thread+" across flats", float64(across), c.across, 1e-9)
		tensiontest.Near(t, c.thread+" face", float64(BearingFace(across, s.Unified())), c.face, 0.0003) // printed to 0.01 mm
		tensiontest.Near(t, c.thread+" hole", float64(hole), c.hole, 1e-9)
	}
}

// Widths across flats from memory: ISO 272 beside ISO 4014, and ASME B18.2.1
// above 2 in, 1.5 times the diameter.
func TestHeadsBesideTheUsualSizes(t *testing.T) {
	for name, want := range map[string]unit.Length{"M7": 11, "M72": 105, "M80": 115, "M90": 130, "M100": 145, "2 1/4-4.5 UNC": 85.725, "3-4 UNC": 114.3, "4-8 UN": 152.4} {
		across, standard, err := HexagonAcross(threadNamed(t, name))
		if err != nil || math.Abs(float64(across-want)) > 1e-9 || !strings.HasPrefix(standard, "ISO 272") && !strings.HasPrefix(standard, "ASME B18.2.1") {
			t.Errorf("%s: %v by %s, %v", name, across, standard, err)
		}
	}
}
