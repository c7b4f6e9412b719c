package table_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/table"
)

// Common practice, no source: spreadsheets evaluate a cell that begins with one
// of these signs, and treat one after an apostrophe as text. A negative number
// stays a number.
func TestNoCellIsAFormula(t *testing.T) {
	t.Parallel()
	joint := geometry.Joint{}
	for i, kind := range []string{"=1+1", "+main", "-main", "@main", "'=x", "main", "-5", "m=3", "'main"} {
		joint.Fasteners = append(joint.Fasteners, geometry.Fastener{ID: string(rune('A' + i)), Kind: kind, At: geometry.Point{X: -30 * float64(i+1), Y: -7.5}})
	}
	joint.Fasteners[0].ID, joint.Fasteners[1].Mark = "-A1", "=B2"
	written := table.Write(joint)
	rows, err := csv.NewReader(strings.NewReader(string(written))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, row := range rows[1:] {
		kinds = append(kinds, row[3])
		if !strings.HasPrefix(row[1], "-") || row[2] != "-7.5" {
			t.Errorf("a number became %q, %q", row[1], row[2])
		}
	}
	want := []string{"'=1+1", "'+main", "'-main", "'@main", "''=x", "main", "-5", "m=3", "''main"}
	if diff := cmp.Diff(want, kinds); diff != "" {
		t.Error(diff)
	}
	if rows[1][0] != "'-A1" || rows[2][5] != "'=B2" {
		t.Errorf("id %q, mark %q", rows[1][0], rows[2][5])
	}
	back, problems := table.Read(patterns.FromBytes("p.csv", written))
	if diff := cmp.Diff(joint.Fasteners, back.Joint.Fasteners); diff != "" || problems.Stops() {
		t.Errorf("read back: %v\n%s", problems, diff)
	}
}
