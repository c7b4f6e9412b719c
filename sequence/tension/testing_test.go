package tension

import (
	"encoding/csv"
	"math"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/thread"

	"pgregory.net/rapid"
)

// published reads a table of testdata, which names its source, by rows; the
// first row holds the column names and is left out.
func published(t *testing.T, file string) [][]string {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", file, len(rows), err)
	}
	return rows[1:]
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func mustThread(t rapid.TB, name string) thread.Thread {
	t.Helper()
	s, err := thread.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func mustClass(t rapid.TB, text string, s thread.Thread) Strength {
	t.Helper()
	c, err := ParseClass(text, s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// near checks got against want within a relative tolerance.
func near(t rapid.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s: %.6g; want %.6g within %g %%", what, got, want, tolerance*100)
	}
}

// refuses checks that every spoilt input is an error that says its text, with
// no result beside it. The texts are our own words.
func refuses[In, Out any](t *testing.T, try func(In) (Out, error), good In, spoilt map[string]func(*In)) {
	t.Helper()
	var none Out
	for says, spoil := range spoilt {
		bad := good
		spoil(&bad)
		r, err := try(bad)
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("error %v; want it to say %q", err, says)
		}
		if !reflect.DeepEqual(r, none) {
			t.Errorf("%q: a result beside the error", says)
		}
	}
}
