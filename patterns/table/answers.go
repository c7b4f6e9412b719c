package table

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

// Answer is the order given by a student.
type Answer struct {
	Student string // as in the table
	Sheet   int    // counted from 1
	Order   string // names with spaces between; empty if the student gave none
	Line    int    // of the table
	// Unread holds the problems of a row that cannot be marked; it is empty for
	// other rows. Student is then empty and Sheet 0 if they are unknown.
	Unread []finding.Finding
}

// maxAnswers limits a table of answers: more than a school has students.
const maxAnswers = 10_000

// longestStudent limits a name, in letters: it must fit on one line.
const longestStudent = 80

// answersExample is the start of a table of answers, for messages.
const answersExample = "student,sheet,order"

// ReadAnswers reads a table of answers. Its heading names the columns: student,
// sheet if there are several, and order, with the names of the fasteners
// separated by spaces; or, instead of order, the columns 1, 2, 3 and so on,
// with one name in each. Commas, semicolons or tabs separate the columns. Lines
// that begin with # are skipped; a row with a blank order is an answer that was
// not given. The check reports whether a list can be read for a sheet; its
// error is reported at the list.
// A row that cannot be read does not affect the others: it earns a warning, and
// its answer states why it cannot be marked. Work stops only for a wrong
// heading, a line that is no row of a table (an unclosed quote includes the
// rows below it), or a table without a readable row.
func ReadAnswers(from source.Source, sheets int, check func(sheet int, order string) error) ([]Answer, problem.List) {
	t := &answerTable{sheet: newSheet(from), sheets: sheets, check: check}
	if t.open() {
		t.read()
		t.excuse()
	}
	return form.Sound(t.answers, t.List())
}

type answerTable struct {
	sheet
	sheets  int
	check   func(sheet int, order string) error
	student int   // columns, counted from 0
	sheetAt int   // that of the sheet number
	order   []int // one, or one per position
	width   int   // columns of the heading
	answers []Answer
	faults  []*problem.Problem // those of single rows

	numbered bool // sheets have a column
}

func (t *answerTable) read() {
	headed := false
	for {
		cells, ok := t.row()
		switch {
		case !ok:
			return
		case cells == nil:
			if len(t.answers) == 0 && t.Count() == 0 {
				t.Report(t.file, 1, 1, finding.Failed(NoAnswers, finding.Values{"example": answersExample}))
			}
			return
		case !headed:
			if headed = t.heading(cells); !headed {
				return
			}
		case len(t.answers) == maxAnswers:
			t.Fail(t.cell(0, cells[0]), TooManyAnswers, finding.Values{"most": maxAnswers})
			return
		default:
			t.answer(cells)
		}
	}
}

// heading reads the meaning of the columns.
func (t *answerTable) heading(cells []string) bool {
	names := []string{"student", "sheet", "order"}
	columns := map[string]int{}
	for i, cell := range cells {
		n := t.cell(i, cell)
		name := strings.ToLower(n.Text)
		position, err := strconv.Atoi(name)
		_, twice := columns[name]
		switch {
		case twice:
			t.Fail(n, ColumnTwice, finding.Values{"column": name})
			return false
		case slices.Contains(names, name):
			columns[name] = i
		case err == nil && position == len(t.order)+1:
			t.order = append(t.order, i)
		case err == nil:
			t.Fail(n, PositionOutOfTurn, finding.Values{"column": problem.Quoted(n.Text), "next": len(t.order) + 1})
			return false
		case name != "":
			t.Fail(n, UnknownColumn, finding.Values{"column": problem.Quoted(n.Text), "meant": t.Meant(name, names)})
			return false
		}
	}
	at := t.cell(0, cells[0])
	student, hasStudent := columns["student"]
	sheet, hasSheet := columns["sheet"]
	list, hasList := columns["order"]
	switch {
	case !hasStudent:
		t.Fail(at, ColumnMissing, finding.Values{"column": "student"})
		return false
	case hasList && len(t.order) > 0:
		t.Fail(t.cell(list, "order"), OrderAndPositions, nil)
		return false
	case !hasList && len(t.order) == 0:
		t.Fail(at, ColumnMissing, finding.Values{"column": "order"})
		return false
	case !hasSheet && t.sheets > 1:
		t.Fail(at, SheetMissing, finding.Values{"count": t.sheets})
		return false
	case hasList:
		t.order = []int{list}
	}
	t.student, t.sheetAt, t.numbered, t.width = student, sheet, hasSheet, len(cells)
	return true
}

