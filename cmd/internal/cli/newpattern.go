package cli

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
	"drawdown/patterns/problem"
	"drawdown/patterns/writing"
)

// newPattern is the word used in place of a pattern's name.
const newPattern = "new"

type patternForm string

const (
	yamlForm patternForm = "yaml"
	csvForm  patternForm = "csv"
	dxfForm  patternForm = "dxf"
)

var patternForms = []patternForm{yamlForm, csvForm, dxfForm}

// mostPlaces is the limit of a pattern file.
const mostPlaces = 10_000

// newLayout is a way to describe a layout on the command line: its flag, and
// the flag for its size, with an example.
type newLayout struct {
	flag, size, example string
	read                func(q *quantities, l *writing.Layout)
}

var newLayouts = []newLayout{
	{"grid", "pitch", "95x90", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID = survey.Grid, "M"
		l.Columns, l.Rows = two(q, "grid", counts)
		l.X, l.Y = two(q, "pitch", oneOrTwoLengths)
		if q.Err == nil && l.Rows < 1 {
			q.Fail(finding.Failed(NoRows, nil))
		}
	}},
	{"circle", "diameter", "240", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID, l.AngleDeg, l.Clockwise = survey.Circle, "S", 90, true
		l.Count, _ = flag.Read(q, "circle", wholeCount)
		l.X = float64(flag.Within(q, "diameter", unit.Sensible.Distance, bareLength))
	}},
	{"row", "pitch", "60", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID = survey.Row, "C"
		l.Count, _ = flag.Read(q, "row", wholeCount)
		l.X = float64(flag.Within(q, "pitch", unit.Sensible.Distance, bareLength))
	}},
	{"rectangle", "size", "300x160", func(q *quantities, l *writing.Layout) {
		l.Shape, l.ID = survey.Rectangle, "R"
		l.Columns, l.Rows = two(q, "rectangle", counts)
		l.X, l.Y = two(q, "size", twoLengths)
		if q.Err == nil && l.Columns < 2 {
			q.Fail(finding.Failed(ShortTop, finding.Values{"n": l.Columns}))
		}
	}},
}

// two reads a flag with two values.
func two[T int | float64](q *quantities, name string, parse func(string) ([2]T, error)) (a, b T) {
	values, _ := flag.Read(q, name, parse)
	return values[0], values[1]
}

type textFlag struct{ name, usage string }

func addTexts(flags *pflag.FlagSet, list []textFlag) {
	for _, f := range list {
		flags.String(f.name, "", f.usage)
	}
}

// newTexts are the flags that only new uses.
var newTexts = []textFlag{
	{"grid", "new: `columns` and rows of a grid, such as 5x2"},
	{"circle", "new: `number` of holes on a circle"},
	{"row", "new: `number` of holes in a row"},
	{"rectangle", "new: `holes` along the top, and more on each end: 5x2"},
	{"csv", "new: `file` with a table of points, or - for standard input"},
	{"dxf", "new: `file` with a drawing, or - for standard input"},
	{"pitch", "new: `distance` between neighbours, such as 60, or 95x90 in a grid"},
	{"diameter", "new: `diameter` of the circle"},
	{"size", "new: `width` and height of the rectangle, such as 300x160"},
	{"title", "new: `title` of the pattern"},
	{"units", "new: `unit` of the drawing, one of " + flag.Choices(dxf.Units)},
	{"dowels", "new: `diameters` of its holes for dowels, such as 8mm"},
	{"bores", "new: `diameters` of its bores, such as 30mm-"},
}

func addNewFlags(flags *pflag.FlagSet) {
	addTexts(flags, newTexts)
	flag.Offer(flags, "units", flag.Texts(dxf.Units)...)
	flags.String("gap", "0.5mm", "new: close gaps up to this `distance` in the lines of the drawing; 0mm closes none")
	addBolts(flags, "new: `diameters` of the drawing's holes for bolts: 6-14mm, or 6-7mm,12-13mm; may be repeated. Of a folder: how many, or the thread, such as M10")
	addReplace(flags, "new: "+replaceUsage)
	flags.StringArray("layer", nil, "new: `layer` of the drawing to read; may be repeated")
}

// newTextNames are the names of the flags with a text.
func newTextNames() (names []string) {
	for _, f := range newTexts {
		names = append(names, f.name)
	}
	return names
}

// newFlag returns the first flag of new that was set, or "".
func newFlag(flags *pflag.FlagSet) string {
	names := []string{"layer", "gap", "bolts", "replace"}
	return changed(flags, append(names, newTextNames()...))
}

// changed returns the first of the flags that was set, or "".
func changed(flags *pflag.FlagSet, names []string) string {
	if i := slices.IndexFunc(names, flags.Changed); i >= 0 {
		return names[i]
	}
	return ""
}

