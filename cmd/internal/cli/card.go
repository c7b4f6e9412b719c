package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
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
	formats := flags.String("format", "pdf,png", "one or more `formats`, with commas between: "+choices(render.Formats))
	paper := flags.String("paper", "a4", "`size` of the paper, one of "+strings.Join(sheet.PaperNames(), ", "))
	side := flags.String("side", string(sheet.BothSides), "`side` of the card, one of "+choices(sheet.Sides))
	dpi := flags.Int("dpi", 300, "`dots` per inch of PNG pictures")
	ways := addWayFlags(flags)
	folder := outFlag(flags)
	asJSON := jsonFlag(flags)
	return func(p *Program, args []string) Status {
		ask, err := cardRequest(*formats, *paper, *side, *dpi)
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		way, turn, err := ways.chosen()
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		file, err := oneFile(args)
		if err == nil {
			err = checkFolder(*folder)
		}
		if err != nil {
			return p.misuse("card", "%v", err)
		}
		made, status, ok := p.load(file, way, turn)
		if !ok {
			return status
		}
		return p.card(made, ask, *folder, *asJSON)
	}
}

func cardRequest(formats, paper, side string, dpi int) (ask job.CardRequest, err error) {
	if ask.Paper, err = sheet.FindPaper(paper); err != nil {
		return ask, err
	}
	if ask.Sides, err = choose("side", side, sheet.Sides); err != nil {
		return ask, err
	}
	for _, name := range strings.Split(formats, ",") {
		f, err := render.FindFormat(name)
		if err != nil {
			return ask, err
		}
		if !slices.Contains(ask.Formats, f) {
			ask.Formats = append(ask.Formats, f)
		}
	}
	ask.DPI = dpi
	return ask, render.CheckDPI(dpi, ask.Paper.Width, ask.Paper.Height)
}

func (p *Program) card(made plan.Plan, ask job.CardRequest, folder string, asJSON bool) Status {
	keepSmall(len(made.Joint.Fasteners), ask.DPI)
	files, notes, err := job.Card(made, ask)
	if err != nil {
		return p.fail(Wrong, err)
	}
	for _, note := range notes {
		fmt.Fprintf(p.Stderr, "drawdown: warning: %s\n", note)
	}
	paths, err := writeFiles(folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if asJSON {
		return p.printJSON(struct {
			Files    []string `json:"files"`
			Warnings []string `json:"warnings"`
		}{paths, append([]string{}, notes...)})
	}
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}
