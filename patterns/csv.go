package patterns

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry"
	"drawdown/patterns/problem"
)

// The columns of a table of points. Tables without a heading have the first
// three, in this order.
var csvColumns = []string{"id", "x", "y", "kind", "cast", "mark"}

// WriteCSV writes the fasteners as a table: id, x, y in mm, kind, number cast,
// and the marks on the part where there are any.
func WriteCSV(j geometry.Joint) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	heading := []string{"id", "x mm", "y mm", "kind", "cast"}
	marked := slices.ContainsFunc(j.Fasteners, func(f geometry.Fastener) bool { return f.Mark != "" })
	if marked {
		heading = append(heading, "mark")
	}
	w.Write(heading) // a buffer takes all
	for _, f := range j.Fasteners {
		cast := ""
		if f.Cast > 0 {
			cast = strconv.Itoa(f.Cast)
		}
		row := []string{f.ID, short(f.At.X), short(f.At.Y), f.Kind, cast}
		if marked {
			row = append(row, f.Mark)
		}
		w.Write(row)
	}
	w.Flush()
	return b.Bytes()
}

// ReadCSV reads a table of points: id, x, y and, where the heading names them,
// kind, cast and mark. Columns are parted by commas, semicolons or tabs; with
// semicolons or tabs the decimal sign may be a comma. The heading may give the
// unit, as in "x in" or "x (mm)"; lengths are in mm otherwise. Lines that begin
// with # are left out. Without a heading the columns are id, x, y, or x, y:
// then the points are numbered.
func ReadCSV(source Source) (geometry.Joint, problem.List) {
	r := &reader{source: source, bareUnit: "mm"}
	r.kinds = kindTable{used: map[string]bool{}}
	r.fasteners = fastenerTable{index: map[string]int{}}
	f := newFile(source.File, source.Data)
	r.table(f, source.Data)
	problems := r.problems()
	if problems.Stops() {
		return geometry.Joint{}, problems
	}
	return r.input.Joint, problems
}

func (r *reader) table(f *file, data []byte) {
	if len(data) > maxFileBytes {
		r.report(f, 0, 0, problem.Error, "", fmt.Sprintf("the file is larger than %d MB", maxFileBytes>>20))
		return
	}
	if line, column, what := checkCharacters(data); what != "" {
		r.report(f, line, column, problem.Error, "", what)
		return
	}
	in := csv.NewReader(strings.NewReader(f.text))
	in.Comma, in.Comment, in.FieldsPerRecord, in.TrimLeadingSpace = separator(f.lines), '#', -1, true
	in.LazyQuotes = true // a bare " is an inch sign
	t := &table{reader: r, file: f, in: in}
	for {
		cells, err := in.Read()
		if cells == nil && err != nil {
			break
		}
		if err != nil {
			line, _ := in.FieldPos(0)
			r.report(f, line, 1, problem.Error, "", "the line is no row of a table: "+err.Error())
			return
		}
		if !t.record(cells) {
			return
		}
	}
	if len(r.input.Joint.Fasteners) == 0 && len(r.found) == 0 {
		r.report(f, 1, 1, problem.Error, "", "the table has no points; write one a line, for example M1,-47.5,90")
	}
	r.checkDistances()
	r.checkStray()
}

// separator is what parts the columns of the first line with points.
func separator(lines []string) rune {
	for _, line := range lines {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		for _, sign := range "\t;" {
			if strings.ContainsRune(line, sign) {
				return sign
			}
		}
		return ','
	}
	return ','
}

// table is a table of points while it is read.
type table struct {
	*reader
	file    *file
	in      *csv.Reader
	columns []string // what each column holds; empty: nothing of use
	rows    int
}

