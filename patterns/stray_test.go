package patterns_test

import (
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/patterns/table"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

// A coordinate typed ten times too large causes a warning with its line, and no
// built-in pattern does (the places of p4-head are real).
func TestStrayPlaceIsWarnedOf(t *testing.T) {
	for _, name := range patterns.Builtin() {
		text, _ := patterns.BuiltinText(name)
		_, problems := patterns.Read(patterns.FromBytes(name, text))
		if strings.Contains(said(problems).Error(), "is its place right?") {
			t.Errorf("%s: %v", name, problems)
		}
	}
	text, _ := patterns.BuiltinText("p4-head")
	head, _ := patterns.Read(patterns.FromBytes("p4-head", text))
	listed := string(writing.Pattern(writing.Draft{Title: "Head", Joint: head.Joint}, words.English().Say))
	slip := strings.Replace(listed, "id: F1, at: [-142.5, -90]", "id: F1, at: [-1425, -90]", 1)
	line := strings.Count(slip[:strings.Index(slip, "[-1425")], "\n") + 1
	input, problems := patterns.Read(patterns.FromBytes("p4-head.yaml", []byte(slip)))
	if len(problems) != 2 || problems[1].Line != line || // the other one: there is no tighten
		problems.Stops() || !strings.Contains(said(problems)[1].What, "F1 is 1236 mm from the nearest") {
		t.Errorf("%v, want one warning on line %d", problems, line) // from -1425, -90 to -190, -45: √(1235² + 45²) = 1235.8
	}
	if len(input.Joint.Fasteners) != 14 {
		t.Errorf("the warning stopped the work")
	}
	_, problems = table.Read(patterns.FromBytes("p.csv", []byte("A,0,0\nB,50,0\nC,100,0\nD,0,50\nE,50,50\nF,10000,50\n")))
	if len(problems) != 1 || problems[0].Line != 6 || problems.Stops() {
		t.Errorf("in a table: %v", problems)
	}
}
