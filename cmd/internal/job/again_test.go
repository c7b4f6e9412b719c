package job

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/patterns/problem"
	"drawdown/sequence/overhaul"
)

// machineWith returns the problems of a machine with one joint that is
// tightened once more.
func machineWith(t *testing.T, kinds, stages string) problem.List {
	t.Helper()
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("lid.yaml", "drawdown: 1\ntitle: Lid\nkinds: {"+kinds+"}\nfasteners:\n"+
		"  - row: {count: 4, pitch: 60, from: [7, 3], kind: main, id: C}\n  - {id: D, at: [30, 90], kind: side}\n"+
		"tighten: {stages: ["+stages+"], source: works manual}\n")
	_, problems, err := LoadMachine(write("m.yaml", "drawdown: 1\nmachine: P4\nstrip:\n  - {joint: lid.yaml, again: when warm}\n"), nil)
	if err != nil {
		t.Fatal(err)
	}
	return problems
}

// Common practice: bolts stretched by an angle, and single-use bolts, are not
// tightened a second time, whichever kind of the joint they belong to.
func TestAgainNeverTurnsWhatIsStretched(t *testing.T) {
	for _, c := range []struct {
		name, kinds, stages string
		want                string
	}{
		{"torque", "main: {thread: M10}, side: {thread: M8}", "{torque: 40 N·m}", ""},
		{"angle", "main: {thread: M10}, side: {thread: M8}", "{of: [main], torque: 40 N·m}, {of: [main], angle: 90°}, {of: [side], torque: 20 N·m}", string(overhaul.AgainAfterAngle)},
		{"angle of the small ones", "main: {thread: M10}, side: {thread: M8}", "{torque: 20 N·m}, {of: [side], angle: 60°}", string(overhaul.AgainAfterAngle)},
		{"angle, then a wait", "main: {thread: M10}, side: {thread: M8}", "{torque: 20 N·m}, {angle: 60°}, {wait: 10 min}", string(overhaul.AgainAfterAngle)},
		{"used once", "main: {thread: M10}, side: {thread: M8, reuse: once}", "{torque: 20 N·m}", string(overhaul.AgainUsedOnce)},
	} {
		problems := machineWith(t, c.kinds, c.stages)
		var said []string
		for _, p := range problems {
			if p.Severity == problem.Error {
				said = append(said, string(p.Found.Code))
				if p.Line != 4 || !strings.HasSuffix(p.File, "m.yaml") {
					t.Errorf("%s: at %s:%d, want line 4 of m.yaml", c.name, p.File, p.Line)
				}
			}
		}
		if got := strings.Join(said, ", "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
