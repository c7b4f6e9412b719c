//go:build linux

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"drawdown/geometry/testkit"
)

func TestMain(m *testing.M) {
	status := m.Run()
	os.RemoveAll(folderOfBuild)
	os.Exit(status)
}

var folderOfBuild string

// build compiles the program once for all tests.
var build = sync.OnceValues(func() (program string, err error) {
	if folderOfBuild, err = os.MkdirTemp("", "drawdown"); err != nil {
		return "", err
	}
	program = filepath.Join(folderOfBuild, "drawdown")
	command := exec.Command("go", "build", "-o", program, ".")
	command.Env = append(os.Environ(), "CGO_ENABLED=0") // as the README does
	if out, err := command.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w\n%s", err, out)
	}
	return program, nil
})

func built(t testing.TB) string {
	t.Helper()
	program, err := build()
	if err != nil {
		t.Fatal(err)
	}
	return program
}

// cold runs a command to its end and returns the shortest time of several runs.
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

// held is the most memory that a process held, in kilobytes.
type held struct {
	own int // made while it ran: what another process cannot share
	all int // with the pages of the program's file that it touched
}

// peak runs a command to its end and returns the most memory that it held. The
// system's account of an ended child also counts what the test itself held when
// it started the child; so the child's own account is read while it runs. It
// runs on one core: each further one keeps memory at hand for itself, and where
// cores are busy the collector comes late.
func peak(t testing.TB, name string, args ...string) (most held) {
	t.Helper()
	command := exec.Command(name, args...)
	command.Env = append(os.Environ(), "GOMAXPROCS=1")
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
			return most
		default:
			now := heldBy(command.Process.Pid)
			most = held{max(most.own, now.own), max(most.all, now.all)}
			time.Sleep(100 * time.Microsecond) // reading takes a core from the command
		}
	}
}

// heldBy reads what a process holds, and the most that it held in all; nothing
// once it is gone.
func heldBy(pid int) (kB held) {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return held{}
	}
	for name, to := range map[string]*int{"RssAnon:": &kB.own, "VmHWM:": &kB.all} {
		_, rest, _ := strings.Cut(string(status), name)
		fmt.Sscan(rest, to)
	}
	return kB
}

// One card, both sides, as PDF and as pictures at 300 dpi, takes at most 12 MB of
// its own on one core. With the program it stays under 35 MB: the system maps the file of the
// program around what is used, shares these pages between processes and takes
// them back when it needs them, and the file holds the bench page and two
// databases too. Of three readings the greatest of its own counts, and the least with
// the program: how much of the file the system maps around depends on what else
// it holds.
func TestMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program, most := built(t), held{}
	for range 3 {
		now := peak(t, program, "card", "p4-head", "-o", t.TempDir())
		most.own = max(most.own, now.own)
		if most.all == 0 || now.all < most.all {
			most.all = now.all
		}
	}
	t.Logf("%d kB of its own, %d kB with the program", most.own, most.all)
	if most.own < 1000 || most.own > 12*1024 {
		t.Errorf("one card takes %d kB of its own; wanted is a reading, and at most 12 MB", most.own)
	}
	if most.all > 35*1024 {
		t.Errorf("one card takes %d kB with the program; wanted are at most 35 MB", most.all)
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
