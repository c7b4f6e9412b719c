package font

import (
	"slices"
	"testing"

	"drawdown/render/scene"
)

// A line never ends at the space between a figure and its unit.
func TestBreakKeepsWhatHoldsTogether(t *testing.T) {
	lines := Break("wrench for 24,5\u00a0N·m", scene.Regular, 3, Width("wrench for 24,5", scene.Regular, 3)+0.1)
	if len(lines) != 2 || lines[1] != "24,5\u00a0N·m" {
		t.Errorf("%q", lines)
	}
}

// A single word on the last line looks lost, and moving another one down needs
// no more space. Of two words above, one stays alone either way.
func TestBreakLeavesNoWordAlone(t *testing.T) {
	for _, c := range []struct {
		text, width string // as wide as this
		want        []string
	}{
		{"edges cut. Glasses, gloves on.", "edges cut. Glasses, gloves", []string{"edges cut. Glasses,", "gloves on."}},
		{"Tray ready: the same way round. Then go.", "Tray ready: the same way", []string{"Tray ready: the same way", "round. Then go."}},
		{"check pass, clockwise", "check pass,", []string{"check pass,", "clockwise"}},
		{"seen from a corner, overlooking", "seen from a corner,", []string{"seen from a", "corner, overlooking"}},
		{"one of immediately, notwithstanding", "one of immediately,", []string{"one of immediately,", "notwithstanding"}}, // too wide together
	} {
		if got := Break(c.text, scene.Regular, 3, Width(c.width, scene.Regular, 3)+0.1); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}
