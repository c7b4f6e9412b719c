package font

import (
	"testing"

	"drawdown/render/scene"
)

// A line never ends at a blank that holds a figure and its unit together.
func TestBreakKeepsWhatHoldsTogether(t *testing.T) {
	lines := Break("calibrated wrench for 24,5\u00a0N·m", scene.Regular, 3, Width("calibrated wrench for 24,5", scene.Regular, 3)+0.1)
	if len(lines) != 2 || lines[1] != "24,5\u00a0N·m" {
		t.Errorf("%q", lines)
	}
}
