package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render/words"
	"drawdown/sequence/exercise"
	"drawdown/sequence/plan"
)

// grade grades a table of answers: a line a student, the graded sheets, and the
// summary of the class.
func (p *Program) grade(made plan.Plan, ask job.HandoutRequest, table string, f flag.Print) Status {
	graded, problems, err := job.Grade(made, ask, table, p.Stdin)
	if errors.Is(err, fs.ErrNotExist) {
		return p.fail(Wrong, fmt.Errorf("there is no table %s", table))
	}
	if err != nil {
		return p.unread(table, err)
	}
	p.report(problems)
	if problems.Stops() {
		return Wrong
	}
	if job.OfOtherParts(graded) {
		p.warn([]string{otherParts(ask)})
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
			fmt.Fprintf(p.Stdout, "%s, line %d: %s\n    %s\n", g.Student, g.Line, outcomeWords(p.words, g), unread(p.words, g))
			continue
		}
		fmt.Fprintf(p.Stdout, "%s, sheet %d: %s\n", g.Student, g.Answer.Sheet, outcomeWords(p.words, g))
		for _, finding := range g.ToMend() {
			fmt.Fprintf(p.Stdout, "    %s\n", p.words.Say(finding.Found()))
		}
	}
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}

// outcomeWords sums an answer up in a word or two, as the sheets do.
func outcomeWords(c *words.Catalogue, g job.Graded) string {
	return strings.ToLower(c.Handout.Graded.Outcomes[string(g.Outcome)])
}

// otherParts says why answers may fit no part.
func otherParts(ask job.HandoutRequest) string {
	if ask.Layouts == 0 {
		return "many answers do not fit this part; sheets of made-up parts are marked with the --layouts and --seed that they were made with"
	}
	return fmt.Sprintf("many answers do not fit their parts; were the sheets made with other than --layouts %d --seed %d? Each sheet tells its own", ask.Layouts, ask.Seed)
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

// unread says why an answer could not be read.
func unread(c *words.Catalogue, g job.Graded) string {
	return strings.Join(c.SayAll(g.Answer.Unread), "; ")
}

func gradedJSON(c *words.Catalogue, graded []job.Graded) []gradedOut {
	out := []gradedOut{}
	for _, g := range graded {
		one := gradedOut{Student: g.Answer.Student, Sheet: g.Answer.Sheet, Line: g.Line, Right: g.Report.Verdict.Right(), Verdict: outcomeWords(c, g), Unread: unread(c, g), Findings: []findingOut{}}
		for _, f := range g.ToMend() {
			one.Findings = append(one.Findings, findingOut{string(f.Rule), string(f.Severity), append([]string{}, f.IDs...), append([]int{}, f.Steps...), c.Say(f.Found())})
		}
		out = append(out, one)
	}
	return out
}
