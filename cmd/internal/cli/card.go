package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/render/sheet/card"
)

var cardCommand = command{
	name:    "card",
	summary: "draw the tightening and loosening card of a joint",
	usage:   "FILE [-o FOLDER] [flags]",
	about: `Writes one PDF with all pages, and a PNG or SVG a page. Files that exist are
replaced, whole or not at all.`,
	example: `
drawdown card p4-head --paper letter --format pdf -o cards
    cards/p4-head.pdf
`,
	build: buildCard,
}

func buildCard(flags *pflag.FlagSet) runner {
	side := flags.String("side", string(card.BothSides), "`side` of the card, one of "+choices(card.Sides))
	ways := addWayFlags(flags)
	printing := addPrintFlags(flags, "pdf,png")
	return func(p *Program, args []string) Status {
		ask, err := printing.chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		which, err := choose("side", *side, card.Sides)
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		way, turn, err := ways.chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		file, err := oneFile(args)
		if err != nil {
			return p.misuse("card", "%v", err)
		}
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
}
