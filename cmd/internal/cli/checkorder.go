package cli

import (
	"fmt"
	"io"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/patterns/problem"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// checkOrder judges an order for a file's fasteners.
func (p *Program) checkOrder(file, order string, side judge.Side, asJSON bool) Status {
	made, problems, err := job.Load(file, p.Stdin, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	if problems.Stops() {
		if asJSON {
			return max(Wrong, p.printJSON(checkedOrder{Problems: problems}))
		}
		p.report(problems)
		return Wrong
	}
	if !asJSON {
		p.report(problems)
	}
	report, err := job.Judge(made, side, order)
	if err != nil {
		return p.fail(Wrong, fmt.Errorf("--order: %w", err))
	}
	status := Done
	if !report.Verdict.Right() {
		status = Wrong
	}
	if asJSON {
		return max(status, p.printJSON(p.orderChecked(report, problems)))
	}
	to := p.Stdout
	if status == Wrong {
		to = p.Stderr
	}
	printJudged(to, made, report)
	return status
}

// checkedOrder is what check --order --json prints.
type checkedOrder struct {
	Sound    bool         `json:"sound"` // the file and the order
	Problems problem.List `json:"problems"`
	Order    *judgedOrder `json:"order,omitempty"`
}

type judgedOrder struct {
	judge.Report
	Findings []judgedFinding `json:"findings"` // with their words
}

type judgedFinding struct {
	judge.Finding
	Why string `json:"why"`
}

func (p *Program) orderChecked(report judge.Report, problems problem.List) checkedOrder {
	judged := &judgedOrder{Report: report, Findings: []judgedFinding{}}
	for _, f := range report.Findings {
		judged.Findings = append(judged.Findings, judgedFinding{f, f.Why()})
	}
	return checkedOrder{Sound: report.Verdict.Right(), Problems: p.said(problems), Order: judged}
}

func printJudged(to io.Writer, made plan.Plan, report judge.Report) {
	heading := made.Title
	if made.Machine != "" {
		heading += " · " + made.Machine
	}
	fmt.Fprintf(to, "%s\nThis order to %s is %s.\n", heading, report.Side, verdictWords(report.Verdict))
	for _, f := range report.Findings {
		fmt.Fprintf(to, "  %-9s %s%s\n", severityWord(f.Severity), groupWord(report, f), f.Why())
	}
	if report.Verdict == judge.NotWhole {
		return
	}
	fmt.Fprintf(to, "\n%-42s%12s  %s\n", "", "this order", "drawdown's own")
	for _, g := range report.Groups {
		printGroup(to, g)
	}
	fmt.Fprintf(to, "  %-40s%9.0f mm  %11.0f mm\n", "wrench from place to place, over all", report.TravelMm, report.OwnTravelMm)
	fmt.Fprint(to, "\n"+pullWords)
	if report.Verdict != judge.Described {
		fmt.Fprint(to, "\nJudged by common practice. The maker's order comes first.\n")
	}
}

// pullWords say how to read the table: the greatest pull alone makes an order
// look good that begins at a corner.
const pullWords = `Pull counts fasteners at the edge that nothing tight holds against. In the first
third it tips a part that is still loose, so drawdown's own keeps it low there; at
the end, with the middle tight, it does little. How far the wrench goes decides
nothing.
`

func printGroup(to io.Writer, g judge.GroupReport) {
	fmt.Fprintf(to, "%s, %s\n", strings.Join(g.Kinds, ", "), layoutWords(g.Layout))
	fmt.Fprintf(to, "  %-40s%12.1f  %14.1f\n", "pull to one side in the first third", g.Order.PullEarly, g.Own.PullEarly)
	fmt.Fprintf(to, "  %-40s%12.1f  %14.1f", "pull to one side at its greatest", g.Order.Pull, g.Own.Pull)
	if g.Order.PullStep > 0 {
		fmt.Fprintf(to, "  (greatest after step %d)", g.Order.PullStep)
	}
	fmt.Fprintln(to)
	for _, line := range []struct {
		what       string
		order, own int
	}{
		{"longest run on one side, fasteners", g.Order.Run, g.Own.Run},
		{"steps back inwards", g.Order.Inwards, g.Own.Inwards},
		{"steps to a neighbour", g.Order.Neighbours, g.Own.Neighbours},
	} {
		if g.Layout == judge.Circle && line.what == "steps back inwards" {
			continue // a circle has no inside
		}
		fmt.Fprintf(to, "  %-40s%12d  %14d\n", line.what, line.order, line.own)
	}
}

func layoutWords(l judge.Layout) string {
	switch l {
	case judge.Row:
		return "a row"
	case judge.Circle:
		return "a bolt circle"
	}
	return "over a face"
}

func verdictWords(v judge.Verdict) string {
	if v == judge.Described {
		return "the maker's own: described here, not judged"
	}
	return string(v)
}

// severityWord stands before a finding.
func severityWord(s judge.Severity) string {
	if s == judge.Description {
		return "note"
	}
	return string(s)
}

// groupWord names the group of a finding where there are several.
func groupWord(report judge.Report, f judge.Finding) string {
	if len(report.Groups) < 2 || len(f.Kinds) == 0 {
		return ""
	}
	return strings.Join(f.Kinds, ", ") + ": "
}
