package head_test

import (
	"testing"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
)

// ISO 273, values from memory: medium 6.6, 9, 11 and 13.5 mm for M6 to M12,
// with the fine and coarse series. First principles: the guessed thread goes
// through its hole.
func TestThreadForHole(t *testing.T) {
	for _, c := range []struct {
		hole unit.Length
		name string
		sure bool
	}{
		{6.6, "M6", true}, {9, "M8", true}, {11, "M10", true}, {13.5, "M12", true},
		{6.4, "M6", true}, {8.4, "M8", true}, {10, "M8", true}, {10.5, "M10", true}, {12, "M10", true}, {14.5, "M12", true},
		{6.52, "M6", true}, {9.08, "M8", true}, // as a caliper reads them
		{7.6, "M6", false}, {19.5, "M16", false}, {2, "", false}, {60, "M36", false},
	} {
		name, sure := head.ThreadForHole(c.hole)
		if name != c.name || sure != c.sure {
			t.Errorf("a hole of %v: %q, sure %v; want %q, %v", c.hole, name, sure, c.name, c.sure)
		}
		if name == "" {
			continue
		}
		made, err := thread.Parse(name)
		if err != nil || unit.Length(made.MajorMm) >= c.hole {
			t.Errorf("%s does not fit through %v: %v", name, c.hole, err)
		}
	}
}
