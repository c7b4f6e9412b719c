package testkit

import (
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew; read every line of the change")

// Updating reports whether golden files are rewritten, by -update.
func Updating() bool { return *update }

// Golden compares a text with that of a golden file, line by line.
func Golden(t testing.TB, path string, got []byte) {
	t.Helper()
	want := GoldenBytes(t, path, got)
	want = bytes.ReplaceAll(want, []byte("\r\n"), []byte("\n")) // Windows may check it out this way
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); diff != "" {
		t.Errorf("%s (- golden, + got; -update writes it anew):\n%s", path, diff)
	}
}

// GoldenBytes returns the content of a golden file, after rewriting it if
// requested.
func GoldenBytes(t testing.TB, path string, got []byte) (want []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return want
}
