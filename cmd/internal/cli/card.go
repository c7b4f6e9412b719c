package cli

import (
	"runtime"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/render/sheet/card"
	"drawdown/sequence/plan"
)

var cardCommand = command{
	name:  "card",
	build: buildCard,
}

func buildCard(flags *pflag.FlagSet) runner {
	side := flag.Choice(flags, "side", card.BothSides, card.SideChoices, "`side` of the card, one of ")
	ways := addWayFlags(flags)
	printing := flag.AddPrint(flags, render.PDF, render.PNG)
	jobs := flags.Int("jobs", 0, "`count` of patterns that are drawn at the same time; without it one a core")
	return func(p *Program, args []string) Status {
		ask, err := printing.Chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		names, err := someFiles(args)
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		if !flags.Changed("jobs") {
			*jobs = runtime.GOMAXPROCS(0)
		}
		if *jobs < 1 {
			return p.misuse("card", "--jobs %d; allowed: 1 or more", *jobs)
		}
		if len(names) == 1 {
			made, status, ok := p.load(names[0], *ways.way, *ways.turn)
			if !ok {
				return status
			}
			return p.draw(made, ask, printing, func(made plan.Plan, ask job.Printing) ([]render.File, []string, error) {
				return job.Card(made, *side, ask)
			})
		}
		b := batch{side: *side, ways: ways, print: ask, folder: *printing.Folder, atATime: *jobs}
		for _, name := range names {
			b.patterns = append(b.patterns, &batchPattern{file: name})
		}
		return p.cards(b, *printing.AsJSON)
	}
}
