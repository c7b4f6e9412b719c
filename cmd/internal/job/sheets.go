package job

import (
	"time"

	"drawdown/render"
	"drawdown/render/imprint"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/clampload"
	"drawdown/render/sheet/condition"
	"drawdown/render/sheet/drawing"
	"drawdown/render/sheet/forecast"
	"drawdown/render/sheet/lettered"
	"drawdown/render/sheet/revised"
	"drawdown/render/sheet/target"
	"drawdown/render/sheet/tray"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/service"
)

// Printing says on which paper, in which language and in which formats a sheet
// is wanted.
type Printing struct {
	sheet.Request
	Formats []render.Format
	DPI     int
}

// files draws a document in every format asked for; nothing goes to disk. The PDF
// of a sheet other than the card is named after the sheet, as its pages are. The
// date is the one that a file states, or empty.
//
// Where most of what was counted of the document is missing, nothing is drawn.
func (ask Printing) files(doc scene.Document, name, sheet, date string) ([]render.File, error) {
	if err := ask.Missing.Err(ask.Paper); err != nil {
		return nil, err
	}
	day, _ := time.Parse(time.DateOnly, date) // the zero time where none is stated
	var files []render.File
	for _, format := range ask.Formats {
		stem := name
		if format == render.PDF && sheet != "" {
			stem += "-" + sheet
		}
		made, err := render.Files(doc, stem, format, ask.DPI, day)
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}

// draw draws a sheet of a plan, and passes on what found no room on the paper.
func (ask Printing) draw(p plan.Plan, sheet string, doc scene.Document, notes []string) ([]render.File, []string, error) {
	files, err := ask.files(doc, p.Name, sheet, p.Date)
	return files, notes, err
}

// counting is the request for a document of which it is counted what is missing.
func (ask Printing) counting() Printing {
	ask.Missing = &sheet.Missing{}
	return ask
}

// Differences draws what differs between two revisions.
func Differences(before, after plan.Plan, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	document, notes := revised.Document(before, after, ask.Request)
	return ask.draw(after, "differences", document, notes)
}

// ForecastSheets draws a prediction: the sheet, or a page for every step of the
// work.
func ForecastSheets(a interaction.Answer, ask Printing, frames bool) ([]render.File, []string, error) {
	ask = ask.counting()
	request := forecast.Request{Request: ask.Request, Advice: a.Advice, Others: a.Comparison}
	if frames {
		return ask.draw(a.Plan, "steps", scene.Document{
			Title: a.Plan.Title, Subject: a.Plan.Machine, Language: ask.Words.Language,
			Pages: forecast.Frames(a.Plan, a.Forecast, request),
		}, nil)
	}
	document, notes := forecast.Document(a.Plan, a.Forecast, request)
	return ask.draw(a.Plan, "forecast", document, notes)
}

// ClampLoad draws what a plan's joint has and needs.
func ClampLoad(p plan.Plan, joint service.Joint, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	document := clampload.Document(p, clampload.Request{Request: ask.Request, Joint: joint, Found: service.Doubts(p.Figures)})
	return ask.draw(p, "clamp-load", document, nil)
}

// Card draws a plan's card, one side of it or both.
func Card(p plan.Plan, side card.Sides, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	document, notes := card.Document(p, side, ask.Request)
	document.Imprint = imprint.Text(imprintOf(p.Heading))
	return ask.draw(p, "", document, notes)
}

// Condition draws the sheet on which the state of a plan's fasteners is noted.
func Condition(p plan.Plan, ask Printing) ([]render.File, []string, error) {
	return ConditionWith(p, nil, ask)
}

// ConditionWith draws it with what was found until now at its place.
func ConditionWith(p plan.Plan, found []run.Entry, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	document, notes := condition.Document(p, lettered.Of(found, ask.Words), time.Local, ask.Request)
	document.Imprint = imprint.Text(imprintOf(p.Heading))
	return ask.draw(p, "condition", document, notes)
}

// Tray draws the full-size sheets to lay a plan's fasteners on. The error says
// that they would be too many.
func Tray(p plan.Plan, underside, onePage bool, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	document, notes, err := tray.Document(p, tray.Style{Underside: underside, OnePage: onePage}, ask.Request)
	if err != nil {
		return nil, notes, err
	}
	document.Imprint = imprint.Text(imprintOf(p.Heading))
	return ask.draw(p, "tray", document, notes)
}

// Target draws the sheet that a part is photographed on.
func Target(ask Printing) ([]render.File, error) {
	return ask.files(target.Document(ask.Request), "target", "", "")
}

// CheckDrawing draws a plan's places plainly, reduced or at their true size. The
// error says that the sheets would be too many.
func CheckDrawing(p plan.Plan, actualSize bool, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	document, notes, err := drawing.Document(p, actualSize, ask.Request)
	if err != nil {
		return nil, notes, err
	}
	return ask.draw(p, "check", document, notes)
}