func (p *Program) newPattern(flags *pflag.FlagSet, folder string) Status {
	q := newQuantities(flags)
	q.checkNew()
	layout, drawing := q.layout(), q.drawing()
	table, _ := q.Text("csv")
	part, _ := q.Text("dxf")
	title, _ := q.Text("title")
	if q.Err != nil {
		return p.refuse(q.Err)
	}
	var draft writing.Draft
	var problems problem.List
	var err error
	switch {
	case table != "":
		draft, problems, err = p.pointsDraft(table)
	case part != "":
		draft, problems, err = job.Drawing(part, p.Stdin, drawing)
	default:
		draft = p.layoutDraft(layout)
	}
	if status := p.stopped(table+part, problems, err); status != Done {
		return status
	}
	draft.Title = cmp.Or(title, draft.Title, p.words.Say(finding.Noted(writing.Title, finding.Values{"shape": "drawing"})))
	text := writing.Pattern(draft, p.words.Say)
	name := writing.FileName(draft.Title)
	// A title from the command line may not be valid in a pattern file.
	if _, problems := patterns.Read(patterns.FromBytes(name, text)); problems.Stops() {
		p.report(problems)
		return Wrong
	}
	replace, _ := flags.GetBool("replace")
	if err := sparesEdited(folder, name, replace); folder != "" && err != nil {
		return p.fail(Wrong, err)
	}
	status := p.printOrWrite(folder, name, text)
	if folder != "" && status == Done && flags.Changed("dxf") {
		for _, note := range draft.Notes {
			if note.Code == drawn.LayersRead || note.Code == drawn.Lacks {
				fmt.Fprintln(p.Stdout, p.words.Say(note))
			}
		}
	}
	return status
}

func (q *quantities) checkNew() {
	shapes := []string{"grid", "circle", "row", "rectangle", "csv", "dxf"}
	q.AtMostOne(shapes...)
	if changed(q.Flags, shapes) == "" {
		q.Fail(flag.Misused(WhichLayout, nil))
		return
	}
	for _, flag := range []string{"layer", "units", "gap", "bolts", "dowels", "bores"} {
		q.Needs(flag, "dxf", "part.dxf")
	}
	needed := ""
	for _, l := range newLayouts {
		if q.Flags.Changed(l.flag) {
			needed = l.size
			q.Needs(l.flag, l.size, l.example)
		}
	}
	for _, size := range []string{"pitch", "diameter", "size"} {
		if q.Flags.Changed(size) && size != needed {
			q.Fail(flag.Misused(SaysNothing, finding.Values{"flag": size, "other": changed(q.Flags, shapes)}))
		}
	}
}

// pointsDraft makes a draft from a table. How the table was read is reported
// and noted in the draft.
func (p *Program) pointsDraft(file string) (writing.Draft, problem.List, error) {
	draft, problems, err := job.Points(file, p.Stdin)
	count := len(draft.Joint.Fasteners)
	draft.Title = p.words.Say(finding.Noted(writing.Title, finding.Values{"shape": "table", "count": count}))
	draft.Notes = append(draft.Notes, finding.Noted(writing.OfTable, finding.Values{"points": count}))
	var notes problem.List
	for _, one := range problems {
		if one.Severity == finding.Note {
			notes, draft.Notes = append(notes, one), append(draft.Notes, *one.Found)
		}
	}
	p.report(notes)
	return draft, problems, err
}

func (q *quantities) layout() *writing.Layout {
	layout := &writing.Layout{}
	for _, l := range newLayouts {
		if q.Flags.Changed(l.flag) {
			l.read(q, layout)
		}
	}
	if max(layout.Columns*layout.Rows, 2*(layout.Columns+layout.Rows), layout.Count) > mostPlaces {
		q.Fail(finding.Failed(TooManyPlaces, finding.Values{"most": mostPlaces}))
	}
	return layout
}

func (p *Program) layoutDraft(layout *writing.Layout) writing.Draft {
	note := finding.Noted(writing.OfLayout, finding.Values{"layout": layout.Named()})
	title := finding.Noted(writing.Title, finding.Values{"shape": string(layout.Shape), "columns": layout.Columns, "rows": layout.Rows, "count": layout.Count})
	return writing.Draft{Title: p.words.Say(title), Notes: []finding.Finding{note}, Layout: layout}
}

// bareLength reads a length that is in mm if it has no unit.
func bareLength(text string) (unit.Length, error) { return unit.ParseLength(text, "mm") }

// halves splits 5x2 at its multiplication sign.
func halves(text string) (first, second string, ok bool) {
	for _, sign := range []string{"x", "X", "×"} {
		if first, second, ok = strings.Cut(text, sign); ok {
			return strings.TrimSpace(first), strings.TrimSpace(second), true
		}
	}
	return text, "", false
}

func counts(text string) ([2]int, error) {
	first, second, _ := halves(text)
	columns, rows, ok := twoNumbers(first, second, strconv.Atoi, 0, mostPlaces)
	if !ok || columns < 1 {
		return [2]int{}, finding.Failed(NoCounts, finding.Values{"written": text})
	}
	return [2]int{columns, rows}, nil
}

func wholeCount(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > mostPlaces {
		return 0, finding.Failed(NoCount, finding.Values{"written": text, "most": mostPlaces})
	}
	return n, nil
}

// oneOrTwoLengths reads two lengths, such as 95x90, or one that is used for
// both.
func oneOrTwoLengths(text string) ([2]float64, error) {
	first, second, two := halves(text)
	if !two {
		second = first
	}
	return lengths(text, first, second)
}

// twoLengths reads two lengths, such as 300x160.
func twoLengths(text string) ([2]float64, error) {
	first, second, _ := halves(text)
	return lengths(text, first, second)
}

// lengths reads the two lengths of a text. A unit after the second applies to
// both.
func lengths(text, first, second string) ([2]float64, error) {
	if second == "" {
		return [2]float64{}, finding.Failed(NoLengths, finding.Values{"written": text})
	}
	if _, err := unit.ParseLength(first, ""); errors.Is(err, unit.NoUnit) {
		first += strings.TrimLeft(second, "0123456789.,/ ")
	}
	distance := unit.Within(unit.Sensible.Distance, bareLength)
	a, errA := distance(first)
	b, errB := distance(second)
	if err := cmp.Or(errA, errB); err != nil {
		return [2]float64{}, err
	}
	return [2]float64{float64(a), float64(b)}, nil
}
