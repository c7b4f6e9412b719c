package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/sequence/plan"
)

var trayCommand = command{
	name:  "tray",
	build: buildTray,
}

func buildTray(flags *pflag.FlagSet) runner {
	underside := flags.Bool("underside", false, "as the part lies on its face: left and right change places")
	onePage := flags.Bool("one-page", false, "reduce it to one page; nothing can be laid on that")
	ways := addWayFlags(flags)
	printing := flag.AddPrint(flags, render.PDF)
	return func(p *Program, args []string) Status {
		return p.places("tray", args, ways, printing, func(made plan.Plan, ask job.Printing) ([]render.File, []string, error) {
			return job.Tray(made, *underside, *onePage, ask)
		})
	}
}
