package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/sequence/plan"
)

var trayCommand = command{
	name:    "tray",
	summary: "draw full-size sheets to lay the fasteners on",
	usage:   "FILE [-o FOLDER] [flags]",
	about: `Each fastener has a spot of the true size of its head, in its place, with its
number in the order of loosening, and its id and tightening number beside it;
each station of the file has a ring. What is larger than the paper goes over
several sheets with an overlap; crop marks tell where to cut and lay them, and
the key plan which sheet is which. Print at 100 % and measure both bars. The
paper is laid on its side where that takes fewer sheets.`,
	example: `
drawdown tray p4-head --paper a3 -o bench
    bench/p4-head-tray.pdf
`,
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