// record reads one row. It gives false where reading on makes no sense.
func (t *table) record(cells []string) bool {
	if t.columns == nil {
		if !isHeading(cells) {
			t.columns = []string{"id", "x", "y", "kind", "cast"}
			if len(cells) == 2 {
				t.columns = []string{"x", "y"}
			}
		} else {
			return t.heading(cells)
		}
	}
	t.rows++
	if t.rows > maxFasteners {
		line, _ := t.in.FieldPos(0)
		t.report(t.file, line, 1, problem.Error, fmt.Sprintf("1 to %d", maxFasteners), "the table has too many points")
		return false
	}
	byColumn := map[string]*node{}
	var first *node
	for i, cell := range cells {
		n := t.cell(i, cell)
		if first == nil {
			first = n
		}
		if i < len(t.columns) && t.columns[i] != "" && n.text != "" {
			byColumn[t.columns[i]] = n
		}
	}
	t.point(first, byColumn)
	return true
}

// isHeading says that a row has no number in it.
func isHeading(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool {
		_, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(c), ",", ".", 1), 64)
		return err == nil
	})
}

// heading reads what the columns hold, and in which unit.
func (t *table) heading(cells []string) bool {
	for i, cell := range cells {
		words := strings.FieldsFunc(strings.ToLower(cell), func(c rune) bool { return !unicode.IsLetter(c) })
		name := ""
		if len(words) > 0 && slices.Contains(csvColumns, words[0]) {
			name = words[0]
			if len(words) > 1 && (name == "x" || name == "y") {
				if words[1] != "mm" && words[1] != "in" {
					t.fail(t.cell(i, cell), "mm, in", "the heading %s has an unknown unit", quoted(cell))
					return false
				}
				t.bareUnit = words[1]
			}
		}
		t.columns = append(t.columns, name)
	}
	if !slices.Contains(t.columns, "x") || !slices.Contains(t.columns, "y") {
		t.fail(t.cell(0, cells[0]), strings.Join(csvColumns, ", "), "the heading names no column x and y")
		return false
	}
	return true
}

// cell makes a node of a cell, for the place in a message.
func (t *table) cell(i int, text string) *node {
	line, at := t.in.FieldPos(i)
	column := at
	if line >= 1 && line <= len(t.file.lines) && at-1 <= len(t.file.lines[line-1]) {
		column = utf8.RuneCountInString(t.file.lines[line-1][:at-1]) + 1
	}
	return &node{shape: scalarShape, text: strings.TrimSpace(text), file: t.file, line: line, column: column, size: 1}
}

// point reads one fastener.
func (t *table) point(row *node, cell map[string]*node) {
	f := geometry.Fastener{ID: strconv.Itoa(t.rows)}
	ok := true
	for _, key := range []string{"x", "y"} {
		if cell[key] == nil {
			t.fail(row, "", "the row has no %s; a row is an id, x and y, for example M1,-47.5,90", key)
			return
		}
	}
	x, okX := t.lengthMm(cell["x"], "x")
	y, okY := t.lengthMm(cell["y"], "y")
	f.At = geometry.Point{X: x, Y: y}
	if n := cell["id"]; n != nil {
		f.ID, ok = t.newID(n, "id", n.text)
	} else if slices.Contains(t.columns, "id") {
		t.fail(row, "", "the row has no id; a row is an id, x and y, for example M1,-47.5,90")
		return
	}
	if n := cell["kind"]; n != nil {
		kind, okKind := t.textUpTo(n, "a kind's name", 40)
		f.Kind, ok = kind, ok && okKind
	}
	if n := cell["cast"]; n != nil {
		f.Cast, _ = t.whole(n, "cast", 1, maxCastNumber)
	}
	if n := cell["mark"]; n != nil {
		f.Mark, _ = t.mark(n)
		if f.Cast > 0 {
			t.fail(n, "cast, mark", "the row has both; one small number stands on the card: the one cast on the part, or the mark")
		}
	}
	if ok && okX && okY && !math.IsNaN(x+y) {
		t.addFastener(row, f)
	}
}

// OpenTable finds a table of points: "-" is standard input, anything else is a
// path. Its errors are those of Open.
func OpenTable(name string, stdin io.Reader) (Source, error) {
	if name == "-" {
		return Open(name, stdin)
	}
	return openFile(name)
}
