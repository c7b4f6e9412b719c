// Mutants changes a package in one place at a time and asks whether the
// package's own tests notice:
//
//	go run ./.ci/mutants [-every 5] [-from 0] [-run Test…] [-skip Test…] ./geometry/family …
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
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

func main() {
	every := flag.Int("every", 1, "try every `n`th change")
	from := flag.Int("from", 0, "start with change `n`")
	tests := flag.String("run", "", "run only the tests that match `pattern`")
	skip := flag.String("skip", "", "run no test that matches `pattern`: what only slow tests notice lives")
	flag.Parse()
	status := 0
	for _, folder := range flag.Args() {
		if err := try(folder, *from, *every, *tests, *skip); err != nil {
			fmt.Fprintf(os.Stderr, "%s: %v\n", folder, err)
			status = 1
		}
	}
	os.Exit(status)
}

// try builds the changed package and runs its tests for every nth change.
func try(folder string, from, every int, tests, skip string) error {
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
	start := time.Now()
	said, ok := b.passes(0, time.Hour, "-test.v", "-test.run", tests, "-test.skip", skip)
	if !ok {
		return fmt.Errorf("its tests fail without a change")
	}
	limit := 5*time.Since(start) + 2*time.Second
	quick := quickTests(said)
	done := quick
	if skip != "" {
		done += "|" + skip
	}
	lives := func(change int) bool {
		if _, ok := b.passes(change, limit, "-test.run", quick); !ok {
			return false
		}
		_, ok := b.passes(change, limit, "-test.run", tests, "-test.skip", done)
		return ok
	}
	tried, killed := 0, 0
	for i := from; i < len(changes); i += every {
		tried++
		if lives(i + 1) {
			fmt.Printf("lived  %s\n", changes[i])
			continue
		}
		killed++
	}
	fmt.Printf("%s: killed %d of %d tried (%d changes), %.0f %%\n",
		folder, killed, tried, len(changes), 100*float64(killed)/float64(max(tried, 1)))
	return nil
}

// passes reports whether the tests pass within the limit, and what they print.
// Change 0 is none.
func (b built) passes(change int, limit time.Duration, flags ...string) (string, bool) {
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	flags = slices.Concat([]string{"-test.short", "-test.failfast"}, flags, b.flags)
	binary := exec.CommandContext(ctx, b.binary, flags...)
	binary.Dir = b.folder
	binary.Env = append(os.Environ(), fmt.Sprintf("%s=%d", variable, change))
	said, err := binary.Output()
	return string(said), err == nil
}

// quickTests is a pattern for the tests that take no time. They run first, as
// most changes fail one of them.
func quickTests(said string) string {
	const slowSeconds = 0.1
	quick := []string{"none"}
	for _, passed := range regexp.MustCompile(`(?m)^--- PASS: (\w+) \((.*)s\)$`).FindAllStringSubmatch(said, -1) {
		if seconds, err := strconv.ParseFloat(passed[2], 64); err == nil && seconds < slowSeconds {
			quick = append(quick, passed[1])
		}
	}
	return "^(" + strings.Join(quick, "|") + ")$"
}
