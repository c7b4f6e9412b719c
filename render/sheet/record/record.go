// Package record lays out the record of a run: what was done, by whom and when,
// what was found and where, and the seal. It may import plans, runs, diagrams,
// scenes, words and what sheets share.
package record

import (
	"fmt"
	"slices"
	"time"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Record is what there is to print of a run.
type Record struct {
	ID      string // of the run
	Plan    plan.Plan
	View    run.View // when it was printed
	Entries []Entry  // in the order in which they were taken

	Number, Order, Note string // of the machine, of the order
	Job, Again          string // ids; empty for none
	Who, Program        string // who started it, with which version
	Started             time.Time

	Head      string // of the chain of the whole store
	HeadPlace int64  // how many entries it covers

	Photos map[string]Photo // thumbnails, by their SHA-256
}

// Entry is an entry with its place in the chain.
type Entry struct {
	run.Entry
	N int64
}

// Request says how the sheet is wanted. Times are printed in the zone; nil: UTC.
type Request struct {
	sheet.Request
	Zone *time.Location
}

// Document lays out the record over as many pages as it needs, counted. The
// notes tell what found no room.
func Document(r Record, ask Request) (scene.Document, []string) {
	pages, notes := Pages(r, ask)
	return sheet.Document(r.Plan, ask.Request, pages), notes
}

// Pages lays out the record; the pages lack their count.
func Pages(r Record, ask Request) (pages []scene.Page, notes []string) {
	if ask.Zone == nil {
		ask.Zone = time.UTC
	}
	l := &layout{Record: r, ask: ask, words: ask.Words, w: ask.Words.Record, p: ask.Words.Page}
	l.seen = l.allSeen()
	l.run = sheet.NewRun(ask.Paper, ask.Words, l.heading(), ask.Foot(ask.Words.Sheet.CheckedBy, ask.Words.Sheet.Date))
	l.status()
	l.flags()
	l.facts()
	notes = lettered.Draw(l.run, "", l.Plan, l.spots(), ask.Request)
	for _, part := range []func(){l.listSeen, l.ownPhotos, l.accepted, l.ready, l.readings, l.stages, l.steps, l.wrenches, l.people, l.handOvers, l.remarks, l.prints, l.seal} {
		part()
	}
	return l.run.Pages("record"), notes
}

// layout is the sheet while it fills.
type layout struct {
	Record
	ask   Request
	words *words.Catalogue
	w     words.Record
	p     words.Page
	run   *sheet.Run
	seen  []seen
}

func (l *layout) heading() sheet.Heading {
	badge := l.w.Badge
	switch l.View.Status {
	case run.Open:
		badge = l.w.BadgeOpen
	case run.Voided:
		badge = l.w.BadgeVoid
	}
	numbers := words.Row(filled(l.p.Home.Machine, l.Number), filled(l.p.Home.Order, l.Order))
	return sheet.Heading{
		Title: l.Plan.Title, Badge: badge, Solid: l.View.Status == run.Sealed,
		Subtitle: words.Row(l.Plan.Machine, l.w.Work[string(l.View.Direction)], numbers),
		Identity: words.Row(l.ID, sheet.Identity(l.Plan, l.words)),
	}
}

// filled fills a text in where there is something to fill it with.
func filled(format, text string) string {
	if text == "" {
		return ""
	}
	return fmt.Sprintf(format, text)
}

// when returns a moment in the zone of the sheet, on one line.
func (l *layout) when(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(l.ask.Zone).Format("2006-01-02\u00a015:04")
}

// toTheSecond returns a moment by which steps can be told apart.
func (l *layout) toTheSecond(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(l.ask.Zone).Format("2006-01-02\u00a015:04:05")
}

// status says in large type whether the record is closed.
func (l *layout) status() {
	for _, line := range l.statusLines() {
		l.run.Set(l.run.Pen.Paper.Strong(), line)
	}
	l.run.Y += 1.5
}

func (l *layout) statusLines() []string {
	switch s := l.View.Signed; {
	case l.View.VoidedBy != nil:
		m := l.View.VoidedBy
		return []string{words.Row(fmt.Sprintf(l.p.Run.VoidBy, m.By, l.when(m.At)), m.Note)}
	case s != nil:
		return []string{words.Row(fmt.Sprintf(l.p.Run.SealedBy, s.By, l.when(s.At)), l.second(*s))}
	}
	open := 0
	for _, st := range l.View.Steps {
		if st.State != run.IsDone && st.State != run.LeftOut {
			open++
		}
	}
	return []string{l.p.Records.NotSealed + " " + fmt.Sprintf(l.w.Open, open, len(l.View.Steps))}
}

// begunBy is who started the run; where nobody gave a name then, who made the first
// entry.
func (l *layout) begunBy() string {
	if l.Who == "" && len(l.Entries) > 0 {
		return l.Entries[0].Who
	}
	return l.Who
}

// second names the second signature, and who entered it.
func (l *layout) second(s run.Signature) string {
	if s.Second == "" {
		return ""
	}
	return sprint(l.p.Records.SecondBy, s.Second, s.By)
}

// facts are what the record is about.
func (l *layout) facts() {
	t := sheet.Table{Columns: []sheet.Column{{Head: l.w.About, Share: 2, Bold: true}, {Head: l.ID, Share: 6}}}
	add := func(head, text string) {
		if text != "" {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{head, text}})
		}
	}
	add(l.p.Records.Joint, words.Row(l.View.Of, l.Plan.Title))
	add(l.p.Records.Machine, words.Row(l.Number, l.Plan.Machine))
	add(l.w.Order, l.Order)
	add(l.w.Job, l.Job)
	add(l.w.Again, l.Again)
	add(l.w.Started, words.Row(l.when(l.Started), l.begunBy()))
	if n := len(l.Entries); n > 0 {
		add(l.w.Ended, words.Row(l.when(l.Entries[n-1].Time), l.Entries[n-1].Who))
	}
	add(l.w.Times, l.zone())
	add(l.w.Program, l.Program)
	add(l.w.Remark, l.Note)
	l.run.Close = true
	t.Draw(l.run)
	l.run.Close = false
}

// zone returns how the times differ from UTC; more than one where clocks were
// put forward or back.
func (l *layout) zone() string {
	var all []string
	for _, e := range l.Entries {
		offset := "UTC" + e.Time.In(l.ask.Zone).Format("-07:00")
		if !slices.Contains(all, offset) {
			all = append(all, offset)
		}
	}
	if len(all) == 0 {
		return "UTC" + l.Started.In(l.ask.Zone).Format("-07:00")
	}
	return words.Row(all...)
}

// list draws a table under a heading; nothing where it has no rows.
func (l *layout) list(title string, columns []sheet.Column, rows []sheet.Row) {
	if len(rows) == 0 {
		return
	}
	strong, table := l.run.Pen.Paper.Strong(), sheet.Table{Columns: columns, Rows: rows}
	l.run.Room(strong.Step + 1 + table.Lead(l.run)) // a heading does not stand alone
	l.run.Set(strong, title)
	l.run.Y++
	table.Draw(l.run)
}
