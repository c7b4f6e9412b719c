package testkit

import (
	"encoding/csv"
	"io/fs"
	"strconv"
)

// Published reads the rows of a table that names its source, without the first
// row, which has the column names.
func Published(t TB, folder fs.FS, file string) [][]string {
	t.Helper()
	f, err := folder.Open(file)
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

// Number reads a figure of a table.
func Number(t TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
