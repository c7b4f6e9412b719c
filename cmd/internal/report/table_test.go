package report

import (
	"strings"
	"testing"
)

// First principles: each cell is aligned with the start or end of its column.
func TestRow(t *testing.T) {
	var to strings.Builder
	columns := Columns{-7, 5, 4}
	columns.Row(&to, "", "low", "SD")
	columns.Row(&to, "ø 8 mm", "99.5", "±1")
	columns.Row(&to, "far too long", "1")
	columns.Row(&to, "words", "")
	want := "" +
		"          low   SD\n" +
		"ø 8 mm   99.5   ±1\n" +
		"far to…     1\n" +
		"words\n"
	if got := to.String(); got != want {
		t.Errorf("prints\n%swant\n%s", got, want)
	}
}
