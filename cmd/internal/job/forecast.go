package job

import (
	"drawdown/render"
	"drawdown/render/scene"
	"drawdown/render/sheet/forecast"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

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
