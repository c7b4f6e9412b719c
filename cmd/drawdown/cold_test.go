//go:build linux

package main

import (
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// built compiles the program once for a test.
func built(t testing.TB) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "drawdown")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return program
}

// cold runs a command to its end and gives the shortest time of several runs,
// with the most memory that one took, in kilobytes.
func cold(t testing.TB, runs int, name string, args ...string) (best time.Duration, memoryKB int64) {
	t.Helper()
	best = time.Hour
	for range runs {
		command := exec.Command(name, args...)
		begin := time.Now()
		if out, err := command.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		best = min(best, time.Since(begin))
		memoryKB = max(memoryKB, command.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)
	}
	return best, memoryKB
}

// One card, both sides, as PDF and as pictures at 300 dpi, stays under 25 MB.
func TestMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	_, memoryKB := cold(t, 3, built(t), "card", "p4-head", "-o", t.TempDir())
	t.Logf("%d kB", memoryKB)
	if memoryKB > 25*1024 {
		t.Errorf("one card takes %d kB, more than 25 MB", memoryKB)
	}
}

// A card as PDF, from the start of the process to the closed file, takes at
// most a twentieth of what a script in a general-purpose plotting library takes
// for the same card. Skipped where that library is not there.
func TestColdAgainstMatplotlib(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	python := ""
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import matplotlib").Run() == nil {
			python = name
		}
	}
	if python == "" {
		t.Skip("matplotlib is not installed")
	}
	ours, _ := cold(t, 15, built(t), "card", "p4-head", "--format", "pdf", "-o", t.TempDir())
	scene := filepath.Join("..", "..", "render", "sheet", "testdata", "p4-head.scene")
	theirs, _ := cold(t, 3, python, filepath.Join("testdata", "matplotlib_card.py"), scene, filepath.Join(t.TempDir(), "card.pdf"))
	t.Logf("%v against %v: 1/%.0f", ours, theirs, float64(theirs)/float64(ours))
	if 20*ours > theirs {
		t.Errorf("%v is more than a twentieth of %v", ours, theirs)
	}
}
