// Package card lays out the card of a joint: the tightening side and the
// loosening side. It decides what goes where on which page. It measures every
// block once, chooses the best of several ways to fill the first page, and
// draws it.
//
// It may import plan and its quantities, diagram, scene, font, words and what
// sheets share. It calculates no figures.
package card

import (
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Sides selects which sides of a card to lay out.
type Sides string

const (
	BothSides   Sides = "both"
	TightenSide Sides = "tighten"
	LoosenSide  Sides = "loosen"
)

// SideChoices lists all values of Sides.
var SideChoices = []Sides{BothSides, TightenSide, LoosenSide}

// Document lays out a plan's card: the tightening side, the loosening side, or
// both. Each side takes as many pages as it needs and has its own page count.
// The notes list what did not fit on this paper.
func Document(p plan.Plan, sides Sides, ask sheet.Request) (doc scene.Document, notes []string) {
	doc = scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language}
	for _, side := range []Sides{TightenSide, LoosenSide} {
		if sides != side && sides != BothSides {
			continue
		}
		pages, left := Pages(p, side, ask)
		sheet.Count(pages)
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	return doc, notes
}

// Pages lays out one side of a card. The pages do not have their count yet.
//
// An A3 side is the A4 side enlarged, to be read from further away, unless it
// has so many fasteners or words that they need the space.
func Pages(p plan.Plan, side Sides, ask sheet.Request) (pages []scene.Page, notes []string) {
	if ask.Paper.Name == "a3" && len(p.Joint.Fasteners) <= mostEnlarged {
		if pages, notes := enlarged(p, side, ask); len(notes) == 0 {
			return pages, nil
		}
	}
	return newCard(p, side == LoosenSide, ask).pages()
}

// mostEnlarged is the largest number of fasteners for which an A3 card is an
// enlarged A4 card.
const mostEnlarged = 40

func enlarged(p plan.Plan, side Sides, ask sheet.Request) ([]scene.Page, []string) {
	paper := ask.Paper
	small, _ := sheet.FindPaper("a4")
	if paper.Wide() {
		small = small.Landscape()
	}
	ask.Paper = small
	pages, notes := Pages(p, side, ask)
	for k, page := range pages {
		pages[k] = scene.Scaled(page, paper.Width, paper.Height, paper.Width/small.Width)
	}
	return pages, notes
}

// card is the content of one side of a card. It is complete before anything is
// measured.
type card struct {
	plan      plan.Plan
	side      plan.Side
	loosening bool
	paper     sheet.Paper
	words     *words.Catalogue
	missing   *sheet.Missing
	numbers   []int // of the fasteners in the order of the side
	called    []int // by which they are found on the part
	cast      sheet.CastNumbers
	before    []string // checks before the work
	second    []string // second numbers of the fasteners; nil for none
	// crowded reports that numbers are on leader lines. The second numbers then
	// go in the tick grid.
	crowded bool

	lists map[span]checkList // by column, once wrapped to it
}

func newCard(p plan.Plan, loosening bool, ask sheet.Request) *card {
	c := &card{plan: p, side: p.Tighten, loosening: loosening, paper: ask.Paper, words: ask.Words, missing: ask.Missing, lists: map[span]checkList{}}
	if loosening {
		c.side = p.Loosen
	}
	c.numbers, c.called = c.side.Numbers(), p.Called(c.side)
	c.cast = sheet.CastNumbersOf(p, c.side, ask.Words)
	c.second = c.secondNumbers()
	c.before = c.beforeLines()
	return c
}
