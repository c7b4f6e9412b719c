package patterns

import (
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
)

// First principles: a bolt that is not turned by its angle stays at the torque
// before it; another source is another procedure.
func TestStagesReplaced(t *testing.T) {
	t.Parallel()
	const below = "tighten: {source: manual 3, stages: [{of: [main], torque: 40 N·m}, {wait: 5 min}, {of: [main], angle: 90°}, {of: [main], angle: 90°}, {of: [side], torque: 20 N·m}]}\n"
	for what, test := range map[string]struct {
		stages, source string
		warned, noted  bool
	}{
		"the same angle in one stage": {"{of: [main], torque: 40 N·m}, {wait: 5 min}, {of: [main], angle: 180°}, {of: side, torque: 20 N·m}", "", false, true},
		"an angle for all":            {"{torque: 20 N·m}, {wait: 5 min}, {angle: 90°}, {angle: 90°}, {of: side, torque: 20 N·m}", "", false, false},
		"another angle":               {"{of: main, torque: 40 N·m}, {wait: 5 min}, {of: main, angle: 80°}, {of: main, angle: 80°}, {of: side, torque: 20 N·m}", "", false, false},
		"one more":                    {"{of: main, torque: 20 N·m}, {of: main, torque: 40 N·m}, {wait: 5 min}, {of: main, angle: 90°}, {of: main, angle: 90°}, {of: side, torque: 20 N·m}", "", false, false},
		"the wait lost":               {"{of: main, torque: 20 N·m}, {of: main, torque: 40 N·m}, {of: main, angle: 90°}, {of: main, angle: 90°}, {of: side, torque: 20 N·m}", "", false, true},
		"half the angle":              {"{of: main, torque: 40 N·m}, {wait: 5 min}, {of: main, angle: 90°}, {of: side, torque: 20 N·m}", "", true, false},
		"no angle":                    {"{of: main, torque: 20 N·m}, {of: main, torque: 40 N·m}, {wait: 5 min}, {of: main, torque: 60 N·m}, {of: side, torque: 20 N·m}", "", true, false},
		"no angle, the same source":   {"{of: main, torque: 40 N·m}, {of: side, torque: 20 N·m}", ", source: manual 3", true, false},
		"no angle, another source":    {"{of: main, torque: 40 N·m}, {of: side, torque: 20 N·m}", ", source: bulletin 7", false, true},
	} {
		_, problems := chain(t, below, "tighten: {stages: ["+test.stages+"]"+test.source+"}\n")
		for code, want := range map[finding.Code]bool{meaning.AngleLost: test.warned, meaning.StagesReplaced: test.noted} {
			if has(problems, code, "") != want {
				t.Errorf("%s: %q is %v: %v", what, code, !want, said(problems))
			}
		}
	}
}
