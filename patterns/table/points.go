package table

import (
	"bytes"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/meaning"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/writing"
)

// The columns of a table of points. A table without a heading has the first
// three, in this order.
var csvColumns = []string{"id", "x", "y", "kind", "cast", "mark"}

// Write writes the fasteners as a table: id, x, y in mm, kind, number cast, and
// the marks on the part if there are any. No cell is a formula.
func Write(j geometry.Joint) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	heading := []string{"id", "x mm", "y mm", "kind", "cast"}
	marked := slices.ContainsFunc(j.Fasteners, func(f geometry.Fastener) bool { return f.Mark != "" })
	if marked {
		heading = append(heading, "mark")
	}
	w.Write(heading) // writes to a buffer never fail
	for _, f := range j.Fasteners {
		cast := ""
		if f.Cast > 0 {
			cast = strconv.Itoa(f.Cast)
		}
		row := []string{textCell(f.ID), writing.Number(f.At.X), writing.Number(f.At.Y), textCell(f.Kind), cast}
		if marked {
			row = append(row, textCell(f.Mark))
		}
		w.Write(row)
	}
	w.Flush()
	return b.Bytes()
}

// Read reads a table of points: id, x, y and, if the heading names them, kind,
// cast and mark. Commas, semicolons or tabs separate the columns; with
// semicolons or tabs the decimal sign may be a comma. The heading may give the
// unit, as in "x in" or "x (mm)"; otherwise lengths are in mm. Lines that begin
// with # are skipped. Without a heading the columns are id, x, y, or x, y: then
// the points are numbered.
func Read(from source.Source) (geometry.Joint, problem.List) {
	t := &points{sheet: newSheet(from)}
	t.fasteners = meaning.NewFasteners(t.Reader, &t.joint)
	if t.open() {
		t.in.LazyQuotes = true // a bare " is an inch sign
		t.read()
	}
	return form.Sound(t.joint, t.List())
}

// points is a table of points while reading.
type points struct {
	sheet
	joint     geometry.Joint
	fasteners *meaning.Fasteners
	columns   []string // the meaning of each column; empty: unused
	rows      int
}

func (t *points) read() {
	for {
		cells, ok := t.row()
		if !ok || cells != nil && !t.record(cells) {
			return
		}
		if cells == nil {
			break
		}
	}
	if len(t.joint.Fasteners) == 0 && t.Count() == 0 {
		t.Report(t.file, 1, 1, finding.Failed(NoPoints, nil))
	}
	t.fasteners.Check()
}

// record reads one row. It returns false if reading on is pointless.
func (t *points) record(cells []string) bool {
	switch {
	case t.columns != nil:
	case isHeading(cells):
		return t.heading(cells)
	case len(cells) == 2:
		t.columns = []string{"x", "y"}
	default:
		t.columns = []string{"id", "x", "y", "kind", "cast"}
	}
	t.rows++
	if t.rows > form.MostFasteners {
		line, _ := t.in.FieldPos(0)
		t.Report(t.file, line, 1, finding.Failed(TooManyPoints, finding.Values{"most": form.MostFasteners}))
		return false
	}
	byColumn := map[string]*nodes.Node{}
	for i, cell := range cells {
		if n := t.cell(i, cell); i < len(t.columns) && t.columns[i] != "" && n.Text != "" {
			byColumn[t.columns[i]] = n
		}
	}
	t.point(t.cell(0, cells[0]), byColumn)
	return true
}

// isHeading reports whether a row has no number.
func isHeading(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool {
		_, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(c), ",", ".", 1), 64)
		return err == nil
	})
}

// heading reads the meaning of the columns, and their unit.
func (t *points) heading(cells []string) bool {
	for i, cell := range cells {
		words := strings.FieldsFunc(strings.ToLower(cell), func(c rune) bool { return !unicode.IsLetter(c) })
		name := ""
		if len(words) > 0 && slices.Contains(csvColumns, words[0]) {
			name = words[0]
			if len(words) > 1 && (name == "x" || name == "y") {
				if words[1] != "mm" && words[1] != "in" {
					t.Fail(t.cell(i, cell), UnknownUnit, finding.Values{"column": problem.Quoted(cell), "allowed": []string{"mm", "in"}})
					return false
				}
				t.BareUnit = words[1]
			}
		}
		t.columns = append(t.columns, name)
	}
	if !slices.Contains(t.columns, "x") || !slices.Contains(t.columns, "y") {
		t.Fail(t.cell(0, cells[0]), PlacesMissing, finding.Values{"column": "y", "allowed": csvColumns})
		return false
	}
	return true
}

// point reads one fastener.
func (t *points) point(row *nodes.Node, cell map[string]*nodes.Node) {
	f := geometry.Fastener{ID: strconv.Itoa(t.rows)}
	ok := true
	for _, key := range []string{"x", "y"} {
		if cell[key] == nil {
			t.Fail(row, CellMissing, finding.Values{"column": key})
			return
		}
	}
	x, okX := t.CoordinateMm(cell["x"], "x")
	y, okY := t.CoordinateMm(cell["y"], "y")
	f.At = geometry.Point{X: x, Y: y}
	if n := cell["id"]; n != nil {
		f.ID, ok = t.NewID(n, "id", n.Text)
	} else if slices.Contains(t.columns, "id") {
		t.Fail(row, CellMissing, finding.Values{"column": "id"})
		return
	}
	if n := cell["kind"]; n != nil {
		kind, okKind := t.TextUpTo(n, finding.Term("a kind's name"), 40)
		f.Kind, ok = kind, ok && okKind
	}
	if n := cell["cast"]; n != nil {
		f.Cast = t.Cast(n)
	}
	if n := cell["mark"]; n != nil {
		f.Mark = t.Mark(n)
		if f.Cast > 0 {
			t.Fail(n, form.CastAndMark, finding.Values{"what": finding.Term("the table row"), "allowed": []string{"cast", "mark"}})
		}
	}
	if ok && okX && okY && !math.IsNaN(x+y) {
		t.fasteners.Add(row, f)
	}
}
