package job

import (
	"bytes"
	"fmt"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/render/frames"
	"drawdown/render/gif"
	"drawdown/render/player"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/forecast"
	"drawdown/render/sheet/handout"
	"drawdown/sequence/exercise"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// HandoutPart is one of the things made for a class.
type HandoutPart string

const (
	HandoutSheets HandoutPart = "sheets" // to fill in
	HandoutKey    HandoutPart = "key"    // in a separate file, so that it is not handed out
	HandoutWhy    HandoutPart = "why"    // a page that explains the order, for the part of the file
	HandoutPage   HandoutPart = "page"   // an HTML page that animates the work
	HandoutFilm   HandoutPart = "film"   // an animation of the order
)

// HandoutParts lists them all.
var HandoutParts = []HandoutPart{HandoutSheets, HandoutKey, HandoutWhy, HandoutPage, HandoutFilm}

// HandoutRequest is the request for a class.
type HandoutRequest struct {
	Printing
	Parts     []HandoutPart
	Loosening bool
	Layouts   int // number of invented parts; 0: the part of the file
	Seed      uint64
}

// sheets returns the request for the sheets.
func (ask HandoutRequest) sheets() handout.Request {
	return handout.Request{Request: ask.Request, Loosening: ask.Loosening}
}

func (ask HandoutRequest) side() judge.Side {
	if ask.Loosening {
		return judge.Loosen
	}
	return judge.Tighten
}

// Handout draws what a class needs. The notes also report if the order of the
// file is not the one to learn.
func Handout(p plan.Plan, ask HandoutRequest) (files []render.File, notes []finding.Finding, err error) {
	sheets, err := sheetsOf(p, ask)
	if err != nil {
		return nil, nil, err
	}
	if slices.Contains(ask.Parts, HandoutWhy) || ask.Layouts == 0 && slices.Contains(ask.Parts, HandoutKey) {
		if found, departs := exercise.DepartsOf(p); departs {
			notes = append(notes, found)
		}
	}
	for _, part := range HandoutParts {
		if !slices.Contains(ask.Parts, part) {
			continue
		}
		made, left, err := handoutPart(p, sheets, ask, part)
		if err != nil {
			return nil, nil, err
		}
		files, notes = append(files, made...), append(notes, left...)
	}
	return files, notes, nil
}

func handoutPart(p plan.Plan, sheets []handout.Sheet, ask HandoutRequest, part HandoutPart) (files []render.File, notes []finding.Finding, err error) {
	ask.Printing = ask.counting()
	var doc scene.Document
	stem := p.Name
	switch part {
	case HandoutPage, HandoutFilm:
		files, err = showings(sheets, ask, part, stem)
		return files, nil, err
	case HandoutWhy:
		stem += "-why"
		doc = sheet.Document(p, ask.Request, whyPages(p, ask))
	case HandoutSheets:
		stem += "-handout"
		doc, notes = handout.Document(sheets, ask.sheets(), handout.Blank)
	case HandoutKey:
		stem += "-key"
		doc, notes = handout.Document(sheets, ask.sheets(), handout.Key)
	}
	files, err = ask.files(doc, stem, "", p.Date)
	return files, notes, err
}

// whyPages explain why a part is tightened in its order, and what each bolt
// keeps, pass by pass; without figures if the joint lacks what the model needs.
func whyPages(p plan.Plan, ask HandoutRequest) []scene.Page {
	model, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		return handout.WhyPages(p, nil, ask.sheets())
	}
	pages := handout.WhyPages(p, interaction.ReasonOf(p, model, handout.IsCircle(p)), ask.sheets())
	f, err := model.ForecastOf(p)
	if err != nil {
		return pages
	}
	return append(pages, forecast.ClassPages(p, f, forecast.Request{Request: ask.Request})...)
}

// showings makes a page or a film of each sheet's part.
func showings(sheets []handout.Sheet, ask HandoutRequest, part HandoutPart, stem string) (files []render.File, err error) {
	for _, s := range sheets {
		name := stem + "-order"
		if s.Of > 0 {
			name += fmt.Sprintf("-%d", s.Number)
		}
		shown := frames.Work{Plan: s.Plan, Words: ask.Words, Loosening: ask.Loosening, NoRoom: ask.Missing.NoteFixed}
		var b bytes.Buffer
		if part == HandoutPage {
			name, err = name+".html", player.Write(&b, frames.Lay(shown), ask.Words)
		} else {
			name, err = name+".gif", film(&b, shown, ask)
		}
		if err != nil {
			return nil, err
		}
		files = append(files, render.File{Name: name, Data: b.Bytes()})
	}
	return files, ask.Missing.Err(ask.Paper)
}

// filmDPI makes the pictures of a film 960 pixels wide.
const filmDPI = 96

func film(b *bytes.Buffer, work frames.Work, ask HandoutRequest) error {
	var pages []scene.Page
	var seconds []float64
	for picture := range frames.Pictures(work) {
		if err := ask.Missing.Err(ask.Paper); err != nil {
			return err
		}
		pages, seconds = append(pages, picture.Page), append(seconds, picture.Seconds)
	}
	return gif.Write(b, pages, seconds, filmDPI)
}

// sheetsOf returns the parts that a class puts in order: that of the plan, or
// invented ones for its machine.
func sheetsOf(p plan.Plan, ask HandoutRequest) ([]handout.Sheet, error) {
	if ask.Layouts == 0 {
		return []handout.Sheet{{Plan: p}}, nil
	}
	made, err := exercise.Make(ask.Seed, ask.Layouts)
	if err != nil {
		return nil, err
	}
	w := ask.Words.Handout
	names := exercise.Names{Machine: p.Machine, View: w.Above, Main: w.Main, Small: w.Small}
	var sheets []handout.Sheet
	for k, e := range made {
		names.Title = w.Families[string(e.Family)]
		one, err := plan.Build(e.Input(p.Name, names))
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, handout.Sheet{Plan: one, Number: k + 1, Of: ask.Layouts, Seed: ask.Seed, MadeUp: true})
	}
	return sheets, nil
}
