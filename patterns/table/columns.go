package table

import (
	"regexp"
	"slices"
	"strings"

	"drawdown/patterns/nodes"
)

// line is a row of a table, with the place of each cell.
type line []*nodes.Node

func (l line) texts() []string {
	texts := make([]string, len(l))
	for i, n := range l {
		texts[i] = n.Text
	}
	return texts
}

func (l line) text(i int) string {
	if i < 0 || i >= len(l) {
		return ""
	}
	return l[i].Text
}

// filled is the number of cells up to the last one with text.
func (l line) filled() int {
	n := len(l)
	for n > 0 && l[n-1].Text == "" {
		n--
	}
	return n
}

// isComment reports whether a line is a comment. A cell with the sign alone is
// the heading of a column of numbers.
func (l line) isComment() bool {
	return strings.HasPrefix(l[0].Text, "#") && (l[0].Text != "#" || l.filled() == 1)
}

// layout is a way to separate the columns of a table, with its rows.
type layout struct {
	separator string // as in findings: comma, semicolon, tab, bar, blanks
	rows      []line
	heading   int // index of the heading in rows; -1: none
	points    int // rows with two numbers where x and y are expected
}

var separators = []struct {
	name string
	sign rune
}{{"tab", '\t'}, {"semicolon", ';'}, {"comma", ','}, {"bar", '|'}}

// runs of blanks separate columns only if no sign does: first those of two and
// more, then single ones.
var runs = []*regexp.Regexp{regexp.MustCompile(`(\S)( +) (\S)`), regexp.MustCompile(`(\S)( *) (\S)`)}

// bestLayout separates the columns in each way and returns that with a heading
// and the most points.
func (t *points) bestLayout() (layout, bool) {
	if t.stated != 0 {
		return t.separated(nameOf(t.stated), t.text, t.stated)
	}
	var best layout
	found := false
	better := func(l layout) bool {
		if (l.heading >= 0) != (best.heading >= 0) {
			return l.heading >= 0
		}
		return l.points > best.points
	}
	for _, s := range separators {
		if !strings.ContainsRune(t.text, s.sign) {
			continue
		}
		if l, ok := t.separated(s.name, t.text, s.sign); ok && (!found || better(l)) {
			best, found = l, true
		}
	}
	for _, run := range runs {
		if found && best.points > 0 || strings.ContainsRune(t.text, '\t') {
			break
		}
		// A tab in place of the last blank keeps the place of every cell.
		text := run.ReplaceAllString(run.ReplaceAllString(t.text, "$1$2\t$3"), "$1$2\t$3")
		if l, ok := t.separated("blanks", text, '\t'); ok && (!found || better(l)) {
			best, found = l, true
		}
	}
	if !found {
		return t.separated("comma", t.text, separator(t.file.Lines))
	}
	return best, true
}

func nameOf(sign rune) string {
	for _, s := range separators {
		if s.sign == sign {
			return s.name
		}
	}
	return string(sign)
}

// separated reads all rows; ok is false if a line is no row.
func (t *points) separated(name, text string, sign rune) (l layout, ok bool) {
	t.start(text, sign)
	t.in.LazyQuotes = true // a bare " is an inch sign
	l = layout{separator: name, heading: -1}
	for {
		cells, ok := t.row()
		if !ok {
			return l, false
		}
		if cells == nil {
			break
		}
		row := make(line, len(cells))
		for i, cell := range cells {
			row[i] = t.cell(i, cell)
		}
		if row.filled() > 0 {
			l.rows = append(l.rows, row)
		}
	}
	l.heading = slices.IndexFunc(l.rows, func(r line) bool { return !r.isComment() && namesPlaces(r.texts()) })
	x, y := -1, -1
	if l.heading >= 0 {
		columns := columnsOf(l.rows[l.heading])
		x, y = columns["x"], columns["y"]
	}
	for i, row := range l.rows {
		atX, atY := x, y
		if l.heading < 0 {
			atX, atY = 1, 2
			if row.filled() == 2 {
				atX, atY = 0, 1
			}
		}
		if i > l.heading && isNumber(row.text(atX)) && isNumber(row.text(atY)) {
			l.points++
		}
	}
	return l, true
}

// columnsOf returns the column that is used for each meaning.
func columnsOf(row line) map[string]int {
	columns, ranks := map[string]int{}, map[string]int{}
	for i, n := range row {
		h := headingOf(n.Text)
		if _, known := columns[h.column]; h.column != "" && (!known || h.rank < ranks[h.column]) {
			columns[h.column], ranks[h.column] = i, h.rank
		}
	}
	return columns
}
