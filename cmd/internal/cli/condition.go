package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
)

var conditionCommand = command{
	name: "condition",
	build: func(flags *pflag.FlagSet) runner {
		ways := addWayFlags(flags)
		printing := flag.AddPrint(flags, render.PDF, render.PNG)
		return func(p *Program, args []string) Status {
			return p.places("condition", args, ways, printing, job.Condition)
		}
	},
}
