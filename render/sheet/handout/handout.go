// Package handout lays out the sheets for a class: the part without numbers to
// fill in, the key, the page that explains the order, and the marked answers.
// It decides what goes where; orders, marks and figures are passed in.
package handout

import (
	"fmt"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Which selects the kind of sheet to lay out.
type Which string

const (
	Blank Which = "blank" // to fill in
	Key   Which = "key"   // with the numbers
)

// Request describes the sheets to lay out.
type Request struct {
	sheet.Request
	Loosening bool // ask for the loosening order
}

// Sheet is one part to put in order, and its number among others.
type Sheet struct {
	Plan       plan.Plan
	Number, Of int    // of the sheet; 0 if there is only one
	Seed       uint64 // of the generated part; shown if there are several
	// MadeUp reports that the part was generated for the class, so that there
	// is no file with a fingerprint.
	MadeUp bool
}

func (s Sheet) numbered(w *words.Catalogue) string {
	if s.Of == 0 {
		return ""
	}
	return fmt.Sprintf(w.Handout.SheetOf, s.Number, s.Of)
}

// identity distinguishes the sheets of a class, and names the view.
func (s Sheet) identity(w *words.Catalogue) string {
	if !s.MadeUp {
		return words.Row(s.numbered(w), sheet.Identity(s.Plan, w))
	}
	seen := ""
	if s.Plan.View != "" {
		seen = fmt.Sprintf(w.Sheet.Seen, w.View(s.Plan.View))
	}
	return words.Row(s.numbered(w), fmt.Sprintf(w.Handout.Seed, s.Seed), seen)
}

// Document lays out sheets one after the other with continuous page numbers.
// The notes say what did not fit on this paper.
func Document(sheets []Sheet, ask Request, which Which) (doc scene.Document, notes []finding.Finding) {
	for k, s := range sheets {
		if k == 0 {
			doc = scene.Document{Title: s.Plan.Title, Subject: s.Plan.Machine, Language: ask.Words.Language}
		}
		pages, left := Pages(s, ask, which)
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	sheet.Count(doc.Pages)
	return doc, notes
}

// Pages lays out one sheet. The pages do not have their count yet.
func Pages(s Sheet, ask Request, which Which) (pages []scene.Page, notes []finding.Finding) {
	pages, notes, lacking := newFillIn(s, ask, which).pages()
	if which == Blank && lacking > 0 {
		named := newFillIn(s, ask, which)
		named.named = true
		pages, notes, _ = named.pages()
	}
	return pages, notes
}

type fillIn struct {
	Request
	Sheet
	side  plan.Side
	which Which
	words *words.Handout
	// named reports that the names are in the marks, because not all of them
	// fit beside. Then only the list is filled in.
	named bool
}

func newFillIn(one Sheet, ask Request, which Which) *fillIn {
	s := &fillIn{Request: ask, Sheet: one, side: one.Plan.Tighten, which: which, words: &ask.Words.Handout}
	if ask.Loosening {
		s.side = one.Plan.Loosen
	}
	return s
}

func (s *fillIn) name() string { return strconv.Itoa(max(1, s.Number)) }

func (s *fillIn) heading() sheet.Heading {
	badge := s.words.Exercise
	if s.which == Key {
		badge = s.words.Key
	}
	return sheet.Heading{
		Title: s.Plan.Title, Badge: badge, Solid: s.which == Key,
		Subtitle: s.Plan.Machine, Identity: s.identity(s.Words),
		Sheet: s.numbered(s.Words),
	}
}

func (s *fillIn) texts() []string {
	if s.which == Key {
		lead, reverse := s.words.KeyLead, ""
		if slices.ContainsFunc(s.Plan.Groups, plan.Group.Makers) {
			lead = s.words.KeyMaker
		}
		if s.Loosening {
			reverse = s.words.Reverse
		}
		return []string{words.Text(lead, reverse)}
	}
	task, named := s.words.Tighten, s.words.NamedTighten
	if s.Loosening {
		task, named = s.words.Loosen, s.words.NamedLoosen
	}
	if s.named {
		task = named
	}
	if len(s.Plan.Joint.Clusters) > 0 {
		task = words.Text(task, s.words.Together)
	}
	if s.named {
		return []string{task}
	}
	return []string{task, s.words.ListTask}
}

func rules(p plan.Plan, w *words.Handout) (lines []string) {
	if len(p.Groups) > 0 {
		switch p.UsualWay(p.Groups[0]) {
		case sequence.Star:
			lines = append(lines, w.Circle...)
		case sequence.RowWay:
			lines = append(lines, w.Row...)
		default:
			lines = append(lines, w.Spread...)
		}
	}
	if len(p.Groups) > 1 {
		lines = append(lines, w.SmallLast)
	}
	if len(p.Joint.Clusters) > 0 {
		lines = append(lines, w.Together)
	}
	return lines
}
