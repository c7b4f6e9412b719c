//go:build linux

package main

import (
	"bytes"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"drawdown/geometry/testkit"
)

// written are the works that are killed. The files of a set have one stem and are
// all in one language.
var written = map[string][]string{
	"batch": {"card", "p4-head", "p4-cover", "--format", "pdf,svg", "--paper", "a5"},
	"book":  {"book", "p4-engine", "--trays", "none", "--format", "pdf,svg"},
	"trace": {"trace", "p4-pump-gasket"},
}

// A program that is killed while it writes leaves files that are whole, all of a
// set old or all new, or some of them missing until the next run, which also
// removes what is hidden.
func TestKilledWhileWriting(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program := built(t)
	r := rand.New(rand.NewPCG(9, 9))
	seen, old, fresh := map[string]int{}, map[string]map[string][]byte{}, map[string]map[string][]byte{}
	for name := range written {
		old[name], fresh[name] = run(t, program, name, "en"), run(t, program, name, "de")
	}
	for round := range testkit.Samples(3, 200) {
		name := slices.Sorted(maps.Keys(written))[round%len(written)]
		folder := t.TempDir()
		for file, data := range old[name] {
			if err := os.WriteFile(filepath.Join(folder, file), data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		command, ended := started(t, program, arguments(name, "de", folder))
		for range r.IntN(8) { // so many sets later
			awaitHidden(folder, ended)
		}
		time.Sleep(time.Duration(r.Float64() * float64(3*time.Millisecond)))
		_ = command.Process.Kill() // fails where it has ended
		<-ended
		seen[checkSets(t, folder, old[name], fresh[name])]++
		if out, err := exec.Command(program, "patterns", "p4-cover", "-o", folder).CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		if os.Remove(filepath.Join(folder, "p4-cover.yaml")) != nil || checkSets(t, folder, old[name], fresh[name]) == "some missing" {
			t.Errorf("round %d, %s: files are missing after the next run", round, name)
		}
		if hidden := hiddenIn(folder); len(hidden) > 0 {
			t.Errorf("round %d, %s: %q left after the next run", round, name, hidden)
		}
		if round%20 == 19 {
			t.Log(round+1, "kills:", seen)
		}
	}
	t.Log("all kills:", seen)
}

func arguments(name, language, folder string) []string {
	return append(slices.Clone(written[name]), "--lang", language, "-o", folder)
}

// run does a work whole and returns its files.
func run(t *testing.T, program, name, language string) map[string][]byte {
	t.Helper()
	folder := t.TempDir()
	if out, err := exec.Command(program, arguments(name, language, folder)...).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return filesIn(t, folder)
}

// filesIn reads the files of a folder that are not hidden.
func filesIn(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			data, err := os.ReadFile(filepath.Join(folder, e.Name()))
			if err != nil {
				t.Fatal(err)
			}
			all[e.Name()] = data
		}
	}
	return all
}

// started runs the program; ended is closed once it has ended.
func started(t *testing.T, program string, arguments []string) (command *exec.Cmd, ended chan struct{}) {
	t.Helper()
	command, ended = exec.Command(program, arguments...), make(chan struct{})
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	go func() {
		_ = command.Wait() // how it ended is looked at by the test
		close(ended)
	}()
	return command, ended
}

func hiddenIn(folder string) []string {
	hidden, _ := filepath.Glob(filepath.Join(folder, ".*"))
	return hidden
}

// awaitHidden waits for the end of a set that is being written, and for the next, or
// for the end of the program.
func awaitHidden(folder string, ended chan struct{}) {
	for _, there := range []bool{false, true} {
		for len(hiddenIn(folder)) > 0 != there {
			select {
			case <-ended:
				return
			case <-time.After(50 * time.Microsecond):
			}
		}
	}
}

// checkSets sees that every file is whole, and that none is old beside a new one of
// its set. It says what it has seen.
func checkSets(t *testing.T, folder string, old, fresh map[string][]byte) string {
	t.Helper()
	state := map[string]string{} // of each set
	now := filesIn(t, folder)
	for name, data := range now {
		is := ""
		switch {
		case bytes.Equal(data, old[name]):
			is = "old"
		case bytes.Equal(data, fresh[name]):
			is = "new"
		default:
			t.Errorf("%s of %d bytes is neither the old nor the new one", name, len(data))
		}
		stem := setOf(name)
		if was := state[stem]; was != "" && was != is && !bytes.Equal(old[name], fresh[name]) {
			t.Errorf("%s is %s beside a file of its set that is %s", name, is, was)
		}
		state[stem] = is
	}
	all := slices.Sorted(maps.Values(state))
	switch {
	case len(now) < len(old):
		return "some missing"
	case slices.Contains(all, "old") && slices.Contains(all, "new"):
		return "some sets new"
	case len(all) > 0:
		return "all " + all[0]
	}
	return "nothing"
}

// setOf returns the name that the files of a set have in common: p4-head of
// p4-head-tighten.svg. The book and the trace are one set each.
func setOf(name string) string {
	for _, stem := range []string{"p4-head", "p4-cover"} {
		if strings.HasPrefix(name, stem) {
			return stem
		}
	}
	return "all"
}

// Ended by Ctrl-C or by the system, the program leaves nothing hidden and ends by
// the signal, so that a script around it ends too.
func TestSignalLeavesNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	program := built(t)
	for _, s := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM} {
		for range testkit.Samples(2, 20) {
			folder := t.TempDir()
			command, ended := started(t, program, arguments("batch", "en", folder))
			awaitHidden(folder, ended)
			_ = command.Process.Signal(s)
			<-ended
			status := command.ProcessState.Sys().(syscall.WaitStatus)
			if !status.Signaled() && status.ExitStatus() != 0 || status.Signaled() && status.Signal() != s {
				t.Errorf("%v: ends with %v", s, command.ProcessState)
			}
			if hidden := hiddenIn(folder); len(hidden) > 0 {
				t.Errorf("%v: %q is left", s, hidden)
			}
		}
	}
}
