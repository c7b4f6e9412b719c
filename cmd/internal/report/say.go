package report

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Report prints in the language of the call.
type Report struct {
	To    io.Writer
	Words *words.Catalogue
}

// say returns the words of a line.
func (r Report) say(code finding.Code, values finding.Values) string {
	return r.Words.Say(finding.Noted(code, values))
}

// line prints an indented line.
func (r Report) line(indent string, code finding.Code, values finding.Values) {
	fmt.Fprintln(r.To, indent+r.say(code, values))
}

// text prints a line, indented and wrapped.
func (r Report) text(line string) { fmt.Fprint(r.To, Wrapped("  ", "  ", line)) }

// list prints lines one below the other, under a heading.
func (r Report) list(heading string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(r.To, "\n%s\n", heading)
	for _, line := range lines {
		fmt.Fprint(r.To, Wrapped("  - ", "    ", line))
	}
}

// heading names the joint and its machine.
func (r Report) heading(made plan.Plan) {
	names := []string{made.Title}
	if made.Machine != "" {
		names = append(names, made.Machine)
	}
	fmt.Fprintln(r.To, strings.Join(names, " · "))
}

// blank reports whether a line may break at a space: not at one between a
// figure and its unit.
func blank(r rune) bool { return r != '\u00a0' && unicode.IsSpace(r) }

// Wrapped wraps a line to a terminal of 80 columns.
func Wrapped(first, next, line string) string {
	const columns = 80
	text, row := "", ""
	for i, word := range strings.FieldsFunc(line, blank) {
		switch {
		case i == 0:
			row = first
		case utf8.RuneCountInString(row)+1+utf8.RuneCountInString(word) > columns:
			text += row + "\n"
			row = next
		default:
			row += " "
		}
		row += word
	}
	return text + row + "\n"
}

// Warn reports what a job could not do as asked, with the file if there are
// several.
func (r Report) Warn(file string, notes []string) {
	for _, note := range notes {
		r.line("drawdown: ", Warned, finding.Values{"what": note, "file": file})
	}
}

// Said returns problems in the language of the call.
func (r Report) Said(problems problem.List) problem.List {
	return problems.Worded(r.Words.What, r.Words.Allowed)
}

// Problems prints the problems of an input, each with its source line.
func (r Report) Problems(problems problem.List) {
	for _, p := range r.Said(problems) {
		place := p.File + ":" // in the form that editors and other programs recognize
		if p.Line > 0 {
			place += fmt.Sprintf("%d:%d:", p.Line, p.Column)
		}
		fmt.Fprint(r.To, p.Under(r.say(Problem, finding.Values{
			"place": place, "severity": string(p.Severity), "what": p.What, "allowed": p.Allowed,
		})))
	}
}

// Columns are the widths of a text table's columns, in characters. A negative
// width is for left-aligned words. Columns are separated by a space.
type Columns []int

// Row prints a row of the table. Words too long for their column are cut; cells
// at the end may be left out.
func (c Columns) Row(to io.Writer, cells ...string) {
	row := make([]string, len(cells))
	for i, cell := range cells {
		if width := -c[i]; width > 0 && utf8.RuneCountInString(cell) > width {
			cell = string([]rune(cell)[:width-1]) + "…"
		}
		row[i] = fmt.Sprintf("%*s", c[i], cell)
	}
	fmt.Fprintln(to, strings.TrimRight(strings.Join(row, " "), " "))
}
