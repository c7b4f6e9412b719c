package table

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/meaning"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/writing"
)

// Read reads a table of points: x, y and, if the heading names them, id,
// diameter, kind, cast and mark. The separator of the columns, the decimal sign
// and the heading are found from the whole table, and reported in a note. The
// heading may give a unit per column, as in "x in" or "x [mm]"; otherwise
// lengths are in mm. Lines that begin with # are skipped, and lines above the
// heading and totals below the points with a report. Without a heading the
// columns are id, x, y, or x, y: then the points are numbered. Diameters
// distinguish the kinds, and by the rule of package holes fasteners and bores.
func Read(from source.Source) (writing.Draft, problem.List) {
	from.Data = asUTF8(from.Data)
	t := &points{sheet: newSheet(from)}
	t.draft.HolesMm = map[string]float64{}
	t.fasteners = meaning.NewFasteners(t.Reader, &t.draft.Joint)
	if t.IsText(t.file, t.Source.Data) {
		t.read()
	}
	return form.Sound(t.draft, t.List())
}

// points is a table of points while reading.
type points struct {
	sheet
	draft     writing.Draft
	fasteners *meaning.Fasteners
	columns   map[string]int    // the column of each meaning
	units     map[string]string // that the heading states, by meaning
	named     bool              // ids are names in a report, not ids that someone chose
	width     int               // columns of the heading
	decimal   byte
	rows      []line   // with points
	places    []sized  // with diameters
	skipped   []string // texts of lines that are no points
}

// sized is a point with a diameter.
type sized struct {
	row        *nodes.Node
	f          geometry.Fastener
	diameterMm float64
}

func (t *points) read() {
	l, ok := t.bestLayout()
	if !ok {
		return // the line is reported
	}
	if !t.head(l) || !t.sort(l) || !t.numbers(l) {
		return
	}
	for _, row := range t.rows {
		t.point(row)
	}
	t.sizes()
	if len(t.draft.Joint.Fasteners) == 0 && !t.ErrorsSince(0) {
		t.Report(t.file, 1, 1, finding.Failed(NoPoints, nil))
	}
	t.fasteners.Check()
}

// head finds the meaning of the columns.
func (t *points) head(l layout) bool {
	t.columns, t.units = map[string]int{}, map[string]string{}
	if l.heading < 0 {
		return t.headless(l)
	}
	row := l.rows[l.heading]
	t.columns, t.width = columnsOf(row), len(row)
	stated := ""
	for _, above := range l.rows[:l.heading] {
		stated = cmp.Or(unitNamed(above.texts()), stated)
	}
	for name, i := range t.columns {
		h := headingOf(row.text(i))
		t.units[name] = cmp.Or(h.unit, stated, "mm")
		for k, n := range row {
			if again := headingOf(n.Text); k != i && again.column == name && again.rank == h.rank && (name != "id" || h.rank < rankNominal) {
				t.Fail(n, ColumnTwice, finding.Values{"column": problem.Quoted(n.Text)})
				return false
			}
		}
	}
	if i, ok := t.columns["id"]; ok {
		t.named = headingOf(row.text(i)).rank > rankMeasured
	}
	return true
}

// headless gives the columns their usual meaning, or reports the heading that
// names no places.
func (t *points) headless(l layout) bool {
	first := slices.IndexFunc(l.rows, func(r line) bool { return !r.isComment() })
	if first < 0 {
		return true
	}
	row := l.rows[first]
	if !slices.ContainsFunc(row, func(n *nodes.Node) bool { return isNumber(n.Text) }) && (l.points == 0 || row.filled() > 1) {
		t.badHeading(row)
		return false
	}
	for _, r := range l.rows {
		if !r.isComment() && r.filled() > 1 {
			row = r
			break
		}
	}
	names := csvColumns[:5]
	if row.filled() == 2 {
		names = csvColumns[1:3]
	}
	t.width = len(names)
	for i, name := range names {
		t.columns[name], t.units[name] = i, "mm"
	}
	return true
}

func (t *points) badHeading(row line) {
	for _, n := range row {
		if h := headingOf(n.Text); h.rank == rankUnknown && (h.column == "x" || h.column == "y") {
			t.Fail(n, UnknownUnit, finding.Values{"column": problem.Quoted(n.Text), "allowed": []string{"mm", "in", "cm", "m"}})
			return
		}
	}
	t.Fail(row[0], PlacesMissing, finding.Values{"column": "y", "allowed": csvColumns})
}

