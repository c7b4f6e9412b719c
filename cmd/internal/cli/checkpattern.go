package cli

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

var checkCommand = command{
	name:    "check",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		order := flags.String("order", "", "judge this order: a `list` of ids or cast numbers, cast, or file")
		flag.Offer(flags, "order", job.CastOrder, job.FilesOrder)
		side := flag.Choice(flags, "side", judge.Tighten, judge.Sides, "the `side` that the order is for: ")
		draw := flags.Bool("draw", false, "draw the places, to compare with the part")
		actualSize := flags.Bool("actual-size", false, "draw them at true size")
		printing := flag.AddPrint(flags, render.PDF)
		return func(p *Program, args []string) Status {
			ask, errDrawing := printing.ChosenFor(*draw, flag.NeedsOther, "draw", "actual-size", "format", "paper", "landscape", "dpi")
			if alone := slices.IndexFunc([]string{"order", "side", "draw", "actual-size"}, flags.Changed); areMany(args) && alone < 0 {
				if err := cmp.Or(checkFiles(args), errDrawing); err != nil {
					return p.misuse(err)
				}
				return p.checkMany(args, *printing.Folder, *printing.AsJSON)
			}
			file, err := oneFile(args)
			switch err := cmp.Or(err, errDrawing); {
			case err != nil:
				return p.misuse(err)
			case flags.Changed("order") && *draw:
				return p.misuse(finding.Failed(TwoChecks, nil))
			case flags.Changed("order"):
				return p.checkOrder(file, *order, *side, *printing.AsJSON)
			case flags.Changed("side"):
				return p.misuse(finding.Failed(flag.NeedsOther, finding.Values{"flag": "side", "other": "order", "example": "M3,M8,M9"}))
			case !*draw && !slices.Contains([]job.FileKind{job.PatternFile, job.OtherFile}, p.kindOf(file)):
				return p.checkOther(file, *printing.Folder, *printing.AsJSON)
			case !*draw:
				return p.check(file, printing, nil)
			}
			return p.check(file, printing, func(made plan.Plan) ([]render.File, []string, error) {
				p.keepSmall(made, ask)
				return job.CheckDrawing(made, *actualSize, ask)
			})
		}
	},
}

// check checks a file. If it is sound and draw is not nil, it also draws it.
func (p *Program) check(file string, printing flag.Print, draw func(plan.Plan) ([]render.File, []string, error)) Status {
	made, problems, err := p.planned(file, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	problems = append(problems, job.StalePrints(file, *printing.Folder, made.Heading)...)
	out, status := report.Checked{Sound: !problems.Stops(), Problems: p.said(problems)}, Done
	out.Judgement = report.Judgement{Judged: []string{}, NotJudged: []string{}}
	if out.Sound {
		out.Judgement = report.JudgementOf(p.words, made)
	}
	if !*printing.AsJSON {
		p.report(problems)
	}
	if !out.Sound {
		status = Wrong
	} else if draw != nil {
		drawn, notes, err := draw(made)
		if err != nil {
			return p.fail(Wrong, err)
		}
		p.warn(notes)
		out.Warnings = notes
		if out.Files, err = files.Write(*printing.Folder, drawn); err != nil {
			return p.fail(Failed, err)
		}
	}
	if *printing.AsJSON {
		return max(status, p.printJSON(out))
	}
	if out.Sound {
		p.reportTo(p.Stdout).Sound(file, made, len(problems.WithoutNotes()), len(out.NotJudged))
		if draw == nil {
			p.reportTo(p.Stdout).Judgement(out.Judgement)
		}
	}
	p.printPaths(out.Files)
	return status
}

func (p *Program) checkOrder(file, order string, side judge.Side, asJSON bool) Status {
	made, problems, err := p.planned(file, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	if !asJSON {
		p.report(problems)
	} else if problems.Stops() {
		p.printJSON(report.Checked{Problems: p.said(problems)})
	}
	if problems.Stops() {
		return Wrong
	}
	judged, err := job.Judge(made, side, order, problems)
	if err != nil {
		return p.fail(Wrong, fmt.Errorf("--order: %w", err))
	}
	status, to := Done, p.Stdout
	if !judged.Verdict.Right() {
		status, to = Wrong, p.Stderr
	}
	if asJSON {
		out := report.CheckedJSON(p.words, judged, p.said(problems))
		out.Judgement = report.JudgementOf(p.words, made)
		return max(status, p.printJSON(out))
	}
	p.reportTo(to).JudgedOrder(made, judged)
	return status
}
