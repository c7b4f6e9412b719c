package cli

import (
	"fmt"
	"runtime"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/render/sheet/card"
	"drawdown/sequence/plan"
)

var cardCommand = command{
	name:    "card",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		side := flag.Choice(flags, "side", card.BothSides, card.SideChoices, "`side` of the card, one of ")
		ways := addWayFlags(flags)
		printing := flag.AddPrint(flags, render.PDF, render.PNG)
		jobs := flags.Int("jobs", 0, "`count` of patterns that are drawn at the same time; without it one a core")
		return func(p *Program, args []string) Status {
			ask, err := printing.Chosen()
			if err == nil {
				err = checkFiles(args)
			}
			if !flags.Changed("jobs") {
				*jobs = runtime.GOMAXPROCS(0)
			}
			if err == nil && *jobs < 1 {
				err = fmt.Errorf("--jobs %d; allowed: 1 or more", *jobs)
			}
			if err != nil {
				return p.misuse(err)
			}
			if len(args) > 1 {
				b := batch{side: *side, ways: ways, print: ask, folder: *printing.Folder, atATime: *jobs}
				return p.cards(b, args, *printing.AsJSON)
			}
			made, _, status := p.load(args[0], *ways.way, *ways.turn)
			if status != Done {
				return status
			}
			return p.draw(made, ask, printing, func(made plan.Plan, ask job.Printing) ([]render.File, []string, error) {
				return job.Card(made, *side, ask)
			})
		}
	},
}
