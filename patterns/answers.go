package patterns

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawdown/patterns/problem"
)

// Answer is the order that a student gave.
type Answer struct {
	Student string // as the table gives it
	Sheet   int    // from 1
	Order   string // names with blanks between; empty where the student gave none
	Line    int    // of the table
	// Unread is what is wrong with a row that cannot be marked, empty where it
	// can. Student and Sheet are then empty and 0 where they are not known.
	Unread string
}

// maxAnswers bounds a table of answers: more than a school has students.
const maxAnswers = 10_000

// longestStudent bounds a name in letters: it stands on one line.
const longestStudent = 80

// answersExample is the start of a table of answers, for messages.
const answersExample = "student,sheet,order"

// ReadAnswers reads a table of answers. Its heading names the columns: student,
// sheet where there are several, and order, with the names of the fasteners and
// blanks between; or, in place of order, the columns 1, 2, 3 and on, a name in
// each. Columns are parted by commas, semicolons or tabs. Lines that begin with
// # are left out; a row whose order is blank is an answer that was not given. The
// check says whether a list can be read for a sheet; what it says is reported at
// the list.
//
// A row that cannot be read stops nobody else: it is warned of, and its answer
// says why it cannot be marked. Only a heading that is wrong, a line that is no
// row of a table (a quote that is not closed takes in the rows below it), or a
// table of which no row can be read, stops the work.
func ReadAnswers(source Source, sheets int, check func(sheet int, order string) error) ([]Answer, problem.List) {
	r := &reader{source: source}
	f := newFile(source.File, source.Data)
	t := &answerTable{reader: r, file: f, sheets: sheets, check: check}
	t.read(source.Data)
	t.excuse()
	problems := r.problems()
	if problems.Stops() {
		return nil, problems
	}
	return t.answers, problems
}

type answerTable struct {
	*reader
	file    *file
	in      *csv.Reader
	sheets  int
	check   func(sheet int, order string) error
	student int // columns, from 0; −1 for none
	sheet   int
	order   []int // one, or one a position
	width   int   // columns of the heading
	answers []Answer
	faults  []int // which of the problems found are of one row alone
}

func (t *answerTable) read(data []byte) {
	if len(data) > maxFileBytes {
		t.report(t.file, 0, 0, problem.Error, "", fmt.Sprintf("the file is larger than %d MB", maxFileBytes>>20))
		return
	}
	if line, column, what := checkCharacters(data); what != "" {
		t.report(t.file, line, column, problem.Error, "", what)
		return
	}
	t.in = csv.NewReader(strings.NewReader(t.file.text))
	t.in.Comma, t.in.Comment, t.in.FieldsPerRecord, t.in.TrimLeadingSpace = separator(t.file.lines), '#', -1, true
	headed := false
	for {
		cells, err := t.in.Read()
		if cells == nil && err == nil || err != nil && cells == nil && strings.HasSuffix(err.Error(), "EOF") {
			break
		}
		if err != nil {
			t.unreadableRow(err)
			return
		}
		if !headed {
			if headed = t.heading(cells); !headed {
				return
			}
			continue
		}
		if len(t.answers) == maxAnswers {
			t.fail(t.cell(0, cells[0]), fmt.Sprintf("1 to %d", maxAnswers), "the table has too many answers")
			return
		}
		t.row(cells)
	}
	if len(t.answers) == 0 && len(t.found) == 0 {
		t.report(t.file, 1, 1, problem.Error, "", "the table has no answers; write a heading and an answer a line: "+answersExample)
	}
}

func (t *answerTable) unreadableRow(err error) {
	line, column := 1, 1
	if parse, ok := err.(*csv.ParseError); ok {
		line, column = parse.Line, parse.Column
		err = parse.Err
	}
	t.report(t.file, line, column, problem.Error, "", "the line is no row of a table: "+err.Error())
}

// cell makes a node of a cell, for the place in a message.
func (t *answerTable) cell(i int, text string) *node {
	line, at := t.in.FieldPos(i)
	column := at
	if line >= 1 && line <= len(t.file.lines) && at-1 <= len(t.file.lines[line-1]) {
		column = utf8.RuneCountInString(t.file.lines[line-1][:at-1]) + 1
	}
	return &node{shape: scalarShape, text: strings.TrimSpace(text), file: t.file, line: line, column: column, size: 1}
}

