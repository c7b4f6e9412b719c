package cli

import (
	"cmp"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/sequence/plan"
	"drawdown/sequence/revision"
)

var diffCommand = command{
	name:    "diff",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		draw := flags.Bool("draw", false, "draw the newer one, with a letter at each difference")
		printing := flag.AddPrint(flags, render.PDF)
		return func(p *Program, args []string) Status {
			ask, err := printing.ChosenFor(*draw, flag.NeedsOther, "draw", "format", "paper", "landscape", "dpi", "out")
			if len(args) != 2 {
				err = cmp.Or(error(finding.Failed(TwoFiles, nil)), err)
			}
			if err = cmp.Or(err, checkFiles(args)); err != nil {
				return p.misuse(err)
			}
			var made [2]plan.Plan
			for i, name := range args {
				var status Status
				if made[i], status = p.loadPlaces(name, "", ""); status != Done {
					return status
				}
			}
			return p.diff(made[0], made[1], *draw, ask, printing)
		}
	},
}

func (p *Program) diff(before, after plan.Plan, draw bool, ask job.Printing, printing flag.Print) Status {
	found := revision.Between(before, after)
	var written []string
	if draw {
		p.keepSmall(after, ask)
		drawn, notes, err := job.Differences(before, after, ask)
		if err != nil {
			return p.fail(Wrong, err)
		}
		p.warn(notes)
		if written, err = files.Write(*printing.Folder, drawn); err != nil {
			return p.fail(Failed, err)
		}
	}
	if *printing.AsJSON {
		return p.printJSON(report.DifferencesJSON(p.words, found, written))
	}
	if len(found) == 0 {
		found = []finding.Finding{finding.Noted(revision.Nothing, nil)}
	}
	for _, one := range found {
		fmt.Fprintln(p.Stdout, p.words.Say(one))
	}
	p.printPaths(written)
	return Done
}
