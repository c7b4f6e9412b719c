//go:build linux

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/testkit"
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

// cold runs a command to its end and gives the shortest time of several runs.
func cold(t testing.TB, runs int, name string, args ...string) (best time.Duration) {
	t.Helper()
	best = time.Hour
	for range runs {
		begin := time.Now()
		if out, err := exec.Command(name, args...).CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		best = min(best, time.Since(begin))
	}
	return best
}

// peak runs a command to its end and gives the most memory that it held, in
// kilobytes. The system's account of an ended child also counts what the test
// itself held when it started the child; so the child's own high-water mark is
// read while it runs.
func peak(t testing.TB, name string, args ...string) (highKB int) {
	t.Helper()
	command := exec.Command(name, args...)
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- command.Wait() }()
	for {
		select {
		case err := <-ended:
			if err != nil {
				t.Fatal(err)
			}
			return highKB
		default:
			highKB = max(highKB, highWaterKB(command.Process.Pid))
		}
	}
}

// highWaterKB reads the most memory that a process has held so far; 0 once it
// is gone.
func highWaterKB(pid int) (kB int) {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	_, rest, _ := strings.Cut(string(status), "VmHWM:")
	fmt.Sscan(rest, &kB)
	return kB
}

// One card, both sides, as PDF and as pictures at 300 dpi, stays under 25 MB.
// The greatest of three readings counts.
func TestMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program, mostKB := built(t), 0
	for range 3 {
		mostKB = max(mostKB, peak(t, program, "card", "p4-head", "-o", t.TempDir()))
	}
	t.Logf("%d kB", mostKB)
	if mostKB < 1000 || mostKB > 25*1024 {
		t.Errorf("one card takes %d kB; wanted is a reading, and at most 25 MB", mostKB)
	}
}

// BenchmarkSpeedLimit holds a card as PDF, from the start of the process to the
// closed file, to a twentieth of what a script in a general-purpose plotting
// library takes for the same card.
func BenchmarkSpeedLimit(b *testing.B) {
	const most = 1.0 / 20
	python, program := testkit.Python(b, "matplotlib"), built(b)
	scene := filepath.Join("..", "..", "render", "sheet", "card", "testdata", "p4-head.scene")
	ours, theirs := time.Hour, time.Hour
	// A neighbour's burst may fall on one side alone: both take turns.
	for round := 0; round < 10 && (round < 3 || float64(ours) > most*float64(theirs)); round++ {
		ours = min(ours, cold(b, 5, program, "card", "p4-head", "--format", "pdf", "-o", b.TempDir()))
		theirs = min(theirs, cold(b, 1, python, filepath.Join("testdata", "matplotlib_card.py"), scene, filepath.Join(b.TempDir(), "card.pdf")))
	}
	b.Logf("%v against %v: 1/%.0f", ours, theirs, float64(theirs)/float64(ours))
	if float64(ours) > most*float64(theirs) {
		b.Errorf("%v is more than a twentieth of %v", ours, theirs)
	}
}
