package cli

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
	"drawdown/patterns/writing"
)

// newPattern is the word that stands in the place of a pattern's name.
const newPattern = "new"

// patternForm is a form in which a pattern is written out.
type patternForm string

const (
	yamlForm patternForm = "yaml"
	csvForm  patternForm = "csv"
	dxfForm  patternForm = "dxf"
)

var patternForms = []patternForm{yamlForm, csvForm, dxfForm}

// mostPlaces is what a pattern file may hold.
const mostPlaces = 10_000

// newLayout is a way to describe a layout on the command line: its own flag,
// and the one that gives its size.
type newLayout struct {
	flag, size string
	read       func(q *quantities, l *writing.Layout)
}

var newLayouts = []newLayout{
	{"grid", "pitch", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID = survey.Grid, "M"
		l.Columns, l.Rows = q.counts("grid", 1)
		l.X, l.Y = q.twoLengths("pitch", true)
	}},
	{"circle", "diameter", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID, l.AngleDeg, l.Clockwise = survey.Circle, "S", 90, true
		l.Count = q.wholeCount("circle")
		l.X = float64(above(q, "diameter", bareLength))
	}},
	{"row", "pitch", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID = survey.Row, "C"
		l.Count = q.wholeCount("row")
		l.X = float64(above(q, "pitch", bareLength))
	}},
	{"rectangle", "size", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID = survey.Rectangle, "R"
		l.Columns, l.Rows = q.counts("rectangle", 0)
		l.X, l.Y = q.twoLengths("size", false)
		if q.err == nil && l.Columns < 2 {
			q.fail(fmt.Errorf("--rectangle has %d along its top; allowed: 2 or more, with the corners", l.Columns))
		}
	}},
}

// layoutFlags are the flags that belong to new only.
var layoutFlags = []string{"grid", "circle", "row", "rectangle", "csv", "dxf", "pitch", "diameter", "size", "title",
	"layer", "units", "bolts", "dowels", "bores"}

func addLayoutFlags(flags *pflag.FlagSet) {
	for _, f := range []struct{ name, usage string }{
		{"grid", "new: `columns` and rows of a grid, such as 5x2"},
		{"circle", "new: `number` of holes on a circle"},
		{"row", "new: `number` of holes in a row"},
		{"rectangle", "new: `holes` along the top, and more on each end: 5x2"},
		{"csv", "new: `file` with a table of points, or - for standard input"},
		{"dxf", "new: `file` with a drawing, or - for standard input"},
		{"pitch", "new: `distance` of neighbours, such as 60, or 95x90 in a grid"},
		{"diameter", "new: `diameter` of the circle"},
		{"size", "new: `width` and height of the rectangle, such as 300x160"},
		{"title", "new: `title` of the pattern"},
		{"units", "new: `unit` of the drawing, one of " + choices(dxf.Units)},
		{"bolts", "new: `diameters` of the drawing's holes for bolts, such as 6-14mm"},
		{"dowels", "new: `diameters` of its holes for dowels, such as 8mm"},
		{"bores", "new: `diameters` of its bores, such as 30mm-"},
	} {
		flags.String(f.name, "", f.usage)
	}
	flag.Offer(flags, "units", flag.Texts(dxf.Units)...)
	flags.StringArray("layer", nil, "new: `layer` of the drawing to read; may stand several times")
}

// changed gives the first of the flags that was set; empty for none.
func changed(flags *pflag.FlagSet, names []string) string {
	if i := slices.IndexFunc(names, flags.Changed); i >= 0 {
		return names[i]
	}
	return ""
}

func (p *Program) newPattern(flags *pflag.FlagSet, folder string) Status {
	q := &quantities{flags: flags}
	q.checkNew()
	if q.err != nil {
		return p.refuse("patterns", q.err)
	}
	var draft writing.Draft
	status, ok := Done, true
	switch {
	case flags.Changed("csv"):
		draft, status, ok = p.pointsDraft(q)
	case flags.Changed("dxf"):
		draft, status, ok = p.drawingDraft(q)
	default:
		draft = q.layoutDraft()
	}
	if !ok {
		return status
	}
	if title, set := q.text("title"); set {
		draft.Title = title
	}
	if q.err != nil {
		return p.refuse("patterns", q.err)
	}
	text := writing.Pattern(draft)
	name := writing.FileName(draft.Title)
	// A title of the command line may hold what no pattern file takes.
	if _, problems := patterns.Read(patterns.FromBytes(name, text)); problems.Stops() {
		p.report(problems)
		return Wrong
	}
	status = p.printOrWrite(folder, name, text)
	if folder != "" && status == Done && flags.Changed("dxf") {
		fmt.Fprintln(p.Stdout, drawn.NotInDrawing)
	}
	return status
}

