// Mutants changes a package in one place at a time and asks whether the
// package's own tests notice:
//
//	go run ./.ci/mutants [-every 5] [-from 0] [-run Test…] ./geometry/family …
//
// All changes of a package are built into one test binary, by an overlay, so
// that the tree stays as it is; an environment variable switches one on. It
// prints the changes that lived and the share that was killed.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"time"
)

func main() {
	every := flag.Int("every", 1, "try every `n`th change")
	from := flag.Int("from", 0, "start with change `n`")
	tests := flag.String("run", "", "run only the tests that match `pattern`")
	flag.Parse()
	status := 0
	for _, folder := range flag.Args() {
		if err := try(folder, *from, *every, *tests); err != nil {
			fmt.Fprintf(os.Stderr, "%s: %v\n", folder, err)
			status = 1
		}
	}
	os.Exit(status)
}

// try builds the changed package and runs its tests for every nth change.
func try(folder string, from, every int, tests string) error {
	work, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	b, err := build(folder, work)
	if err != nil {
		return err
	}
	changes := b.changes
	run := func(change int, limit time.Duration) bool { return b.passes(tests, change, limit) }
	start := time.Now()
	if !run(0, time.Hour) {
		return fmt.Errorf("its tests fail without a change")
	}
	limit := 5*time.Since(start) + 2*time.Second
	tried, killed := 0, 0
	for i := from; i < len(changes); i += every {
		tried++
		if run(i+1, limit) {
			fmt.Printf("lived  %s\n", changes[i])
			continue
		}
		killed++
	}
	fmt.Printf("%s: killed %d of %d tried (%d changes), %.0f %%\n",
		folder, killed, tried, len(changes), 100*float64(killed)/float64(max(tried, 1)))
	return nil
}

// passes tells whether all tests pass within the limit. Change 0 is none.
func (b built) passes(tests string, change int, limit time.Duration) bool {
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	flags := append([]string{"-test.short", "-test.failfast", "-test.run", tests}, b.flags...)
	binary := exec.CommandContext(ctx, b.binary, flags...)
	binary.Dir = b.folder
	binary.Env = append(os.Environ(), fmt.Sprintf("%s=%d", variable, change))
	return binary.Run() == nil
}
