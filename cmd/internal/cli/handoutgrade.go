package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"unicode"
	"unicode/utf8"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/exercise"
	"drawdown/sequence/plan"
)

// grade grades a table of answers: a line a student, the graded sheets, and the
// summary of the class.
func (p *Program) grade(made plan.Plan, ask job.HandoutRequest, table string, f flag.Print) Status {
	graded, problems, err := job.Grade(made, ask, table, p.Stdin)
	if errors.Is(err, fs.ErrNotExist) {
		return p.fail(Wrong, finding.Failed(NoTable, finding.Values{"file": table}))
	}
	if err != nil {
		return p.unread(table, err)
	}
	p.report(problems)
	if problems.Stops() {
		return Wrong
	}
	if job.OfOtherParts(graded) {
		p.warn([]string{p.words.Say(finding.Warned(OfOtherParts, finding.Values{"layouts": ask.Layouts, "seed": fmt.Sprint(ask.Seed)}))})
	}
	files, err := job.GradedSheets(made, ask, graded)
	if err != nil {
		return p.fail(Wrong, err)
	}
	paths, err := writeFiles(*f.Folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if *f.AsJSON {
		return p.printJSON(struct {
			Answers []gradedOut `json:"answers"`
			Files   []string    `json:"files"`
		}{gradedJSON(p.words, graded), paths})
	}
	for _, g := range graded {
		if g.Outcome == exercise.Unread {
			p.answer(AnswerUnread, g)
			fmt.Fprintf(p.Stdout, "    %s\n", p.words.Value(g.Answer.Unread, ""))
			continue
		}
		p.answer(AnswerGraded, g)
		for _, finding := range g.ToMend() {
			fmt.Fprintf(p.Stdout, "    %s\n", p.words.Say(finding.Found()))
		}
	}
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}

// answer prints what a student's answer came to.
func (p *Program) answer(code finding.Code, g job.Graded) {
	fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(code, finding.Values{
		"student": g.Student, "sheet": fmt.Sprint(g.Answer.Sheet), "line": fmt.Sprint(g.Line), "outcome": p.outcome(g),
	})))
}

// outcome sums an answer up in a word or two, as the sheets do.
func (p *Program) outcome(g job.Graded) string {
	outcome := p.words.Handout.Graded.Outcomes[string(g.Outcome)]
	first, size := utf8.DecodeRuneInString(outcome)
	return string(unicode.ToLower(first)) + outcome[size:]
}

// gradedOut is an answer as handout --mark --json prints it.
type gradedOut struct {
	Student  string       `json:"student"`
	Sheet    int          `json:"sheet"` // 0 where the row does not say which
	Line     int          `json:"line"`  // of the table
	Right    bool         `json:"right"`
	Verdict  string       `json:"verdict"`
	Unread   string       `json:"unread,omitempty"` // why the row is not graded
	Findings []findingOut `json:"findings"`
}

type findingOut struct {
	Rule     string   `json:"rule"`
	Severity string   `json:"severity"`
	IDs      []string `json:"ids"`
	Steps    []int    `json:"steps"`
	Why      string   `json:"why"`
}

func gradedJSON(c *words.Catalogue, graded []job.Graded) []gradedOut {
	out := []gradedOut{}
	for _, g := range graded {
		one := gradedOut{Student: g.Answer.Student, Sheet: g.Answer.Sheet, Line: g.Line, Right: g.Report.Verdict.Right(), Verdict: string(g.Outcome), Unread: c.Value(g.Answer.Unread, ""), Findings: []findingOut{}}
		for _, f := range g.ToMend() {
			one.Findings = append(one.Findings, findingOut{string(f.Rule), string(f.Severity), append([]string{}, f.IDs...), append([]int{}, f.Steps...), c.Say(f.Found())})
		}
		out = append(out, one)
	}
	return out
}
