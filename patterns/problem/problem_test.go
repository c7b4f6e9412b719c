package problem

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// First principles: tabs stay tabs, East Asian wide characters take two cells
// and combining accents none (Unicode Standard Annex 11).
func TestDetailMarksThePlace(t *testing.T) {
	for name, test := range map[string]struct {
		snippet string
		column  int
		want    string // below the snippet, without the margin
	}{
		"plain":     {"title: x", 8, "       ^"},
		"first":     {"title: x", 1, "^"},
		"past end":  {"ab", 3, "  ^"},
		"tab":       {"\ta:\tb", 5, "\t  \t^"},
		"wide":      {"管: b", 4, "    ^"},
		"fullwidth": {"Ａb", 2, "  ^"},
		"accent":    {"e\u0301: b", 5, "   ^"},
		"latin":     {"größe: b", 8, "       ^"},
	} {
		p := Problem{File: "f", Line: 7, Column: test.column, Severity: Error, What: "w", Snippet: test.snippet}
		want := "f:7:" + string(rune('0'+test.column)) + ": error: w\n    7 | " + test.snippet + "\n      | " + test.want + "\n"
		if got := p.Detail(); got != want {
			t.Errorf("%s: got\n%s\nwant\n%s", name, got, want)
		}
	}
}

func TestDetailDrivesNoTerminal(t *testing.T) {
	p := Problem{File: "f", Line: 1, Column: 1, Snippet: "a\x1b[2J\u202eb"}
	if got := p.Detail(); strings.ContainsAny(got, "\x1b\u202e") {
		t.Errorf("%q", got)
	}
}

func TestExcerptShowsThePlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := []rune(rapid.StringOfN(rapid.RuneFrom([]rune("abc管ü")), 1, 900, -1).Draw(t, "line"))
		column := rapid.IntRange(1, len(line)).Draw(t, "column")
		snippet, mark := Excerpt(line, column)
		if mark == 0 {
			mark = column
		}
		if got := []rune(snippet)[mark-1]; got != line[column-1] {
			t.Fatalf("%q is marked, not %q", got, line[column-1])
		}
		if n := utf8.RuneCountInString(snippet); n > 2*excerptReach+2 {
			t.Fatalf("%d characters", n)
		}
	})
}

func TestStringAndStops(t *testing.T) {
	warning := Problem{File: "f", Severity: Warning, What: "w", Allowed: "a, b"}
	if got := warning.String(); got != "f: warning: w; allowed: a, b" {
		t.Error(got)
	}
	if (List{warning}).Stops() || !(List{warning, {Severity: Error}}).Stops() {
		t.Error("errors stop the work, warnings do not")
	}
	list := List{{File: "b", Line: 1}, {File: "a", Line: 2, Column: 3}, {File: "a", Line: 2, Column: 1}, {File: "a", Line: 1}}
	list.SortFrom("c")
	var order []string
	for _, p := range list {
		order = append(order, strings.SplitN(p.String(), ": ", 2)[0])
	}
	if got := strings.Join(order, " "); got != "a:1:0 a:2:1 a:2:3 b:1:0" {
		t.Error(got)
	}
	if list.SortFrom("b"); list[0].File != "b" {
		t.Errorf("the file itself comes first, not %v", list[0])
	}
}