// excuse turns errors of single rows into warnings, if other rows can be
// marked.
func (t *answerTable) excuse() {
	if t.Full() || !slices.ContainsFunc(t.answers, func(a Answer) bool { return len(a.Unread) == 0 }) {
		return
	}
	for _, p := range t.faults {
		why := finding.Warned(RowNotMarked, finding.Values{"why": *p.Found})
		p.Severity, p.Found = problem.Warning, &why
	}
}

// answer reads one answer.
func (t *answerTable) answer(cells []string) {
	if strings.TrimSpace(strings.Join(cells, "")) == "" {
		return // an empty row, as spreadsheets leave them
	}
	get := func(i int) *nodes.Node {
		if i < len(cells) {
			return t.cell(i, cells[i])
		}
		return t.cell(0, "")
	}
	before := t.Count()
	student := get(t.student)
	answer := Answer{Sheet: 1, Line: student.Line}
	if student.Text == "" {
		t.Fail(get(0), StudentMissing, nil)
	} else if name, ok := t.TextUpTo(student, finding.Term("the student"), longestStudent); ok {
		answer.Student = name
	}
	if t.numbered {
		answer.Sheet, _ = t.Whole(get(t.sheetAt), finding.Term("the sheet"), 1, max(1, t.sheets))
	}
	if len(cells) > t.width {
		t.Fail(t.cell(t.width, cells[t.width]), TooManyColumns, nil)
	} else {
		t.listOf(&answer, get)
	}
	for _, p := range t.ErrorsAfter(before) {
		t.faults = append(t.faults, p)
		answer.Unread, answer.Order = append(answer.Unread, *p.Found), ""
	}
	if len(answer.Unread) == 0 {
		t.again(student, answer)
	}
	t.answers = append(t.answers, answer)
}

// listOf reads the order of a row into its answer.
func (t *answerTable) listOf(answer *Answer, get func(int) *nodes.Node) {
	answer.Order = strings.Join(t.names(get), " ")
	if answer.Order == "" || answer.Sheet == 0 {
		return
	}
	if err := t.check(answer.Sheet, answer.Order); err != nil {
		t.Unreadable(get(t.order[0]), finding.Error, nil, err)
	}
}

// names returns the order of a row.
func (t *answerTable) names(get func(int) *nodes.Node) (names []string) {
	if len(t.order) == 1 {
		return strings.FieldsFunc(get(t.order[0]).Text, func(c rune) bool { return c == ',' || c == ';' || unicode.IsSpace(c) })
	}
	gap, told := (*nodes.Node)(nil), false
	for _, i := range t.order {
		n := get(i)
		switch {
		case n.Text != "":
			names = append(names, n.Text)
		case gap == nil:
			gap = n
		}
		if gap != nil && n.Text != "" && !told {
			t.Warn(gap, EmptyPosition, finding.Values{"name": problem.Quoted(n.Text)})
			told = true
		}
	}
	return names
}

// again warns of a student who answered the same sheet before.
func (t *answerTable) again(student *nodes.Node, a Answer) {
	k := slices.IndexFunc(t.answers, func(b Answer) bool { return b.Student == a.Student && b.Sheet == a.Sheet })
	if k >= 0 {
		t.Warn(student, AnsweredTwice, finding.Values{"student": problem.Quoted(a.Student), "line": t.answers[k].Line})
	}
}
