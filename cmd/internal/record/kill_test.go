package record

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"drawdown/cmd/internal/record/servertest"
	"drawdown/geometry/testkit"
	"drawdown/sequence/run"
)

// child is set for a process that appends until it is killed.
const child = "DRAWDOWN_RECORD_CHILD"

func TestMain(m *testing.M) {
	if place := os.Getenv(child); place != "" {
		appendUntilKilled(placeOf(place), os.Getenv(child+"_NAME"), os.Stdout)
		return
	}
	status := m.Run()
	servertest.End()
	os.Exit(status)
}

// placeOf reads the place of a record from the environment.
func placeOf(text string) Place {
	if strings.HasPrefix(text, "postgres://") {
		return Place{Address: text}
	}
	return Place{Folder: text}
}

// taps is how many entries a process would append if it were not killed.
const taps = 1000

// appendUntilKilled appends to a run from four tablets and prints the id of each
// entry once it is confirmed.
func appendUntilKilled(at Place, name string, out io.Writer) {
	prepareChild()
	s, err := Open(at)
	if err != nil {
		fmt.Fprintln(out, "error", err)
		os.Exit(3)
	}
	confirmed := make(chan string)
	for tablet := range 4 {
		go func() {
			for i := range taps / 4 {
				id := fmt.Sprint(name, "-", tablet, "-", i)
				_, err := s.Append("R1", run.Entry{ID: id, Act: run.Remark, Who: fmt.Sprint("W", tablet), Note: strings.Repeat("what was seen ", 20), Time: time.Now()}, nil)
				if err != nil {
					confirmed <- "error " + err.Error()
					return
				}
				confirmed <- id
			}
		}()
	}
	for line := range confirmed {
		fmt.Fprintln(out, line)
		if strings.HasPrefix(line, "error") {
			s.Close()
			return
		}
	}
}

// started starts a process that appends, and returns a scanner of its output.
func started(t *testing.T, at Place, name string, more ...string) (*exec.Cmd, *bufio.Scanner) {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), append(more, child+"="+at.Folder+at.Address, child+"_NAME="+name)...)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return c, bufio.NewScanner(out)
}

// After a kill at any moment no confirmed entry is lost or duplicated, the file
// is intact and the chain is valid. An unconfirmed entry may be there or not.
func TestKilledWhileAppending(t *testing.T) { onEach(t, testKilledWhileAppending) }

func testKilledWhileAppending(t *testing.T, at Place) {
	s := opened(t, at)
	added(t, s, headRun)
	closed(t, s)
	random := rand.New(rand.NewPCG(1, 2))
	var confirmed []string
	for round := range testkit.Samples(2, 100) {
		c, lines := started(t, at, fmt.Sprint("k", round))
		left := 1 + random.IntN(taps-1)
		if !testkit.Full() {
			left = 1 + left%60
		}
		for lines.Scan() {
			if strings.HasPrefix(lines.Text(), "error") {
				t.Fatal(lines.Text())
			}
			confirmed = append(confirmed, lines.Text())
			if left--; left == 0 {
				time.Sleep(time.Duration(random.IntN(3000)) * time.Microsecond)
				c.Process.Kill()
			}
		}
		c.Wait() // it was killed
		checkKept(t, at, confirmed)
	}
	if len(confirmed) < 10 {
		t.Errorf("only %d entries were confirmed", len(confirmed))
	}
}

// checkKept opens a store again and checks that everything confirmed is there
// once.
func checkKept(t *testing.T, at Place, confirmed []string) {
	t.Helper()
	s := opened(t, at)
	defer closed(t, s)
	if at.isFile() {
		var whole string
		if err := s.read.QueryRow("PRAGMA integrity_check").Scan(&whole); err != nil || whole != "ok" {
			t.Fatal(whole, err)
		}
	}
	sound(t, s)
	kept, err := s.Entries("R1", 0)
	if err != nil {
		t.Fatal(err)
	}
	times := map[string]int{}
	for i, k := range kept {
		times[k.ID]++
		if times[k.ID] > 1 || k.Version != i+1 {
			t.Errorf("entry %s is there %d times; version %d at %d", k.ID, times[k.ID], k.Version, i+1)
		}
	}
	for _, id := range confirmed {
		if times[id] == 0 {
			t.Errorf("entry %s was confirmed and is lost", id)
		}
	}
}
