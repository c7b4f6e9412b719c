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
	name:    "card",
	summary: "draw the tightening and loosening card of a joint, or of many",
	usage:   "FILE... [-o FOLDER] [flags]",
	about: `Writes one PDF with all pages, and a PNG or SVG a page. Files that exist are
replaced, whole or not at all.

Many patterns are drawn side by side, one on each core of the machine. One that
fails leaves the others alone: what is wrong is told in the order of the command
line, and the exit status is the worst. Two that would write the same file stop
the work before anything is written. With --json many patterns give
  {"drawn": 2, "failed": 1, "cards": [{"pattern": "a.yaml", "status": 0,
   "files": [], "warnings": [], "problems": [], "error": ""}, ...]}
where status is the exit status for that pattern alone, problems are those of
drawdown check --json, and error is there where something else went wrong.`,
	example: `
drawdown card p4-head --paper letter --format pdf -o cards
    cards/p4-head.pdf
drawdown card p4-head p4-sump --format pdf --lang de -o cards
    cards/p4-head.pdf
    cards/p4-sump.pdf
`,
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
