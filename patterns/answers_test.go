package patterns

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func readAnswers(text string, sheets int) ([]Answer, string) {
	check := func(_ int, order string) error {
		if strings.Contains(order, "?") {
			return errors.New("no list")
		}
		return nil
	}
	source := FromBytes("class.csv", []byte(text))
	source.Printable = func(s string) (rune, bool) { return '☃', strings.Contains(s, "☃") }
	answers, problems := ReadAnswers(source, sheets, check)
	return answers, problems.Error()
}

// The columns stand in any order, the list in one column or in many, parted by
// what a spreadsheet parts them by.
func TestAnswersAsWritten(t *testing.T) {
	one := []Answer{{"Ana M.", 2, "M3 M8 M9", 2}, {"Bo", 1, "M8 M3", 3}}
	for name, c := range map[string]struct {
		text   string
		sheets int
		want   []Answer
	}{
		"a list":          {"student,sheet,order\nAna M.,2,M3 M8 M9\nBo,1,M8 M3\n", 2, one},
		"columns turned":  {"Order;Student;Sheet\nM3 M8 M9;Ana M.;2\nM8 M3;Bo;1\n", 2, one},
		"positions":       {"student\tsheet\t1\t2\t3\nAna M.\t2\tM3\tM8\tM9\nBo\t1\tM8\tM3\t\n", 2, one},
		"quoted list":     {"student,sheet,order\n\"Ana M.\",2,\"M3,M8,M9\"\nBo,1,M8  M3\n", 2, one},
		"no sheets":       {"student,order\nBo,M8 M3\n", 1, []Answer{{"Bo", 1, "M8 M3", 2}}},
		"line ends":       {"\uFEFFstudent,order\r\n# absent: Cy\r\nBo,M8 M3\r\n,\r\n", 1, []Answer{{"Bo", 1, "M8 M3", 3}}},
		"blank answers":   {"student,order\nBo,M8 M3\nCy,\nDai, ; \n", 1, []Answer{{"Bo", 1, "M8 M3", 2}, {"Cy", 1, "", 3}, {"Dai", 1, "", 4}}},
		"blank positions": {"student,1,2\nCy,,\nBo,M8,M3\n", 1, []Answer{{"Cy", 1, "", 2}, {"Bo", 1, "M8 M3", 3}}},
		"other alphabets": {"student,order\nŁucja Żak,M8 M3\n", 1, []Answer{{"Łucja Żak", 1, "M8 M3", 2}}},
	} {
		got, problems := readAnswers(c.text, c.sheets)
		if diff := cmp.Diff(c.want, got); diff != "" || problems != "" {
			t.Errorf("%s: problems %q (- wanted, + read):\n%s", name, problems, diff)
		}
	}
}

// Each problem stands at its line and column and says what is allowed; no
// answer is read past it.
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
		{"student,1,3\nBo,M1,M2\n", `class.csv:1:11: error: the position "3" is out of turn in the heading; allowed: 2`},
		{"student,sheet,order\nBo,3,M1\n", `class.csv:2:4: error: the sheet is "3"; allowed: whole numbers from 1 to 2`},
		{"student,sheet,order\nBo,,M1\n", "class.csv:2:4: error: the sheet is"},
		{"student,order\nBo,M1\n", "class.csv:1:1: error: there are 2 sheets"},
		{"student,sheet,order\n ,1,M1\n", "class.csv:2:"},
		{"student,sheet,order\nBo,1,M1,M2\n", "class.csv:2:9: error: the row has more columns"},
		{"student,sheet,order\nÅsa,1,M1 ?\n", "class.csv:2:7: error: no list"},
		{"student,sheet,1,2,3\nBo,1,M1,,M3\n", `class.csv:2:9: error: a position is empty before "M3"`},
		{"student,sheet,order\nBo,1,\"M1\n", "class.csv:"},
		{"student,sheet,order\nBo ☃,1,M1\n", "class.csv:2:1: error: the student: the typeface has no"},
		{"student,sheet,order\nB\x00,1,M1\n", "class.csv:2:2: error: the file holds a NUL"},
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

// The same name twice on one sheet is warned of: there may be two of that name.
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
			if a.Student == "" || a.Sheet < 1 || a.Sheet > 3 {
				t.Errorf("%q gives %+v", text, a)
			}
		}
	})
}
