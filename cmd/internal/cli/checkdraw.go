package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/sequence/plan"
)

// drawFlags are the flags of the drawing by which a file is checked.
type drawFlags struct {
	printFlags
	flags            *pflag.FlagSet
	draw, actualSize *bool
}

func addDrawFlags(flags *pflag.FlagSet) drawFlags {
	return drawFlags{
		flags:      flags,
		draw:       flags.Bool("draw", false, "draw the places plainly, to be held against the part"),
		actualSize: flags.Bool("actual-size", false, "draw them at their true size"),
		printFlags: addPrintFlags(flags, "pdf"),
	}
}

// chosen gives what the flags ask for. Flags of the drawing without --draw are
// a slip: nothing would come of them.
func (f drawFlags) chosen() (ask job.Printing, err error) {
	if !*f.draw {
		for _, name := range []string{"actual-size", "format", "paper", "landscape", "lang", "dpi", "out"} {
			if f.flags.Changed(name) {
				return ask, fmt.Errorf("--%s goes with --draw", name)
			}
		}
	}
	return f.printFlags.chosen()
}

// drawCheck draws a sound file and gives the paths of what it wrote, and what
// the drawing could not do as asked.
func (p *Program) drawCheck(made plan.Plan, f drawFlags, ask job.Printing) (paths, notes []string, status Status) {
	keepSmall(len(made.Joint.Fasteners), ask.DPI)
	files, notes, err := job.CheckDrawing(made, *f.actualSize, ask)
	if err != nil {
		return nil, notes, p.fail(Wrong, err)
	}
	p.warn(notes)
	if paths, err = writeFiles(*f.folder, files); err != nil {
		return nil, notes, p.fail(Failed, err)
	}
	return paths, notes, Done
}
