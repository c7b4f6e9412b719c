// Package report says on a terminal, or as JSON for other programs, what a job
// came to: text tables, figures without binary dust, and the shapes of the JSON,
// each once. It works nothing out and knows no flags; what was found it words by
// the catalogue of the call, render/words. It may import what it reports on: job
// with the rooms below.
package report

import (
	"fmt"
	"io"
	"strings"
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

func (r Report) say(code finding.Code, values finding.Values) string {
	return r.Words.Say(finding.Noted(code, values))
}

func (r Report) line(indent string, code finding.Code, values finding.Values) {
	fmt.Fprintln(r.To, indent+r.say(code, values))
}

func (r Report) heading(made plan.Plan) {
	names := []string{made.Title}
	if made.Machine != "" {
		names = append(names, made.Machine)
	}
	fmt.Fprintln(r.To, strings.Join(names, " · "))
}

// Wrapped breaks a line at its words so that it fits a terminal of 80 columns.
func Wrapped(first, next, line string) string {
	const columns = 80
	text, last := "", ""
	for i, word := range strings.Fields(line) {
		switch longer := last + " " + word; {
		case i == 0:
			last = first + word
		case utf8.RuneCountInString(longer) > columns:
			text, last = text+last+"\n", next+word
		default:
			last = longer
		}
	}
	return text + last + "\n"
}

// Warn tells what a job could not do as asked, of which file where there are
// several.
func (r Report) Warn(file string, notes []string) {
	for _, note := range notes {
		r.line("drawdown: ", Warned, finding.Values{"what": note, "file": file})
	}
}

// Said gives problems in the language of the call.
func (r Report) Said(problems problem.List) problem.List {
	return problems.Worded(r.Words.What, r.Words.Allowed)
}

// Problems prints what is wrong with an input, each with the line it stands on.
func (r Report) Problems(problems problem.List) {
	for _, p := range r.Said(problems) {
		place := p.File + ":" // as editors and other programs know it
		if p.Line > 0 {
			place += fmt.Sprintf("%d:%d:", p.Line, p.Column)
		}
		fmt.Fprint(r.To, p.Under(r.say(Problem, finding.Values{
			"place": place, "severity": string(p.Severity), "what": p.What, "allowed": p.Allowed,
		})))
	}
}
