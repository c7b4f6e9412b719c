package table

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns/source"
	"drawdown/render/words"
)

func readAnswers(text string, sheets int) ([]Answer, string) {
	check := func(_ int, order string) error {
		if strings.Contains(order, "?") {
			return errors.New("no list")
		}
		return nil
	}
	from := source.Source{File: "class.csv", Data: []byte(text)}
	from.Printable = func(s string) (rune, bool) { return '☃', strings.Contains(s, "☃") }
	answers, problems := ReadAnswers(from, sheets, check)
	return answers, said(problems).Error()
}

// The columns may be in any order, and the list in one column or in many, with
// the separators used by spreadsheets.
func TestAnswersAsWritten(t *testing.T) {
	one := []Answer{{Student: "Ana M.", Sheet: 2, Order: "M3 M8 M9", Line: 2}, {Student: "Bo", Sheet: 1, Order: "M8 M3", Line: 3}}
	for name, c := range map[string]struct {
		text   string
		sheets int
		want   []Answer
	}{
		"a list":          {"student,sheet,order\nAna M.,2,M3 M8 M9\nBo,1,M8 M3\n", 2, one},
		"columns turned":  {"Order;Student;Sheet\nM3 M8 M9;Ana M.;2\nM8 M3;Bo;1\n", 2, one},
		"positions":       {"student\tsheet\t1\t2\t3\nAna M.\t2\tM3\tM8\tM9\nBo\t1\tM8\tM3\t\n", 2, one},
		"quoted list":     {"student,sheet,order\n\"Ana M.\",2,\"M3,M8,M9\"\nBo,1,M8  M3\n", 2, one},
		"no sheets":       {"student,order\nBo,M8 M3\n", 1, []Answer{{Student: "Bo", Sheet: 1, Order: "M8 M3", Line: 2}}},
		"line ends":       {"\uFEFFstudent,order\r\n# absent: Cy\r\nBo,M8 M3\r\n,\r\n", 1, []Answer{{Student: "Bo", Sheet: 1, Order: "M8 M3", Line: 3}}},
		"blank answers":   {"student,order\nBo,M8 M3\nCy,\nDai, ; \n", 1, []Answer{{Student: "Bo", Sheet: 1, Order: "M8 M3", Line: 2}, {Student: "Cy", Sheet: 1, Order: "", Line: 3}, {Student: "Dai", Sheet: 1, Order: "", Line: 4}}},
		"blank positions": {"student,1,2\nCy,,\nBo,M8,M3\n", 1, []Answer{{Student: "Cy", Sheet: 1, Order: "", Line: 2}, {Student: "Bo", Sheet: 1, Order: "M8 M3", Line: 3}}},
		"other alphabets": {"student,order\nŁucja Żak,M8 M3\n", 1, []Answer{{Student: "Łucja Żak", Sheet: 1, Order: "M8 M3", Line: 2}}},
	} {
		got, problems := readAnswers(c.text, c.sheets)
		if diff := cmp.Diff(c.want, got); diff != "" || problems != "" {
			t.Errorf("%s: problems %q (- wanted, + read):\n%s", name, problems, diff)
		}
	}
}

// Each problem has its line and column and says what is allowed. If no row can
// be read, there are no answers.
func TestAnswersProblems(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "class.csv:1:1: error: the table has no answers"},
		{"student,sheet,order\n", "class.csv:1:1: error: the table has no answers"},
		{"name,order\nBo,M1\n", `class.csv:1:1: error: the heading has the unknown column "name"; allowed: student, sheet, order, or 1, 2, 3`},
		{"student,odrer\nBo,M1\n", `class.csv:1:9: error: the heading has the unknown column "odrer" (did you mean order?)`},
		{"order,sheet\nM1,1\n", "class.csv:1:1: error: the heading names no column student"},
		{"student,sheet\nBo,1\n", "class.csv:1:1: error: the heading names no column order"},
		{"student,order,student\nBo,M1,Cy\n", "class.csv:1:15: error: the heading names student twice"},
		{"student,order,1\nBo,M1,M2\n", "class.csv:1:9: error: the heading names both"},
		{"student,1,3\nBo,M1,M2\n", `class.csv:1:11: error: the position "3" is out of sequence in the heading; allowed: 2`},
		{"student,sheet,order\nBo,3,M1\n", `class.csv:2:4: error: the sheet is "3"; allowed: whole numbers from 1 to 2`},
		{"student,sheet,order\nBo,,M1\n", "class.csv:2:4: error: the sheet is"},
		{"student,order\nBo,M1\n", "class.csv:1:1: error: there are 2 sheets"},
		{"student,sheet,order\n ,1,M1\n", "class.csv:2:"},
		{"student,sheet,order\nBo,1,M1,M2\n", "class.csv:2:9: error: the row has more columns"},
		{"student,sheet,order\nÅsa,1,M1 ?\n", "class.csv:2:7: error: no list"},
		{"student,sheet,order\nBo,1,\"M1\n", "class.csv:"},
		{"student,sheet,order\nBo ☃,1,M1\n", "class.csv:2:1: error: the student: the typeface has no"},
		{"student,sheet,order\nB\x00,1,M1\n", "class.csv:2:2: error: the file contains a NUL"},
		{"student,sheet,order\nB\xff,1,M1\n", "class.csv:2:2: error: the byte 0xFF is not UTF-8"},
	} {
		answers, problems := readAnswers(c.text, 2)
		if !strings.HasPrefix(problems, c.want) || len(answers) > 0 {
			t.Errorf("%q: %d answers, problems %q, want %q", c.text, len(answers), problems, c.want)
		}
	}
	// All of them at once.
	if _, problems := readAnswers("student,sheet,order\nBo,9,M1\n,1,M1\nCy,1,?\n", 2); strings.Count(problems, "error:") != 3 {
		t.Errorf("not all at once: %s", problems)
	}
}

