// Package machineshop lays out the sheet that goes with parts to the machine shop:
// what goes out, what is asked for, what was found and measured on it, and what must
// come back to which place. It may import jobs, plans, scenes, words and what sheets
// share.
package machineshop

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"drawdown/geometry"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// Order is what goes out, with the job that it is of.
type Order struct {
	ID, Title, Machine string // of the job
	Number, Order      string // of the machine, of the order
	Parts              []Part
}

// Part is one part that goes out, with its joint and what is known of it.
type Part struct {
	teardown.SentOut
	Plan     plan.Plan // of the joint; empty where there is none
	Findings []run.Entry
	Measured []teardown.Measured
}

// Request says how the sheet is wanted. Times are printed in the zone; nil: UTC.
type Request struct {
	sheet.Request
	Zone *time.Location
}

// Document lays out a run of pages for each machine shop, counted. The notes tell
// what found no room.
func Document(o Order, ask Request) (scene.Document, []string) {
	if ask.Zone == nil {
		ask.Zone = time.UTC
	}
	var pages []scene.Page
	var notes []string
	for i, to := range shops(o.Parts) {
		l := &layout{Order: o, ask: ask, words: ask.Words, w: ask.Words.Page.MachineShop, to: to}
		l.Parts = slices.DeleteFunc(slices.Clone(o.Parts), func(p Part) bool { return p.To != to })
		more, left := l.pages(fmt.Sprint("machine-shop-", i+1))
		pages, notes = append(pages, more...), append(notes, left...)
	}
	sheet.Count(pages)
	return scene.Document{Title: o.Title, Subject: o.Number, Language: ask.Words.Language, Pages: pages}, notes
}

// shops are the names of the machine shops, as they are first met.
func shops(parts []Part) []string {
	var names []string
	for _, p := range parts {
		if !slices.Contains(names, p.To) {
			names = append(names, p.To)
		}
	}
	return names
}

// layout is the sheet of one machine shop while it fills.
type layout struct {
	Order
	ask   Request
	words *words.Catalogue
	w     words.PageMachineShop
	to    string
	run   *sheet.Run
}

func (l *layout) pages(name string) ([]scene.Page, []string) {
	home := l.words.Page.Home
	l.run = sheet.NewRun(l.ask.Paper, l.words, sheet.Heading{
		Title: fmt.Sprintf(l.w.To, l.to), Badge: l.w.Badge,
		Subtitle: words.Row(l.Title, l.Machine, filled(home.Machine, l.Number), filled(home.Order, l.Order.Order)), Identity: words.Row(l.words.Record.Job, l.ID),
	}, l.ask.Foot(l.w.SentBy, l.w.Signature, l.words.Sheet.Date))
	l.goesOut()
	var notes []string
	for _, p := range l.Parts {
		notes = append(notes, l.part(p)...)
	}
	l.answer()
	return l.run.Pages(name), notes
}

// goesOut lists the parts with what is asked for.
func (l *layout) goesOut() {
	var rows []sheet.Row
	for _, p := range l.Parts {
		back := ""
		if b := p.Back; b != nil {
			back = words.Row(b.Note, b.By, l.when(b.At))
		}
		rows = append(rows, sheet.Row{Words: []string{"", p.Part, p.Note, words.Row(p.By, l.when(p.At)), back}})
	}
	l.list(l.w.Parts, []sheet.Column{
		{Share: 0.9, Tick: true}, {Head: l.w.Part, Share: 3, Bold: true}, {Head: l.w.Asked, Share: 6}, {Head: l.w.SentBy, Share: 2.6}, {Head: l.w.Back, Share: 3},
	}, false, rows)
}

// part is what is known of one part, and what must come back.
func (l *layout) part(p Part) (notes []string) {
	seen := lettered.Of(p.Findings, l.words)
	if len(p.Plan.Joint.Fasteners) > 0 {
		notes = lettered.Draw(l.run, p.title(), p.Plan, lettered.Spots(seen), l.ask.Request)
	}
	lettered.List(l.run, words.Row(l.words.Page.Records.Found, p.Part), p.Plan.Joint, seen, l.words, l.ask.Zone)
	l.values(p)
	l.comesBack(p)
	return notes
}

// title names the part, and the joint where it is called otherwise.
func (p Part) title() string {
	if strings.EqualFold(p.Part, p.Plan.Title) {
		return p.Plan.Title
	}
	return words.Row(p.Part, p.Plan.Title)
}

