// Package tensiontest has what the tests of the packages beside it share: the
// published tables and how to compare a figure. Only tests import it.
package tensiontest

import (
	"embed"
	"io/fs"
	"math"
	"reflect"
	"strings"

	"drawdown/geometry/testkit"
	"drawdown/geometry/thread"
)

//go:embed testdata
var tables embed.FS

// Published reads the rows of a table of testdata that names its source, such
// as adapters.csv, without the first row, which has the column names.
func Published(t testkit.TB, file string) [][]string {
	t.Helper()
	folder, err := fs.Sub(tables, "testdata")
	if err != nil {
		t.Fatal(err)
	}
	return testkit.Published(t, folder, file)
}

// Units of the published tables: NIST SP 811, B.8.
const (
	PoundForce      = 4.4482216152605              // N
	PoundInch       = 0.11298482902761668          // N·m
	MillionLbfPerIn = 1e6 * 4.4482216152605 / 25.4 // N/mm
	MillionPsi      = 1e6 * 6.894757293168361e-3   // MPa
)

// Worked returns an answer of testdata/worked_examples.csv.
func Worked(t testkit.TB, example, quantity string) float64 {
	t.Helper()
	for _, row := range Published(t, "worked_examples.csv") {
		if row[0] == example && row[1] == quantity {
			return testkit.Number(t, row[2])
		}
	}
	t.Fatalf("no %s of %s", quantity, example)
	return 0
}

// Thread reads the name of an existing thread.
func Thread(t testkit.TB, name string) thread.Thread {
	t.Helper()
	s, err := thread.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Near checks got against want within a relative tolerance.
func Near(t testkit.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s: %.6g; want %.6g within %g %%", what, got, want, tolerance*100)
	}
}

// Refuses checks that every spoilt input gives an error with the expected text,
// and no result. The texts are ours, as worded by say.
func Refuses[In, Out any](t testkit.TB, say func(error) string, try func(In) (Out, error), good In, spoilt map[string]func(*In)) {
	t.Helper()
	var none Out
	for says, spoil := range spoilt {
		bad := good
		spoil(&bad)
		r, err := try(bad)
		if err == nil || !strings.Contains(say(err), says) {
			t.Errorf("error %v; want it to say %q", err, says)
		}
		if !reflect.DeepEqual(r, none) {
			t.Errorf("%q: a result beside the error", says)
		}
	}
}
