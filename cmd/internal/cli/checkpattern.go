package cli

import (
	"cmp"
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/patterns/problem"
	"drawdown/render"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

var checkCommand = command{
	name:    "check",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		order := flags.String("order", "", "judge this order: a `list` of ids or cast numbers, or cast, or file")
		flag.Offer(flags, "order", job.CastOrder, job.FilesOrder)
		side := flag.Choice(flags, "side", judge.Tighten, judge.Sides, "the `side` that the order is for: ")
		drawing := addDrawFlags(flags)
		return func(p *Program, args []string) Status {
			file, err := oneFile(args)
			ask, errDrawing := drawing.chosen()
			switch err := cmp.Or(err, errDrawing); {
			case err != nil:
				return p.misuse(err)
			case flags.Changed("order") && *drawing.draw:
				return p.misuse(errors.New("--order and --draw are two checks; ask for one at a time"))
			case flags.Changed("order"):
				return p.checkOrder(file, *order, *side, *drawing.AsJSON)
			case flags.Changed("side"):
				return p.misuse(errors.New("--side says what an order is for; add it, as in --order M3,M8,M9"))
			}
			return p.check(file, drawing, ask)
		}
	},
}

// checked is what a check says in JSON.
type checked struct {
	Sound    bool         `json:"sound"`
	Problems problem.List `json:"problems"`
	Files    []string     `json:"files,omitempty"`    // of the drawing
	Warnings []string     `json:"warnings,omitempty"` // of the drawing
}

func (p *Program) check(file string, drawing drawFlags, ask job.Printing) Status {
	made, problems, err := job.Load(file, p.Stdin, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	out, status := checked{Sound: !problems.Stops(), Problems: p.said(problems)}, Done
	if !*drawing.AsJSON {
		p.report(problems)
	}
	switch {
	case !out.Sound:
		status = Wrong
	case *drawing.draw:
		if out.Files, out.Warnings, status = p.drawCheck(made, drawing, ask); status != Done {
			return status
		}
	}
	if *drawing.AsJSON {
		return max(status, p.printJSON(out))
	}
	if status == Done {
		p.reportTo(p.Stdout).Sound(file, made, len(problems))
	}
	p.printPaths(out.Files)
	return status
}

// checkOrder judges an order for a file's fasteners.
func (p *Program) checkOrder(file, order string, side judge.Side, asJSON bool) Status {
	made, problems, err := job.Load(file, p.Stdin, "", "")
	if err != nil {
		return p.unread(file, err)
	}
	if !asJSON {
		p.report(problems)
	} else if problems.Stops() {
		p.printJSON(report.CheckedOrder{Problems: p.said(problems)})
	}
	if problems.Stops() {
		return Wrong
	}
	judged, err := job.Judge(made, side, order)
	if err != nil {
		return p.fail(Wrong, fmt.Errorf("--order: %w", err))
	}
	status, to := Done, p.Stdout
	if !judged.Verdict.Right() {
		status, to = Wrong, p.Stderr
	}
	if asJSON {
		return max(status, p.printJSON(report.CheckedOrderJSON(p.words, judged, p.said(problems))))
	}
	p.reportTo(to).JudgedOrder(made, judged)
	return status
}

// drawFlags are the flags of the drawing by which a file is checked.
type drawFlags struct {
	flag.Print
	draw, actualSize *bool
}

func addDrawFlags(flags *pflag.FlagSet) drawFlags {
	return drawFlags{
		draw:       flags.Bool("draw", false, "draw the places plainly, to be held against the part"),
		actualSize: flags.Bool("actual-size", false, "draw them at their true size"),
		Print:      flag.AddPrint(flags, render.PDF),
	}
}

// chosen gives what the flags ask for; those of the drawing go with --draw.
func (f drawFlags) chosen() (ask job.Printing, err error) {
	const advice = "goes with --draw"
	if !*f.draw && f.Flags.Changed("actual-size") {
		return ask, errors.New("--actual-size " + advice)
	}
	return f.ChosenFor(*f.draw, advice)
}

// drawCheck draws a sound file and gives the paths of what it wrote, and what
// the drawing could not do as asked.
func (p *Program) drawCheck(made plan.Plan, f drawFlags, ask job.Printing) (paths, notes []string, status Status) {
	machine.KeepSmall(len(made.Joint.Fasteners), ask.DPI)
	drawn, notes, err := job.CheckDrawing(made, *f.actualSize, ask)
	if err != nil {
		return nil, notes, p.fail(Wrong, err)
	}
	p.warn(notes)
	if paths, err = files.Write(*f.Folder, drawn); err != nil {
		return nil, notes, p.fail(Failed, err)
	}
	return paths, notes, Done
}
