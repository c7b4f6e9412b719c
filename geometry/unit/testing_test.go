package unit_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"drawdown/render/words"
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

// said words an error as people read it.
func said(err error) string { return words.English().Error(err) }

// near allows for the rounding of two products in floating point.
func near(got, want float64) bool { return math.Abs(got-want) <= 1e-14*math.Abs(want) }
