package cli

import (
	"fmt"
	"io"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/render"
	"drawdown/sequence/plan"
)

// drawing draws sheets of a plan. The notes tell what could not be done as asked.
type drawing func(made plan.Plan, ask job.Printing) (drawn []render.File, notes []string, err error)

// places draws a sheet that needs the places of a pattern alone.
func (p *Program) places(command string, args []string, ways wayFlags, printing flag.Print, draw drawing) Status {
	ask, err := printing.Chosen()
	if err != nil {
		return p.misuse(command, "%v", err)
	}
	file, err := oneFile(args)
	if err != nil {
		return p.misuse(command, "%v", err)
	}
	made, status, ok := p.loadPlaces(file, *ways.way, *ways.turn)
	if !ok {
		return status
	}
	return p.draw(made, ask, printing, draw)
}

// draw draws sheets and writes them.
func (p *Program) draw(made plan.Plan, ask job.Printing, printing flag.Print, draw drawing) Status {
	machine.KeepSmall(len(made.Joint.Fasteners), ask.DPI)
	drawn, notes, err := draw(made, ask)
	if err != nil {
		return p.fail(Wrong, err)
	}
	return p.deliver(drawn, notes, printing)
}

// deliver writes the files that a job has drawn, tells their paths, and warns
// of what the notes say.
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

// printPaths tells what was written.
func (p *Program) printPaths(paths []string) {
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
}

// warn tells what a job could not do as asked.
func (p *Program) warn(notes []string) { p.reportTo(p.Stderr).Warn("", notes) }

// reportTo gives the report in the language of the call.
func (p *Program) reportTo(to io.Writer) report.Report { return report.Report{To: to, Words: p.words} }
