package job

import (
	"time"

	"drawdown/render"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/forecast"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// Printing says on which paper, in which language and in which formats a sheet
// is wanted.
type Printing struct {
	sheet.Request
	Formats []render.Format
	DPI     int
}

// files writes a document in every format asked for. Nothing goes to disk.
func (ask Printing) files(doc scene.Document, stem string, date time.Time) ([]render.File, error) {
	return ask.filesOf(doc, stem, "", date)
}

// filesOf does the same for a sheet other than the card: its PDF is named after
// the sheet, as its pages are.
func (ask Printing) filesOf(doc scene.Document, name, sheet string, date time.Time) ([]render.File, error) {
	var files []render.File
	for _, format := range ask.Formats {
		stem := name
		if format == render.PDF && sheet != "" {
			stem += "-" + sheet
		}
		made, err := render.Files(doc, stem, format, ask.DPI, date)
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}

// classForecast lays out what each bolt keeps, pass by pass, for a class; nothing
// where the joint lacks what the model needs.
func classForecast(p plan.Plan, ask Printing) []scene.Page {
	f, err := prediction.ForecastOf(p, setup.Setup{})
	if err != nil {
		return nil
	}
	return forecast.ClassPages(p, f, forecast.Request{Paper: ask.Paper, Words: ask.Words})
}

// ForecastSheets draws a prediction in every format asked for: the sheet, or a
// page for every step of the work. Nothing is written to disk.
func ForecastSheets(a interaction.Answer, ask Printing, frames bool) (files []render.File, notes []string, err error) {
	request := forecast.Request{Paper: ask.Paper, Words: ask.Words, Advice: a.Advice, Others: a.Comparison}
	if frames {
		document := scene.Document{
			Title: a.Plan.Title, Subject: a.Plan.Machine, Language: ask.Words.Language,
			Pages: forecast.Frames(a.Plan, a.Forecast, request),
		}
		files, err = ask.filesOf(document, a.Plan.Name, "steps", dated(a.Plan.Date))
		return files, nil, err
	}
	document, notes := forecast.Document(a.Plan, a.Forecast, request)
	files, err = ask.filesOf(document, a.Plan.Name, "forecast", dated(a.Plan.Date))
	return files, notes, err
}