// A row that cannot be read does not affect the others, and its problem is
// reported.
func TestRowsSetAside(t *testing.T) {
	text := "student,sheet,order\nAna,1,M1\nBo,7,M1\n ,1,M1\nCy,2,M1,M2\nDai,x,\"M1 ?\"\nEva,1,?\nFay ☃,1,M1\nGus,2,M2\n"
	answers, problems := readAnswers(text, 2)
	want := []Answer{
		{Student: "Ana", Sheet: 1, Order: "M1", Line: 2},
		{Student: "Bo", Line: 3},
		{Sheet: 1, Line: 4},
		{Student: "Cy", Sheet: 2, Line: 5},
		{Student: "Dai", Line: 6},
		{Student: "Eva", Sheet: 1, Line: 7},
		{Sheet: 1, Line: 8},
		{Student: "Gus", Sheet: 2, Order: "M2", Line: 9},
	}
	why := []string{"", `the sheet is "7"; allowed: whole numbers from 1 to 2`, "the row names no student",
		"the row has more columns than the heading; put an order with commas in it between quotes",
		`the sheet is "x"; allowed: whole numbers from 1 to 2`, "no list", `the student: the typeface has no "☃" (U+2603)`, ""}
	for i, a := range answers {
		if got := strings.Join(words.English().SayAll(a.Unread), "; "); got != why[i] {
			t.Errorf("line %d: %q, want %q", a.Line, got, why[i])
		}
		answers[i].Unread = nil
	}
	if diff := cmp.Diff(want, answers); diff != "" {
		t.Errorf("- wanted, + read:\n%s", diff)
	}
	lines := strings.Split(problems, "\n")
	for i, place := range []string{"3:4", "4:2", "5:9", "6:5", "7:7", "8:1"} {
		if i >= len(lines) || !strings.HasPrefix(lines[i], "class.csv:"+place+": warning: the row is not marked: ") {
			t.Errorf("problem %d of %q is not at %s", i, problems, place)
		}
	}
	if strings.Contains(problems, "error:") {
		t.Errorf("single rows stop the class: %s", problems)
	}
}

// An empty position does not prevent marking the rest.
func TestEmptyPosition(t *testing.T) {
	for text, want := range map[string]string{
		"student,1,2,3,4\nBo,M1,,M3,M4\n": `class.csv:2:7: warning: a position is empty before "M3"; the order is marked without it`,
		"student,1,2,3,4\nBo,,M1,,M3\n":   `class.csv:2:4: warning: a position is empty before "M1"`,
	} {
		answers, problems := readAnswers(text, 1)
		if len(answers) != 1 || answers[0].Unread != nil || !strings.HasPrefix(problems, want) || strings.Count(problems, "warning") != 1 {
			t.Errorf("%q: %+v, %s", text, answers, problems)
		}
	}
}

// The same name twice on one sheet gives a warning: there may be two students
// with that name.
func TestAnsweredTwice(t *testing.T) {
	answers, problems := readAnswers("student,order\nBo,M1\nBo,M2\n", 1)
	if len(answers) != 2 || !strings.HasPrefix(problems, `class.csv:3:1: warning: "Bo" has answered the sheet on line 2 too`) {
		t.Errorf("%d answers, %q", len(answers), problems)
	}
}

func FuzzAnswers(f *testing.F) {
	f.Add("student,sheet,order\nBo,1,M1 M2\n")
	f.Add("student;1;2\n\"a\nb\";;M2\n")
	f.Fuzz(func(t *testing.T, text string) {
		answers, problems := readAnswers(text, 3)
		if len(answers) == 0 && problems == "" {
			t.Errorf("%q passes silently", text)
		}
		for _, a := range answers {
			if a.Unread == nil && (a.Student == "" || a.Sheet < 1 || a.Sheet > 3) || a.Unread != nil && a.Order != "" {
				t.Errorf("%q gives %+v", text, a)
			}
		}
	})
}