// sort distinguishes the rows with points from the others. It returns false if
// reading on is pointless.
func (t *points) sort(l layout) bool {
	var leftOut []int
	for i, row := range l.rows {
		switch texts := row.texts(); {
		case i < l.heading && !row.isComment():
			t.skipped = append(t.skipped, strings.TrimSpace(strings.Join(texts[:row.filled()], " ")))
		case i <= l.heading || row.isComment():
		case i == l.heading+1 && l.heading >= 0 && t.statesUnits(row):
		case l.heading >= 0 && slices.Equal(texts[:row.filled()], l.rows[l.heading].texts()[:l.rows[l.heading].filled()]): // repeated on each page
		case t.isBeside(row):
			leftOut = append(leftOut, i)
		case row.filled() > t.width:
			t.Fail(row[t.width], TooManyCells, finding.Values{"cells": row.filled(), "columns": t.width})
		case l.heading < 0 && isNumber(row.text(t.at("kind"))):
			t.Fail(row[t.columns["kind"]], TooManyCells, finding.Values{"cells": row.filled(), "columns": 3})
		case len(t.rows) == form.MostFasteners:
			t.Fail(row[0], TooManyPoints, finding.Values{"most": form.MostFasteners})
			return false
		default:
			t.rows = append(t.rows, row)
		}
	}
	if l.heading > 0 && len(t.skipped) > 0 {
		t.Note(l.rows[l.heading][0], LinesAbove, finding.Values{"count": len(t.skipped), "lines": quoted(t.skipped)})
	}
	for _, i := range leftOut {
		t.Warn(l.rows[i][0], LineLeftOut, finding.Values{"line": l.rows[i][0].Line, "text": problem.Quoted(strings.Join(l.rows[i].texts()[:l.rows[i].filled()], " "))})
	}
	return true
}

func quoted(texts []string) []string {
	all := make([]string, len(texts))
	for i, text := range texts {
		all[i] = problem.Quoted(text)
	}
	return all
}

// at is the column of a meaning, or -1.
func (t *points) at(name string) int {
	if i, ok := t.columns[name]; ok {
		return i
	}
	return -1
}

// statesUnits reads a row under the heading that has only units.
func (t *points) statesUnits(row line) bool {
	if slices.ContainsFunc(row, func(n *nodes.Node) bool { return strings.Trim(n.Text, "[](){}-") != "" && unitOf(n.Text) == "" }) {
		return false
	}
	for name, i := range t.columns {
		t.units[name] = cmp.Or(unitOf(row.text(i)), t.units[name])
	}
	return true
}

// isBeside reports whether a row below the heading is not a point: totals, or a
// line of a report.
func (t *points) isBeside(row line) bool {
	if isTotal(row.texts()) {
		return true
	}
	if row.text(t.at("x")) != "" || row.text(t.at("y")) != "" || len(t.columns) == 0 {
		return false
	}
	name := row.text(t.at("id"))
	if t.at("id") < 0 || row.filled() == 1 {
		name = row.text(0)
	}
	return name == "" || strings.ContainsAny(name, " :*=")
}

// numbers finds the decimal sign and the columns that are not used, and reports
// how the table was read.
func (t *points) numbers(l layout) bool {
	var signs decimals
	var doubtful *nodes.Node
	for _, row := range t.rows {
		for _, name := range []string{"x", "y", diameterColumn} {
			if text := row.text(t.at(name)); text != "" {
				before := signs
				if signs.add(text); signs != before {
					doubtful = row[t.at(name)]
				}
			}
		}
	}
	decimal, ok := signs.sign()
	if !ok {
		t.Fail(doubtful, MixedDecimals, finding.Values{"written": problem.Quoted(doubtful.Text)})
		return false
	}
	t.decimal = decimal
	if l.separator == "comma" && signs.onlyPossible() {
		t.decimal = 0 // thousands or decimals: the error is at each number
	}
	if l.heading >= 0 {
		t.reportHead(l)
	}
	return true
}

// reportHead reports how the table was read, unless it is as Write writes it,
// and which columns are not used.
func (t *points) reportHead(l layout) {
	row := l.rows[l.heading]
	var used []finding.Finding
	var ignored []string
	asWritten := l.separator == "comma" && t.decimal == '.'
	for i, n := range row {
		name := ""
		for _, meaning := range append([]string{diameterColumn}, csvColumns...) {
			if t.at(meaning) == i {
				name = meaning
			}
		}
		switch {
		case name != "":
			values := finding.Values{"column": name, "heading": problem.Quoted(n.Text)}
			if name == "x" || name == "y" || name == diameterColumn {
				values["unit"] = t.units[name]
				asWritten = asWritten && t.units[name] == "mm"
			}
			used = append(used, finding.Noted(ColumnRead, values))
			asWritten = asWritten && strings.TrimSuffix(n.Text, " mm") == name
		case n.Text != "":
			ignored = append(ignored, problem.Quoted(n.Text))
		}
	}
	if !asWritten {
		decimal := "point"
		if t.decimal == ',' {
			decimal = "comma"
		}
		t.Note(row[0], ReadAs, finding.Values{"separator": l.separator, "decimal": decimal, "columns": used})
	}
	if len(ignored) > 0 {
		t.Note(row[0], ColumnsIgnored, finding.Values{"columns": ignored})
	}
}

