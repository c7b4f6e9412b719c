package cli

import (
	"cmp"
	"fmt"
	"io"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/sequence/plan"
)

var trayCommand = command{
	name:    "tray",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		underside := flags.Bool("underside", false, "for a part that lies on its face: swap left and right")
		onePage := flags.Bool("one-page", false, "reduce it to one page, as an overview")
		return sheetOfPlaces(flags, func(made plan.Plan, ask job.Printing) ([]render.File, []string, error) {
			return job.Tray(made, *underside, *onePage, ask)
		}, render.PDF)
	},
}

var conditionCommand = command{
	name:    "condition",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		return sheetOfPlaces(flags, job.Condition, render.PDF, render.PNG)
	},
}

var targetCommand = command{
	name:    "target",
	operand: nothing,
	build: func(flags *pflag.FlagSet) runner {
		printing := flag.AddPrintOneWay(flags, render.PDF)
		return func(p *Program, args []string) Status {
			ask, err := printing.Chosen()
			if err == nil && len(args) > 0 {
				err = finding.Failed(TakesNoName, finding.Values{"command": "target", "written": args[0]})
			}
			if err != nil {
				return p.misuse(err)
			}
			drawn, err := job.Target(ask)
			if err != nil {
				return p.fail(Wrong, err)
			}
			return p.deliver(drawn, nil, printing)
		}
	},
}

// drawing draws sheets of a plan. The notes say what could not be done as
// asked.
type drawing func(made plan.Plan, ask job.Printing) (drawn []render.File, notes []string, err error)

// sheetOfPlaces draws a sheet that needs only the places of a pattern.
func sheetOfPlaces(flags *pflag.FlagSet, draw drawing, formats ...render.Format) runner {
	ways := addWayFlags(flags)
	printing := flag.AddPrint(flags, formats...)
	return func(p *Program, args []string) Status {
		ask, err := printing.Chosen()
		file, errFile := oneFile(args)
		if err := cmp.Or(err, errFile); err != nil {
			return p.misuse(err)
		}
		made, status := p.loadPlaces(file, *ways.way, *ways.turn)
		if status != Done {
			return status
		}
		return p.draw(made, ask, printing, draw)
	}
}

// keepSmall limits the memory of the process for one ordinary sheet, unless the
// process does more than this call.
func (p *Program) keepSmall(made plan.Plan, ask job.Printing) {
	if p.alone {
		machine.KeepSmall(len(made.Joint.Fasteners), ask.DPI)
	}
}

func (p *Program) draw(made plan.Plan, ask job.Printing, printing flag.Print, draw drawing) Status {
	p.keepSmall(made, ask)
	drawn, notes, err := draw(made, ask)
	if err != nil {
		return p.fail(Wrong, err)
	}
	return p.deliver(drawn, notes, printing)
}

// deliver writes the files that a job has drawn, prints their paths, and
// reports the notes as warnings.
func (p *Program) deliver(drawn []render.File, notes []string, f flag.Print) Status {
	p.warn(notes)
	paths, err := files.Write(*f.Folder, drawn)
	if err != nil {
		return p.fail(Failed, err)
	}
	if *f.AsJSON {
		return p.printJSON(struct {
			Files    []string `json:"files"`
			Warnings []string `json:"warnings"`
		}{paths, report.Listed(notes)})
	}
	p.printPaths(paths)
	return Done
}

func (p *Program) printPaths(paths []string) {
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
}

// warn reports what a job could not do as asked.
func (p *Program) warn(notes []string) { p.reportTo(p.Stderr).Warn("", notes) }

// reportTo returns the report in the language of the call.
func (p *Program) reportTo(to io.Writer) report.Report { return report.Report{To: to, Words: p.words} }