// heading reads what the columns hold.
func (t *answerTable) heading(cells []string) bool {
	t.student, t.sheet, t.width = -1, -1, len(cells)
	allowed := "student, sheet, order, or 1, 2, 3 and on in place of order"
	list := -1
	for i, cell := range cells {
		n := t.cell(i, cell)
		name := strings.ToLower(n.text)
		position, err := strconv.Atoi(name)
		seen := map[string]int{"student": t.student, "sheet": t.sheet, "order": list}
		switch before, known := seen[name]; {
		case known && before >= 0:
			t.fail(n, "", "the heading names %s twice", name)
			return false
		case name == "student":
			t.student = i
		case name == "sheet":
			t.sheet = i
		case name == "order":
			list = i
		case err == nil && position == len(t.order)+1:
			t.order = append(t.order, i)
		case err == nil:
			t.fail(n, strconv.Itoa(len(t.order)+1), "the position %s is out of turn in the heading", quoted(n.text))
			return false
		case name == "":
		default:
			t.fail(n, allowed, "the heading has the unknown column %s%s", quoted(n.text), t.hint(name, []string{"student", "sheet", "order"}))
			return false
		}
	}
	at := t.cell(0, cells[0])
	switch {
	case t.student < 0:
		t.fail(at, allowed, "the heading names no column student")
	case list >= 0 && len(t.order) > 0:
		t.fail(t.cell(list, "order"), "", "the heading names both order and positions; write one or the other")
	case list < 0 && len(t.order) == 0:
		t.fail(at, allowed, "the heading names no column order")
	case t.sheet < 0 && t.sheets > 1:
		t.fail(at, "", "there are %d sheets, so the table needs a column sheet", t.sheets)
	default:
		if list >= 0 {
			t.order = []int{list}
		}
		return true
	}
	return false
}

// excuse makes warnings of what is wrong with single rows, where others can be
// marked.
func (t *answerTable) excuse() {
	if t.full() || !slices.ContainsFunc(t.answers, func(a Answer) bool { return a.Unread == "" }) {
		return
	}
	for _, i := range t.faults {
		p := &t.found[i].problem
		p.Severity, p.What = problem.Warning, "the row is not marked: "+p.What
	}
}

// row reads one answer.
func (t *answerTable) row(cells []string) {
	if strings.TrimSpace(strings.Join(cells, "")) == "" {
		return // a line of separators, as spreadsheets leave them
	}
	get := func(i int) *node {
		if i < len(cells) {
			return t.cell(i, cells[i])
		}
		return t.cell(0, "")
	}
	before := len(t.found)
	student := get(t.student)
	answer := Answer{Sheet: 1, Line: student.line}
	if student.text == "" {
		t.fail(get(0), "", "the row names no student")
	} else if name, ok := t.textUpTo(student, "the student", longestStudent); ok {
		answer.Student = name
	}
	if t.sheet >= 0 {
		answer.Sheet, _ = t.whole(get(t.sheet), "the sheet", 1, max(1, t.sheets))
	}
	if len(cells) > t.width {
		t.fail(t.cell(t.width, cells[t.width]), "", "the row has more columns than the heading; put an order with commas in it between quotes")
	} else {
		t.listOf(&answer, get)
	}
	if t.errorsSince(before) {
		t.setAside(&answer, before)
	} else {
		t.again(student, answer)
	}
	t.answers = append(t.answers, answer)
}

// setAside notes why a row cannot be marked.
func (t *answerTable) setAside(answer *Answer, before int) {
	var why []string
	for i, f := range t.found[before:] {
		if f.problem.Severity != problem.Error {
			continue
		}
		t.faults = append(t.faults, before+i)
		words := f.problem.What
		if f.problem.Allowed != "" {
			words += "; allowed: " + f.problem.Allowed
		}
		why = append(why, words)
	}
	answer.Order, answer.Unread = "", strings.Join(why, "; ")
}

// answerList is the order of a row.
type answerList struct {
	names []string
	at    *node // where it begins
}

// listOf reads the order of a row into its answer.
func (t *answerTable) listOf(answer *Answer, get func(int) *node) {
	list := t.list(get)
	answer.Order = strings.Join(list.names, " ")
	if len(list.names) == 0 || answer.Sheet == 0 {
		return
	}
	if err := t.check(answer.Sheet, answer.Order); err != nil {
		t.fail(list.at, "", "%v", err)
	}
}

func (t *answerTable) list(get func(int) *node) answerList {
	list := answerList{at: get(t.order[0])}
	if len(t.order) == 1 {
		list.names = strings.Fields(strings.NewReplacer(",", " ", ";", " ").Replace(list.at.text))
		return list
	}
	gap, told := (*node)(nil), false
	for _, i := range t.order {
		n := get(i)
		if n.text == "" {
			if gap == nil {
				gap = n
			}
			continue
		}
		if gap != nil && !told {
			t.warn(gap, "a position is empty before %s; the order is marked without it", quoted(n.text))
			told = true
		}
		list.names = append(list.names, n.text)
	}
	return list
}

// again warns of a student who has answered the sheet before.
func (t *answerTable) again(student *node, a Answer) {
	k := slices.IndexFunc(t.answers, func(b Answer) bool { return b.Student == a.Student && b.Sheet == a.Sheet })
	if k >= 0 {
		t.warn(student, "%s has answered the sheet on line %d too; both are marked", quoted(a.Student), t.answers[k].Line)
	}
}
