// Package shopping lays out the list of what the rebuild of a job needs: new
// fasteners by size, gaskets, new parts, sealants and lubricants, with what is there
// already. It may import jobs, scenes, words and what sheets share.
package shopping

import (
	"fmt"
	"strconv"
	"strings"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/run/teardown"
)

// List is what there is to print.
type List struct {
	ID, Title, Machine string
	Number, Order      string // of the machine, of the order
	Supplies           []teardown.Supply
}

// Document lays out the list over as many pages as it needs, counted.
func Document(l List, ask sheet.Request) scene.Document {
	w := ask.Words.Page
	numbers := words.Row(filled(w.Home.Machine, l.Number), filled(w.Home.Order, l.Order))
	run := sheet.NewRun(ask.Paper, ask.Words, sheet.Heading{
		Title: l.Title, Badge: w.Shopping.Badge, Subtitle: words.Row(l.Machine, numbers), Identity: l.ID,
	}, ask.Foot(ask.Words.Sheet.DoneBy, ask.Words.Sheet.Date))
	if len(l.Supplies) == 0 {
		run.Sentence(w.Shopping.Nothing)
	} else {
		run.Sentence(w.Shopping.Says)
		run.Y += 2
	}
	for _, sort := range Sorts {
		drawSort(run, ask.Words, sort, l.Supplies)
	}
	pages := run.Pages("shopping")
	sheet.Count(pages)
	return scene.Document{Title: l.Title, Subject: l.Number, Language: ask.Words.Language, Pages: pages}
}

// Sorts are the sorts of supplies in their order on the list.
var Sorts = []teardown.Sort{teardown.Bolt, teardown.Gasket, teardown.NewPart, teardown.Sealant, teardown.Lubricant}

func drawSort(run *sheet.Run, c *words.Catalogue, sort teardown.Sort, all []teardown.Supply) {
	w := c.Page.Shopping
	t := sheet.Table{Columns: []sheet.Column{
		{Head: w.Have, Share: 1.6, Tick: true}, {Head: w.Count, Share: 1.8, Bold: true}, {Head: w.What, Share: 6},
		{Head: w.For, Share: 5}, {Head: w.Ready, Share: 2},
	}}
	for _, s := range all {
		if s.Sort == sort {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{"", counted(s), Name(s, c), For(s, c), ready(s)}, Bold: len(s.Condemned) > 0})
		}
	}
	if len(t.Rows) == 0 {
		return
	}
	strong := run.Pen.Paper.Strong()
	run.Room(strong.Step + 8*run.Pen.Paper.Line) // a heading does not stand alone
	run.Set(strong, w.Sorts[string(sort)])
	run.Y++
	t.Draw(run)
}

func counted(s teardown.Supply) string {
	if s.Count == 0 {
		return ""
	}
	return strconv.Itoa(s.Count) + " ×"
}

func ready(s teardown.Supply) string {
	switch {
	case s.Count > 0:
		return fmt.Sprintf("%d / %d", s.Ready, s.Count)
	case s.Met():
		return "✓"
	}
	return ""
}

// Name is what to order: of a fastener its size and class, else as the file says.
func Name(s teardown.Supply, c *words.Catalogue) string {
	if s.Size == "" {
		return c.Term(term(s))
	}
	return strings.TrimSuffix(c.Figure(s.Size)+", "+s.Class, ", ")
}

// For says where it goes, and which condemned fasteners it replaces.
func For(s teardown.Supply, c *words.Catalogue) string {
	condemned := ""
	if len(s.Condemned) > 0 {
		condemned = fmt.Sprintf(c.Page.Shopping.Condemned, strings.Join(s.Condemned, ", "))
	}
	return words.Row(s.Part, strings.Join(s.Joints, ", "), condemned)
}

func filled(format, text string) string {
	if text == "" {
		return ""
	}
	return fmt.Sprintf(format, text)
}
