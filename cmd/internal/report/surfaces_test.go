package report

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/patterns"
	"drawdown/patterns/form"
	"drawdown/patterns/problem"
	"drawdown/patterns/writing"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
)

// Every finding has words in every language, and the words are the same in
// every output.
func TestEveryFindingOnEverySurface(t *testing.T) {
	t.Parallel()
	for _, c := range wordstest.All() {
		var all []finding.Finding
		for code, values := range wordstest.Examples {
			all = append(all, finding.Warned(code, values))
		}
		slices.SortFunc(all, func(a, b finding.Finding) int { return strings.Compare(string(a.Code), string(b.Code)) })
		for _, f := range all {
			checkTerminal(t, c, f)
			if f.Code != trace.TitleLetter && f.Code != form.NotInTypeface { // they name a letter that the typeface lacks
				checkSheet(t, c, f)
			}
		}
		checkJSON(t, c, all)
		checkNotes(t, c, all)
	}
}

// A terminal has 80 columns; only a longer word may exceed them.
func checkTerminal(t *testing.T, c *words.Catalogue, f finding.Finding) {
	t.Helper()
	var printed strings.Builder
	Report{&printed, c}.text(c.Say(f))
	for line := range strings.Lines(printed.String()) {
		if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 80 && len(strings.FieldsFunc(line, blank)) > 1 {
			t.Errorf("%s %q: %d columns: %s", c.Language, f.Code, n, line)
		}
	}
	if got, want := strings.FieldsFunc(printed.String(), blank), strings.FieldsFunc(c.Say(f), blank); !slices.Equal(got, want) {
		t.Errorf("%s %q prints %q, says %q", c.Language, f.Code, got, want)
	}
	problems := Report{&printed, c}.Said(problem.List{{File: "x.yaml", Severity: problem.Warning, Found: &f}})
	if got := problems[0]; got.What != c.What(f) || got.Allowed != c.Allowed(f) {
		t.Errorf("%s %q as a problem: %q; %q", c.Language, f.Code, got.What, got.Allowed)
	}
}

// A sheet sets it in the typeface, wrapped to the width of a caution.
func checkSheet(t *testing.T, c *words.Catalogue, f finding.Finding) {
	t.Helper()
	const size, width = 2.8, 60
	said := c.Say(f)
	if missing, found := font.Missing(said); found {
		t.Errorf("%s %q: the typeface lacks %c", c.Language, f.Code, missing)
	}
	for _, line := range font.Break(said, scene.Regular, size, width) {
		if font.Width(line, scene.Regular, size) > width || font.CheckLine(line) != nil {
			t.Errorf("%s %q on a sheet: %q", c.Language, f.Code, line)
		}
	}
}

// JSON has the same words.
func checkJSON(t *testing.T, c *words.Catalogue, all []finding.Finding) {
	t.Helper()
	text, err := JSON(foundJSON(c, all...))
	var back []Found
	if err == nil {
		err = json.Unmarshal(text, &back)
	}
	if err != nil || len(back) != len(all) {
		t.Fatalf("%s: %d of %d come back, %v", c.Language, len(back), len(all), err)
	}
	for i, f := range all {
		if back[i].Text != c.Say(f) || back[i].Code != f.Code {
			t.Errorf("%s: %+v, want %q", c.Language, back[i], c.Say(f))
		}
	}
}

// A pattern file can have it as a comment, and is still read.
func checkNotes(t *testing.T, c *words.Catalogue, all []finding.Finding) {
	t.Helper()
	file := writing.Pattern(writing.Draft{Title: "Cover", Notes: all, Joint: geometry.Joint{Fasteners: []geometry.Fastener{{ID: "A"}}}}, c.Say)
	if _, problems := patterns.Read(patterns.FromBytes("cover.yaml", file)); problems.Stops() {
		t.Errorf("%s: %v", c.Language, problems)
	}
	for _, f := range all {
		if note := "# " + strings.Join(strings.Fields(c.Say(f)), " ") + "\n"; !strings.Contains(string(file), note) {
			t.Errorf("%s %q is not noted: %s", c.Language, f.Code, note)
		}
	}
}
