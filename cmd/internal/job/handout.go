package job

import (
	"bytes"
	"fmt"
	"slices"

	"drawdown/render"
	"drawdown/render/frames"
	"drawdown/render/gif"
	"drawdown/render/page"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/handout"
	"drawdown/render/words"
	"drawdown/sequence/exercise"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// HandoutPart is one of the things that are made for a class.
type HandoutPart string

const (
	HandoutSheets HandoutPart = "sheets" // to fill in
	HandoutKey    HandoutPart = "key"    // in a file of its own, so that it is not handed out
	HandoutWhy    HandoutPart = "why"    // a page that tells why, for the part of the file
	HandoutPage   HandoutPart = "page"   // an HTML page that plays the work
	HandoutFilm   HandoutPart = "film"   // a moving picture of the order
)

// HandoutParts lists them all.
var HandoutParts = []HandoutPart{HandoutSheets, HandoutKey, HandoutWhy, HandoutPage, HandoutFilm}

// HandoutRequest says what a class needs.
type HandoutRequest struct {
	Printing
	Parts     []HandoutPart
	Loosening bool
	Layouts   int // so many parts made up; 0: the part of the file
	Seed      uint64
}

// Handout draws what a class needs, in every format asked for. The notes tell
// what found no room on the paper. Nothing is written to disk.
func Handout(p plan.Plan, ask HandoutRequest) (files []render.File, notes []string, err error) {
	tasks, err := Tasks(p, ask)
	if err != nil {
		return nil, nil, err
	}
	if slices.Contains(ask.Parts, HandoutWhy) || ask.Layouts == 0 && slices.Contains(ask.Parts, HandoutKey) {
		notes = againstHints(p, ask.Words)
	}
	for _, part := range HandoutParts {
		if !slices.Contains(ask.Parts, part) {
			continue
		}
		made, left, err := handoutPart(p, tasks, ask, part)
		if err != nil {
			return nil, nil, err
		}
		files, notes = append(files, made...), append(notes, left...)
	}
	return files, notes, nil
}

// againstHints warns where the order of a file is not the one that key, hints
// and marks go by: they go by the trade's rules for the layout.
func againstHints(p plan.Plan, c *words.Catalogue) []string {
	report := judge.Order(judge.ForPlan(p, judge.Tighten, p.IDs(p.Tighten.Order)))
	for _, f := range report.Findings {
		if f.Severity == judge.Departure || f.Severity == judge.Remark {
			return []string{"the order of the file is " + string(report.Verdict) + " (" + c.Say(f.Found()) + "); hints, key and marks go by the trade's rules: see drawdown check --order file"}
		}
	}
	return nil
}

func handoutPart(p plan.Plan, tasks []handout.Task, ask HandoutRequest, part HandoutPart) ([]render.File, []string, error) {
	sheets := handout.Request{Paper: ask.Paper, Words: ask.Words, Loosening: ask.Loosening}
	var doc scene.Document
	var notes []string
	stem := p.Name
	switch part {
	case HandoutPage, HandoutFilm:
		return showings(tasks, ask, part, stem)
	case HandoutWhy:
		stem += "-why"
		pages := append(handout.WhyPages(p, whyFigures(p), sheets), classForecast(p, ask.Printing)...)
		sheet.Count(pages)
		doc = scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language, Pages: pages}
	case HandoutSheets:
		stem += "-handout"
		doc, notes = handout.Document(tasks, sheets, handout.Blank)
	case HandoutKey:
		stem += "-key"
		doc, notes = handout.Document(tasks, sheets, handout.Key)
	}
	files, err := ask.files(doc, stem, dated(p.Date))
	return files, notes, err
}

// showings makes a page or a film of each task.
func showings(tasks []handout.Task, ask HandoutRequest, part HandoutPart, stem string) (files []render.File, notes []string, err error) {
	for _, task := range tasks {
		name := stem + "-order"
		if task.Of > 0 {
			name += fmt.Sprintf("-%d", task.Number)
		}
		shown := frames.Work{Plan: task.Plan, Words: ask.Words, Loosening: ask.Loosening}
		var b bytes.Buffer
		if part == HandoutPage {
			name, err = name+".html", page.Write(&b, frames.Lay(shown), ask.Words)
		} else {
			name, err = name+".gif", film(&b, shown)
		}
		if err != nil {
			return nil, nil, err
		}
		files = append(files, render.File{Name: name, Data: b.Bytes()})
	}
	return files, nil, nil
}

// filmDPI makes the pictures of a film 960 pixels wide.
const filmDPI = 96

func film(b *bytes.Buffer, ask frames.Work) error {
	var pages []scene.Page
	var seconds []float64
	for _, picture := range frames.Pictures(ask) {
		pages, seconds = append(pages, picture.Page), append(seconds, picture.Seconds)
	}
	return gif.Write(b, pages, seconds, filmDPI)
}

// Tasks gives the parts that a class puts in order: that of the plan, or made
// up ones for its machine.
func Tasks(p plan.Plan, ask HandoutRequest) ([]handout.Task, error) {
	if ask.Layouts == 0 {
		return []handout.Task{{Plan: p}}, nil
	}
	made, err := exercise.Make(ask.Seed, ask.Layouts)
	if err != nil {
		return nil, err
	}
	var tasks []handout.Task
	for k, e := range made {
		one, err := plan.Build(e.Input(p.Name, exerciseNames(e, p, ask.Words)))
		if err != nil {
			return nil, fmt.Errorf("layout %d: %w", k+1, err)
		}
		tasks = append(tasks, handout.Task{Plan: one, Number: k + 1, Of: ask.Layouts, Seed: ask.Seed, MadeUp: true})
	}
	return tasks, nil
}

func exerciseNames(e exercise.Exercise, p plan.Plan, w *words.Catalogue) exercise.Names {
	return exercise.Names{
		Title: w.Handout.Families[string(e.Family)], Machine: p.Machine, View: w.Handout.Above,
		Main: w.Handout.Main, Small: w.Handout.Small,
	}
}