// checkNew refuses flags that exclude or need each other.
func (q *quantities) checkNew() {
	shapes := []string{"grid", "circle", "row", "rectangle", "csv", "dxf"}
	q.atMostOne(shapes...)
	if changed(q.flags, shapes) == "" {
		q.fail(misuse("which layout? Write --grid 5x2 --pitch 95x90, --circle 16 --diameter 240, --row 5 --pitch 60, --rectangle 5x2 --size 300x160, --csv points.csv or --dxf part.dxf"))
		return
	}
	for _, flag := range []string{"layer", "units", "bolts", "dowels", "bores"} {
		q.needs(flag, "dxf", "part.dxf")
	}
	needed := ""
	for _, l := range newLayouts {
		if q.flags.Changed(l.flag) {
			needed = l.size
			q.needs(l.flag, l.size, map[string]string{"grid": "95x90", "circle": "240", "row": "60", "rectangle": "300x160"}[l.flag])
		}
	}
	for _, size := range []string{"pitch", "diameter", "size"} {
		if q.flags.Changed(size) && size != needed {
			q.fail(misuse("--%s says nothing of --%s", size, changed(q.flags, shapes)))
		}
	}
}

// layoutDraft makes the draft of the layout that the flags describe.
func (q *quantities) layoutDraft() writing.Draft {
	layout := &writing.Layout{}
	for _, l := range newLayouts {
		if q.flags.Changed(l.flag) {
			l.read(q, layout)
		}
	}
	if q.err == nil && max(layout.Columns*layout.Rows, 2*(layout.Columns+layout.Rows), layout.Count) > mostPlaces {
		q.fail(fmt.Errorf("the pattern would have more than %d fasteners", mostPlaces))
	}
	title := map[survey.Shape]string{
		survey.Grid:      fmt.Sprintf("%d × %d grid", layout.Columns, layout.Rows),
		survey.Rectangle: fmt.Sprintf("%d × %d rectangle", layout.Columns, layout.Rows),
		survey.Circle:    fmt.Sprintf("Circle of %d", layout.Count),
		survey.Row:       fmt.Sprintf("Row of %d", layout.Count),
	}[layout.Shape]
	return writing.Draft{
		Title:  title,
		Notes:  []string{"A new pattern: " + layout.Words() + ". What stands behind # is for you to fill in."},
		Layout: layout,
	}
}

// pointsDraft reads a table of points. Not ok means that the status is final.
func (p *Program) pointsDraft(q *quantities) (draft writing.Draft, status Status, ok bool) {
	file, set := q.text("csv")
	if !set {
		return draft, p.refuse("patterns", q.err), false
	}
	joint, problems, err := job.Points(file, p.Stdin)
	if err != nil {
		return draft, p.unread(file, err), false
	}
	p.report(problems)
	if problems.Stops() {
		return draft, Wrong, false
	}
	n := len(joint.Fasteners)
	return writing.Draft{
		Title: counted(n, "point"), Joint: joint,
		Notes: []string{fmt.Sprintf("A new pattern of %s from a table. What stands behind # is for you to fill in.", counted(n, "point"))},
	}, Done, true
}

// bareLength reads a length that is in mm where it says no unit.
func bareLength(text string) (unit.Length, error) { return unit.ParseLength(text, "mm") }

// halves parts 5x2 at its sign of multiplication.
func halves(text string) (first, second string, ok bool) {
	for _, sign := range []string{"x", "X", "×"} {
		if first, second, ok = strings.Cut(text, sign); ok {
			return strings.TrimSpace(first), strings.TrimSpace(second), true
		}
	}
	return text, "", false
}

// counts reads columns and rows.
func (q *quantities) counts(flag string, leastRows int) (columns, rows int) {
	text, set := q.text(flag)
	if !set {
		return 0, 0
	}
	first, second, _ := halves(text)
	columns, err1 := strconv.Atoi(first)
	rows, err2 := strconv.Atoi(second)
	if err1 != nil || err2 != nil || columns < 1 || rows < leastRows || columns > mostPlaces || rows > mostPlaces {
		q.fail(fmt.Errorf("--%s %q is not two counts; write for example 5x2", flag, text))
		return 0, 0
	}
	return columns, rows
}

func (q *quantities) wholeCount(flag string) int {
	text, set := q.text(flag)
	if !set {
		return 0
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > mostPlaces {
		q.fail(fmt.Errorf("--%s %q is no count; allowed: whole numbers from 1 to %d", flag, text, mostPlaces))
		return 0
	}
	return n
}

// twoLengths reads two lengths, such as 95x90; where one counts for both, it
// may stand alone. A unit behind the second holds for both.
func (q *quantities) twoLengths(flag string, oneForBoth bool) (x, y float64) {
	text, set := q.text(flag)
	if !set {
		return 0, 0
	}
	first, second, two := halves(text)
	if !two && oneForBoth {
		second = first
	}
	if second == "" {
		q.fail(fmt.Errorf("--%s %q is not two lengths; write for example 300x160", flag, text))
		return 0, 0
	}
	if _, err := unit.ParseLength(first, ""); errors.Is(err, unit.NoUnit) {
		first += strings.TrimLeft(second, "0123456789.,/ ")
	}
	for i, one := range []string{first, second} {
		length, err := bareLength(one)
		switch {
		case err != nil:
			q.fail(fmt.Errorf("--%s: %w", flag, err))
		case !(length > 0) || math.IsInf(float64(length), 0):
			q.fail(fmt.Errorf("--%s %s; allowed: above 0", flag, text))
		case i == 0:
			x = float64(length)
		default:
			y = float64(length)
		}
	}
	return x, y
}
