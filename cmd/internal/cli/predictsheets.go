package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/sequence/interaction"
)

// forecastFlags are the flags for a prediction on paper.
type forecastFlags struct {
	flag.Print
	frames *bool
}

func addForecastFlags(flags *pflag.FlagSet) forecastFlags {
	return forecastFlags{
		Print:  flag.AddPrint(flags, render.PDF),
		frames: flags.Bool("frames", false, "draw a page for every step of the work"),
	}
}

// wanted says whether sheets are asked for instead of text.
func (f forecastFlags) wanted() bool { return *f.frames || f.Flags.Changed("format") }

// forecast draws the prediction as sheets.
func (p *Program) forecast(answer interaction.Answer, ask job.Printing, f forecastFlags) Status {
	keepSmall(len(answer.Plan.Joint.Fasteners), ask.DPI)
	files, notes, err := job.ForecastSheets(answer, ask, *f.frames)
	if err != nil {
		return p.fail(Wrong, err)
	}
	if answer.Scatter != nil {
		notes = append(notes, ask.Words.Say(finding.Noted(PredictSheetsNot, nil)))
	}
	return p.deliver(files, notes, f.Print)
}
