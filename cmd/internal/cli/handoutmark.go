package cli

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"

	"drawdown/cmd/internal/job"
	"drawdown/sequence/plan"
)

// mark marks a table of answers: a line a student, the marked sheets, and the
// summary of the class.
func (p *Program) mark(made plan.Plan, ask job.HandoutRequest, table string, f printFlags) Status {
	marked, problems, err := job.Mark(made, ask, table, p.Stdin)
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
	if job.OtherParts(marked) {
		p.warn([]string{otherParts(ask)})
	}
	files, err := job.MarkedSheets(made, ask, marked)
	if err != nil {
		return p.fail(Wrong, err)
	}
	paths, err := writeFiles(*f.folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if *f.asJSON {
		return p.printJSON(struct {
			Answers []markedOut `json:"answers"`
			Files   []string    `json:"files"`
		}{markedJSON(marked), paths})
	}
	for _, m := range marked {
		if len(m.Unread) > 0 {
			fmt.Fprintf(p.Stdout, "%s, line %d: %s\n    %s\n", cmp.Or(m.Student, "?"), m.Line, m.Verdict(), saidAll(m.Unread))
			continue
		}
		fmt.Fprintf(p.Stdout, "%s, sheet %d: %s\n", m.Student, m.Sheet, m.Verdict())
		for _, finding := range m.Findings() {
			fmt.Fprintf(p.Stdout, "    %s\n", finding.Why())
		}
	}
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}

// otherParts says why answers may fit no part.
func otherParts(ask job.HandoutRequest) string {
	if ask.Layouts == 0 {
		return "many answers do not fit this part; sheets of made-up parts are marked with the --layouts and --seed that they were made with"
	}
	return fmt.Sprintf("many answers do not fit their parts; were the sheets made with other than --layouts %d --seed %d? Each sheet tells its own", ask.Layouts, ask.Seed)
}

// markedOut is an answer as handout --mark --json prints it.
type markedOut struct {
	Student  string       `json:"student"`
	Sheet    int          `json:"sheet"` // 0 where the row does not say which
	Line     int          `json:"line"`  // of the table
	Right    bool         `json:"right"`
	Verdict  string       `json:"verdict"`
	Unread   string       `json:"unread,omitempty"` // why the row is not marked
	Findings []findingOut `json:"findings"`
}

type findingOut struct {
	Rule     string   `json:"rule"`
	Severity string   `json:"severity"`
	IDs      []string `json:"ids"`
	Steps    []int    `json:"steps"`
	Why      string   `json:"why"`
}

func markedJSON(marked []job.Marked) []markedOut {
	out := []markedOut{}
	for _, m := range marked {
		one := markedOut{Student: m.Student, Sheet: m.Sheet, Line: m.Line, Right: m.Report.Verdict.Right(), Verdict: m.Verdict(), Unread: saidAll(m.Unread), Findings: []findingOut{}}
		for _, f := range m.Findings() {
			one.Findings = append(one.Findings, findingOut{string(f.Rule), string(f.Severity), append([]string{}, f.IDs...), append([]int{}, f.Steps...), f.Why()})
		}
		out = append(out, one)
	}
	return out
}
