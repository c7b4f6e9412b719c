// Package book binds the papers of a whole machine: contents, overview,
// everything for stripping in working order, what to have ready, everything
// for building, and what is checked once more.
package book

import (
	"fmt"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// Request says how a book is wanted.
type Request struct {
	Paper sheet.Paper
	Words *words.Catalogue
	// Drawn is told after each joint's papers how many of all of them are
	// drawn; nil: nobody is told.
	Drawn func(done, all int)
}

// section is a run of pages that the contents list.
type section struct {
	title string
	level int // 0 for a part of the book, 1 for what is in it
	joint int // whose papers they are; 0: of the whole machine
	kind  kind
	pages []scene.Page
}

type kind uint8

const (
	lists kind = iota
	loosening
	trays
	conditions
	tightening
)

// binder is a book while it is bound.
type binder struct {
	o     overhaul.Overhaul
	ask   Request
	notes []string
}

// Document binds the book. The notes tell what found no room on the paper.
func Document(o overhaul.Overhaul, ask Request) (scene.Document, []string) {
	b := &binder{o: o, ask: ask}
	sections := b.sections()
	// The lists name pages. Their own lengths do not depend on the figures, so
	// that a second look, with the pages known, gives the same lengths again.
	b.lists(sections, nil)
	b.lists(sections, firstPages(sections))

	doc := scene.Document{Title: o.Title, Subject: o.Machine, Language: ask.Words.Language}
	for _, s := range sections {
		if len(s.pages) > 0 {
			s.pages[0].Bookmarks = []scene.Bookmark{{Title: s.title, Level: s.level}}
		}
		doc.Pages = append(doc.Pages, s.pages...)
	}
	for k := range doc.Pages {
		doc.Pages[k].Name = fmt.Sprintf("%03d", k+1)
	}
	sheet.Count(doc.Pages)
	return doc, b.notes
}

// sections gives the sections in their order, the joints' papers laid out and
// the lists still empty.
func (b *binder) sections() []section {
	w, joints := b.ask.Words.Book, b.o.Joints()
	done, all := 0, 2*len(joints)
	told := func() {
		if done++; b.ask.Drawn != nil {
			b.ask.Drawn(done, all)
		}
	}
	out := []section{{title: w.Contents}, {title: w.Overview}, {title: w.StripDown}}
	for _, j := range joints {
		out = append(out, b.stripPapers(j)...)
		told()
	}
	out = append(out, section{title: w.BuildUp}, section{title: w.Ready, level: 1}, section{title: w.Wrenches, level: 1})
	for k := len(joints) - 1; k >= 0; k-- {
		out = append(out, b.card(joints[k], w.Tighten, tightening))
		told()
	}
	return append(out, section{title: w.Checks})
}

// stripPapers are the papers that a joint needs while it comes apart.
func (b *binder) stripPapers(j overhaul.Joint) []section {
	return []section{b.card(j, b.ask.Words.Book.Loosen, loosening)}
}

// card lays out one side of a joint's card. What stands before the joint in
// the list of steps stands on the card too: nobody turns back to the list.
func (b *binder) card(j overhaul.Joint, title string, k kind) section {
	side, which := plan.CautionLoosen, card.LoosenSide
	if k == tightening {
		side, which = plan.CautionTighten, card.TightenSide
	}
	p := *j.Plan
	p.Cautions = append(b.before(j, side), p.Cautions...)
	pages, notes := card.Pages(p, card.Request{Paper: b.ask.Paper, Side: which, Words: b.ask.Words}, which)
	for _, n := range notes {
		b.notes = append(b.notes, p.Title+", "+n)
	}
	return section{fmt.Sprintf(title, j.Number, j.Title), 1, j.Number, k, pages}
}

// before puts the steps before a joint, and its own remark, into cautions.
func (b *binder) before(j overhaul.Joint, side plan.CautionSide) []plan.Caution {
	var cautions []plan.Caution
	for _, s := range b.o.Before(j.Plan, side) {
		text := fmt.Sprintf(b.ask.Words.Book.Before, b.stepWords(s, side))
		cautions = append(cautions, plan.Caution{Text: text, Side: side})
	}
	if remark := j.Step.Remark(side); remark != "" {
		cautions = append(cautions, plan.Caution{Text: remark, Side: side})
	}
	return cautions
}

// firstPages gives each section's first page, from 1.
func firstPages(sections []section) []int {
	pages, at := make([]int, len(sections)), 1
	for i, s := range sections {
		pages[i] = at
		at += len(s.pages)
	}
	return pages
}
