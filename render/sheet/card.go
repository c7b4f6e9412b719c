package sheet

import (
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// Which says which sides of a card to lay out.
type Which string

const (
	BothSides   Which = "both"
	TightenSide Which = "tighten"
	LoosenSide  Which = "loosen"
)

// Sides lists the choices.
var Sides = []Which{BothSides, TightenSide, LoosenSide}

// Card lays out a plan's card: the tightening side, the loosening side, or
// both, each over as many pages as it needs. The notes tell what found no room
// on this paper.
//
// A card on A3 is the A4 card enlarged, to be read from further away, unless it
// has so many fasteners, or words, that they need the room.
func Card(p plan.Plan, paper Paper, which Which) (doc scene.Document, notes []string) {
	if paper.Name == "a3" && len(p.Joint.Fasteners) <= mostEnlarged {
		if doc, notes := enlarged(p, paper, which); len(notes) == 0 {
			return doc, nil
		}
	}
	doc = scene.Document{Title: p.Title, Subject: p.Machine, Language: "en"}
	if which != LoosenSide {
		pages, left := newCard(p, paper, false).pages()
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	if which != TightenSide {
		pages, left := newCard(p, paper, true).pages()
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	return doc, notes
}

// mostEnlarged is the number of fasteners up to which an A3 card is an A4 card
// enlarged.
const mostEnlarged = 40

func enlarged(p plan.Plan, paper Paper, which Which) (scene.Document, []string) {
	a4, _ := FindPaper("a4")
	doc, notes := Card(p, a4, which)
	for k, page := range doc.Pages {
		doc.Pages[k] = scene.Scaled(page, paper.Width, paper.Height, paper.Width/a4.Width)
	}
	return doc, notes
}

// card is one side of a card while it is laid out.
type card struct {
	plan      plan.Plan
	side      plan.Side
	loosening bool
	paper     Paper
	numbers   []int
	second    []string // second numbers of the fasteners; nil where there are none
	// crowded says that numbers stand on leader lines; the second numbers then
	// stand in the tick grid.
	crowded bool
	covers  map[int][]bool // which fasteners a stage covers, by its number
}

func newCard(p plan.Plan, paper Paper, loosening bool) *card {
	c := &card{plan: p, side: p.Tighten, loosening: loosening, paper: paper, covers: map[int][]bool{}}
	if loosening {
		c.side = p.Loosen
	}
	c.numbers, c.second = c.side.Numbers(), secondNumbers(p, loosening)
	return c
}