// length reads a length of a row in the unit of its column.
func (t *points) length(n *nodes.Node, name string, limits unit.Limits) (float64, bool) {
	t.BareUnit = t.units[name]
	if t.decimal != 0 {
		cell := *n
		cell.Text = plain(n.Text, t.decimal)
		n = &cell
	}
	return t.LengthMm(n, name, limits)
}

// point reads one fastener.
func (t *points) point(row line) {
	cell := func(name string) *nodes.Node {
		if i := t.at(name); row.text(i) != "" {
			return row[i]
		}
		return nil
	}
	one := sized{row: row[0], f: geometry.Fastener{ID: strconv.Itoa(len(t.places) + 1)}}
	for _, key := range []string{"x", "y"} {
		if cell(key) == nil {
			t.Fail(row[0], CellMissing, finding.Values{"column": key})
			return
		}
	}
	ok := true
	x, okX := t.length(cell("x"), "x", unit.Sensible.Coordinate)
	y, okY := t.length(cell("y"), "y", unit.Sensible.Coordinate)
	one.f.At = geometry.Point{X: x, Y: y}
	if n := cell("id"); n != nil {
		one.f.ID, ok = t.NewID(n, "id", t.idOf(n.Text))
	} else if t.at("id") >= 0 {
		t.Fail(row[0], CellMissing, finding.Values{"column": "id"})
		return
	}
	if n := cell(diameterColumn); n != nil {
		d, okD := t.length(n, diameterColumn, unit.Sensible.Bore)
		one.diameterMm, ok = d, ok && okD
	}
	if n := cell("kind"); n != nil {
		kind, okKind := t.TextUpTo(n, finding.Term("a kind's name"), 40)
		one.f.Kind, ok = kind, ok && okKind
	}
	if n := cell("cast"); n != nil {
		one.f.Cast = t.Cast(n)
	}
	if n := cell("mark"); n != nil {
		one.f.Mark = t.Mark(n)
		if one.f.Cast > 0 {
			t.Fail(n, form.CastAndMark, finding.Values{"what": finding.Term("the table row"), "allowed": []string{"cast", "mark"}})
		}
	}
	if ok && okX && okY && !math.IsNaN(x+y) {
		t.places = append(t.places, one)
	}
}

// idOf makes an id from the name of a hole in a report, such as "Circle 1".
func (t *points) idOf(text string) string {
	if !t.named {
		return text
	}
	return strings.Join(strings.FieldsFunc(text, func(c rune) bool {
		return !unicode.IsLetter(c) && !(c >= '0' && c <= '9') && c != '-' && c != '_' && c != '.'
	}), "-")
}

// sizes adds the points. Those without a kind are sorted by their diameters.
func (t *points) sizes() {
	var rule holes.Rule
	var bare []int
	var diameters []float64
	byKind := map[string][]float64{}
	for i, p := range t.places {
		switch {
		case p.diameterMm == 0:
		case p.f.Kind == "":
			bare, diameters = append(bare, i), append(diameters, p.diameterMm)
		default:
			byKind[p.f.Kind] = append(byKind[p.f.Kind], p.diameterMm)
		}
	}
	bores := map[int]bool{}
	const sameSizeMm = 0.1 // of measured holes
	sizes := rule.Sort(diameters, sameSizeMm)
	for _, size := range sizes {
		kind := "hole " + writing.Number(math.Round(size.DiameterMm*10)/10)
		for _, k := range size.Of {
			i := bare[k]
			if bores[i] = size.Use == holes.Bore; !bores[i] {
				t.places[i].f.Kind = kind
				t.draft.HolesMm[kind] = size.DiameterMm
			}
		}
	}
	if unsure, found := rule.Unsure(sizes); found {
		t.Report(t.file, 1, 1, unsure)
		t.draft.Cautions = append(t.draft.Cautions, unsure) // it must be on the card as well
	}
	for kind, all := range byKind {
		slices.Sort(all)
		t.draft.HolesMm[kind] = all[len(all)/2]
	}
	for i, p := range t.places {
		if bores[i] {
			t.draft.Joint.Bores = append(t.draft.Joint.Bores, geometry.Bore{Centre: p.f.At, Diameter: p.diameterMm, Label: p.f.ID})
		} else {
			t.fasteners.Add(p.row, p.f)
		}
	}
}
