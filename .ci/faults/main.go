// Faults plants the faults of a list one at a time and asks whether the package's own
// tests notice:
//
//	go run ./.ci/faults [-only sequence/judge] [-check] .ci/faults/faults.txt
//
// Each fault is a file and a text of it, before and after. A changed copy is built by
// an overlay, so that the tree stays as it is. It prints the faults that lived, and
// fails where one did, or where a text no longer stands in its file once; -check looks
// for that alone.
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// fault is one change of a file.
type fault struct{ file, before, after string }

func main() {
	only := flag.String("only", "", "plant only those of files under `folder`")
	check := flag.Bool("check", false, "plant nothing: look whether each text stands in its file")
	flag.Parse()
	do := plantAll
	if *check {
		do = checkAll
	}
	if err := do(flag.Arg(0), *only); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// checkAll looks whether every text stands in its file once.
func checkAll(list, only string) error {
	faults, err := listed(list, only)
	if err != nil {
		return err
	}
	for _, f := range faults {
		if _, err := f.changed(); err != nil {
			return err
		}
	}
	return nil
}

func plantAll(list, only string) error {
	faults, err := listed(list, only)
	if err != nil {
		return err
	}
	planted, lived := 0, 0
	for _, f := range faults {
		noticed, err := f.plant()
		if err != nil {
			return err
		}
		planted++
		if !noticed {
			lived++
			fmt.Printf("lived  %s: %s → %s\n", f.file, f.before, f.after)
		}
	}
	fmt.Printf("%d of %d planted faults fail a test of their package\n", planted-lived, planted)
	if lived > 0 {
		return fmt.Errorf("%d lived", lived)
	}
	return nil
}

// listed reads the faults of files under a folder.
func listed(list, only string) ([]fault, error) {
	text, err := os.ReadFile(list)
	if err != nil {
		return nil, err
	}
	faults, err := read(string(text))
	return slices.DeleteFunc(faults, func(f fault) bool { return !strings.HasPrefix(f.file, only) }), err
}

// read takes blocks of three lines: the file, "- " before, "+ " after. Lines that begin
// with # are comments.
func read(text string) ([]fault, error) {
	var faults []fault
	var lines []string
	for line := range strings.Lines(text) {
		if line = strings.TrimRight(line, "\n"); line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if lines = append(lines, line); len(lines) < 3 {
			continue
		}
		before, isBefore := strings.CutPrefix(lines[1], "- ")
		after, isAfter := strings.CutPrefix(lines[2], "+ ")
		if !isBefore || !isAfter {
			return nil, fmt.Errorf("%q: a file, a line with - and a line with + are needed", lines)
		}
		faults, lines = append(faults, fault{lines[0], before, after}), nil
	}
	if lines != nil {
		return nil, fmt.Errorf("%q: the last fault is not whole", lines)
	}
	return faults, nil
}

// changed is the file with the fault in it.
func (f fault) changed() ([]byte, error) {
	source, err := os.ReadFile(f.file)
	if err != nil {
		return nil, err
	}
	if n := bytes.Count(source, []byte(f.before)); n != 1 {
		return nil, fmt.Errorf("%s: %q stands in the file %d times; once is needed", f.file, f.before, n)
	}
	return bytes.Replace(source, []byte(f.before), []byte(f.after), 1), nil
}

// plant builds the changed package and runs its tests; true: one fails.
func (f fault) plant() (noticed bool, err error) {
	source, err := f.changed()
	if err != nil {
		return false, err
	}
	work, err := os.MkdirTemp("", "faults")
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(work)
	changed := filepath.Join(work, filepath.Base(f.file))
	if err := os.WriteFile(changed, source, 0o600); err != nil {
		return false, err
	}
	whole, err := filepath.Abs(f.file)
	if err != nil {
		return false, err
	}
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{whole: changed}})
	if err != nil {
		return false, err
	}
	list := filepath.Join(work, "overlay.json")
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		return false, err
	}
	return fails("./"+filepath.Dir(f.file), list, filepath.Join(work, "tests"))
}

// fails reports whether the tests of a folder fail. Tests that cannot be built
// are no answer.
func fails(folder, overlay, binary string) (bool, error) {
	said, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", binary, folder).CombinedOutput()
	if err != nil {
		return false, fmt.Errorf("%w\n%s", err, said)
	}
	tests := exec.Command(binary, "-test.short", "-test.failfast", "-test.timeout=5m")
	tests.Dir = folder
	return tests.Run() != nil, nil
}
