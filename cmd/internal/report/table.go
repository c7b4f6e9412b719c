package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// Columns are the widths of a text table's columns, in characters. A negative
// one is for words, which stand at its left. A blank stands between columns.
type Columns []int

// Row prints a row of the table. What is too long for a column of words is
// cut; cells at the end may be left out.
func (c Columns) Row(to io.Writer, cells ...string) {
	row := make([]string, len(cells))
	for i, cell := range cells {
		if width := -c[i]; width > 0 && utf8.RuneCountInString(cell) > width {
			cell = string([]rune(cell)[:width-1]) + "…"
		}
		row[i] = fmt.Sprintf("%*s", c[i], cell)
	}
	fmt.Fprintln(to, strings.TrimRight(strings.Join(row, " "), " "))
}
