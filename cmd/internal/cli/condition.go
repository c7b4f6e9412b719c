package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
)

var conditionCommand = command{
	name:    "condition",
	summary: "draw the sheet to note the state of every fastener on",
	usage:   "FILE [-o FOLDER] [flags]",
	about: `A row for every fastener in the order of loosening: came out, seized, stretched,
thread damaged, broken, replaced, its length as measured, and a remark. A small
drawing shows where each is; fasteners that are used once are marked. Two boxes
say what to do when one starts to give on the way out, or breaks.`,
	example: `
drawdown condition p4-head --format pdf -o bench
    bench/p4-head-condition.pdf
`,
	build: func(flags *pflag.FlagSet) runner {
		ways := addWayFlags(flags)
		printing := flag.AddPrint(flags, render.PDF, render.PNG)
		return func(p *Program, args []string) Status {
			return p.places("condition", args, ways, printing, job.Condition)
		}
	},
}