// values are what the file has to measure, with what was read last, and whatever
// else was read; there is room for what the machine shop reads after its work.
func (l *layout) values(p Part) {
	c := l.words.Condition
	var rows []sheet.Row
	add := func(what string, at measure.Place, limits string, m *teardown.Measured) {
		read, outside := "", false
		if m != nil {
			read, outside = l.words.Figure(string(m.Value)+" "+cmp.Or(m.Unit, string(m.Read.Unit))), m.Verdict.Outside()
		}
		rows = append(rows, sheet.Row{Words: []string{what, at.Name(), l.words.Figure(limits), strings.TrimSpace(read), ""}, Warns: outside})
	}
	for _, v := range p.Plan.Measures {
		places := v.At
		if len(places) == 0 {
			places = []measure.Place{{}}
		}
		for _, at := range places {
			add(v.What, at, v.Limits(), latest(p.Measured, v.What, at))
		}
	}
	for _, m := range p.Measured {
		if !has(p.Plan.Measures, m) {
			add(m.Measure, m.Place.Measured(), m.Limits, &m)
		}
	}
	l.list(words.Row(c.Values, p.Part), []sheet.Column{
		{Head: words.Capital(c.Value), Share: 5}, {Head: l.words.Record.Where, Share: 2.2}, {Head: words.Capital(c.Limit), Share: 3}, {Head: l.w.Before, Share: 2.6, Bold: true}, {Head: l.w.After, Share: 2.6},
	}, true, rows)
}

// latest is what was read last of a value at a place; nil for nothing.
func latest(all []teardown.Measured, what string, at measure.Place) *teardown.Measured {
	var last *teardown.Measured
	for i, m := range all {
		if strings.EqualFold(m.Measure, what) && m.Place.Measured() == at && (last == nil || !m.Time.Before(last.Time)) {
			last = &all[i]
		}
	}
	return last
}

// has reports whether the file has a value at the place where it was read.
func has(values []measure.Value, m teardown.Measured) bool {
	return slices.ContainsFunc(values, func(v measure.Value) bool {
		at := m.Place.Measured()
		return strings.EqualFold(v.What, m.Measure) && (v.Has(at) || len(v.At) == 0 && at == measure.Place{})
	})
}

// comesBack lists what must come back to its place: the part, and what has a place
// of its own on it. The boxes are ticked when it is back.
func (l *layout) comesBack(p Part) {
	front := ""
	if p.Plan.Joint.Front != geometry.FrontUnknown {
		front = l.w.FrontSays
	}
	rows := []sheet.Row{{Words: []string{"", p.Part, words.Row(p.Kept, front)}}}
	for _, s := range p.Plan.Joint.Stations {
		rows = append(rows, sheet.Row{Words: []string{"", cmp.Or(s.Label, s.ID), fmt.Sprintf(l.w.OwnPlace, s.ID)}})
	}
	l.list(l.w.ComesBack, []sheet.Column{{Share: 0.9, Tick: true}, {Head: l.w.Part, Share: 4, Bold: true}, {Head: l.w.WhichWay, Share: 8}}, false, rows)
}

const (
	answerLines = 5
	answerLine  = 8.0
)

// answer is where the machine shop writes what it found and did.
func (l *layout) answer() {
	strong := l.run.Pen.Paper.Strong()
	l.run.Room(strong.Step + answerLines*answerLine + 2)
	l.run.Set(strong, l.w.Answer)
	for range answerLines {
		l.run.Y += answerLine
		l.run.Pen.Rule(l.run.Pen.Left(), l.run.Y, l.run.Pen.Right(), l.run.Y, 0.2)
	}
	l.run.Y += 2
}

// list draws a table under a heading; nothing where it has no rows.
func (l *layout) list(title string, columns []sheet.Column, ruled bool, rows []sheet.Row) {
	if len(rows) == 0 {
		return
	}
	strong := l.run.Pen.Paper.Strong()
	l.run.Room(strong.Step + 6*l.run.Pen.Paper.Line) // a heading does not stand alone
	l.run.Set(strong, title)
	l.run.Y++
	sheet.Table{Columns: columns, Rows: rows, Ruled: ruled}.Draw(l.run)
}

func (l *layout) when(t time.Time) string { return t.In(l.ask.Zone).Format("2006-01-02\u00a015:04") }

// filled fills a text in where there is something to fill it with.
func filled(format, text string) string {
	if text == "" {
		return ""
	}
	return fmt.Sprintf(format, text)
}
