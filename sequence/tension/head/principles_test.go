package head

import (
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// Heads and holes increase with the thread, a hole clears its thread, and a
// standard face is wider than its hole.
func TestHeadsAndHolesRiseWithTheThread(t *testing.T) {
	metric := []string{"M1.6", "M2", "M2.5", "M3", "M3.5", "M4", "M5", "M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24", "M27", "M30", "M33", "M36", "M39", "M42", "M45", "M48", "M52", "M56", "M60", "M64"}
	inch := []string{"1/4-20", "5/16-18", "3/8-16", "7/16-14", "1/2-13", "9/16-12", "5/8-11", "3/4-10", "7/8-9", "1-8", "1 1/8-7", "1 1/4-7", "1 3/8-6", "1 1/2-6", "1 3/4-5", "2-4.5"}
	for _, series := range [][]string{metric, inch} {
		var across, hole unit.Length
		for _, name := range series {
			s := tensiontest.Thread(t, name)
			a, _, err := HexagonAcross(s)
			h, _ := Hole(s)
			if err != nil || a <= across || h <= hole || float64(h) <= s.MajorMm || BearingFace(a, s.Unified()) <= h {
				t.Errorf("%s: head %v after %v, hole %v after %v, face %v, %v", name, a, across, h, hole, BearingFace(a, s.Unified()), err)
			}
			across, hole = a, h
		}
	}
}
