package cli

import (
	"errors"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/sequence/plan"
)

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
	keepSmall(len(made.Joint.Fasteners), ask.DPI)
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
