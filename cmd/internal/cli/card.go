package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/render/sheet/card"
	"drawdown/sequence"
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
	side := flags.String("side", string(card.BothSides), "`side` of the card, one of "+choices(card.SideChoices))
	ways := addWayFlags(flags)
	printing := addPrintFlags(flags, "pdf,png")
	jobs := addJobsFlag(flags)
	return func(p *Program, args []string) Status {
		ask, err := printing.chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		which, err := choose("side", *side, card.SideChoices)
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		way, turn, err := ways.chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		files, err := someFiles(args)
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		atATime, err := jobs.chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		if len(files) == 1 {
			return p.card(files[0], which, way, turn, ask, printing)
		}
		b := batch{side: which, way: way, turn: turn, print: ask, folder: *printing.folder, atATime: atATime}
		for _, file := range files {
			b.patterns = append(b.patterns, &batchPattern{file: file})
		}
		return p.cards(b, *printing.asJSON)
	}
}

// card draws the card of one pattern.
func (p *Program) card(file string, which card.Sides, way sequence.Way, turn sequence.Turn, ask job.Printing, printing printFlags) Status {
	made, status, ok := p.load(file, way, turn)
	if !ok {
		return status
	}
	keepSmall(len(made.Joint.Fasteners), ask.DPI)
	files, notes, err := job.Card(made, which, ask)
	if err != nil {
		return p.fail(Wrong, err)
	}
	return p.deliver(files, notes, printing)
}
