// Package book binds the papers of a whole machine: contents, overview,
// everything for stripping in working order, what to have ready, everything
// for building, and what is checked once more.
package book

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/condition"
	"drawdown/render/sheet/tray"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// Request says how a book is wanted.
type Request struct {
	Paper sheet.Paper
	Words *words.Catalogue
	Trays Trays
	// Drawn is told after each joint's papers how many of all of them are
	// drawn; nil: nobody is told.
	Drawn func(done, all int)
}

// Trays says how the trays are bound.
type Trays string

const (
	FullTrays    Trays = "full" // at their true size, over as many sheets as that takes
	ReducedTrays Trays = "page" // each reduced to a page
	NoTrays      Trays = "none"
)

// TrayChoices lists the choices.
var TrayChoices = []Trays{FullTrays, ReducedTrays, NoTrays}

// section is a run of pages that the contents list.
type section struct {
	title string
	level int // 0 for a part of the book, 1 for what is in it
	joint int // whose papers they are; 0: of the whole machine
	kind  kind
	pages []scene.Page
}

type kind uint8

// isList tells the lists of the whole machine from the papers of a joint.
func (k kind) isList() bool { return k < loosening }

const (
	contents kind = iota
	overview
	tools
	stripSteps
	buildSteps
	ready
	manual
	wrenches
	checks
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
	err   error // the first; what is bound without it is no book
}

// Document binds the book. The notes tell what found no room on the paper; the
// error, that a part takes more sheets at its true size than anyone joins.
func Document(o overhaul.Overhaul, ask Request) (scene.Document, []string, error) {
	b := &binder{o: o, ask: ask}
	sections := b.sections()
	if b.err != nil {
		return scene.Document{}, nil, b.err
	}
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
	return doc, b.notes, nil
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
	out := []section{b.empty(contents), b.empty(overview), b.empty(tools), b.empty(stripSteps)}
	for _, j := range joints {
		out = append(out, b.stripPapers(j)...)
		told()
	}
	out = append(out, b.empty(buildSteps))
	for _, k := range b.listsBefore(plan.CautionTighten) {
		out = append(out, b.empty(k))
	}
	for k := len(joints) - 1; k >= 0; k-- {
		out = append(out, b.card(joints[k], w.Tighten, tightening))
		told()
	}
	return append(out, b.empty(checks))
}

// empty is a list of the whole machine, not laid out yet.
func (b *binder) empty(k kind) section {
	s := section{title: b.title(k), kind: k}
	if k == manual || k == ready || k == wrenches {
		s.level = 1
	}
	return s
}

// title is the title of a list.
func (b *binder) title(k kind) string {
	w := b.ask.Words.Book
	return map[kind]string{
		contents: w.Contents, overview: w.Overview, tools: w.Tools, stripSteps: w.StripDown,
		buildSteps: w.BuildUp, ready: w.Ready, manual: w.FromManual, wrenches: w.Wrenches, checks: w.Checks,
	}[k]
}

// stripPapers are the papers that a joint needs while it comes apart.
func (b *binder) stripPapers(j overhaul.Joint) []section {
	w := b.ask.Words.Book
	papers := []section{b.card(j, w.Loosen, loosening)}
	if b.ask.Trays != NoTrays {
		papers = append(papers, b.tray(j))
	}
	pages, notes := condition.Pages(numbered(j), b.sheets())
	b.note(j, notes)
	return append(papers, section{fmt.Sprintf(w.Condition, j.Number, j.Title), 1, j.Number, conditions, pages})
}

// sheets asks for the sheets of a joint.
func (b *binder) sheets() sheet.Request {
	return sheet.Request{Paper: b.ask.Paper, Words: b.ask.Words}
}

// tray lays out the tray of a joint.
func (b *binder) tray(j overhaul.Joint) section {
	pages, notes, err := tray.Pages(numbered(j), tray.Style{OnePage: b.ask.Trays == ReducedTrays}, b.sheets())
	if err != nil && b.err == nil {
		b.err = fmt.Errorf("%s: %w", j.Title, err)
	}
	b.note(j, notes)
	return section{fmt.Sprintf(b.ask.Words.Book.Tray, j.Number, j.Title), 1, j.Number, trays, pages}
}

// note keeps what a sheet tells of a joint.
func (b *binder) note(j overhaul.Joint, notes []string) {
	for _, n := range notes {
		b.notes = append(b.notes, j.Title+", "+n)
	}
}

// card lays out one side of a joint's card. What stands before the joint in
// the list of steps stands on the card too: nobody turns back to the list.
func (b *binder) card(j overhaul.Joint, title string, k kind) section {
	side, which := plan.CautionLoosen, card.LoosenSide
	if k == tightening {
		side, which = plan.CautionTighten, card.TightenSide
	}
	p := numbered(j)
	p.Cautions = b.before(j, side)
	pages, notes := card.Pages(p, which, b.sheets())
	b.note(j, notes)
	return section{fmt.Sprintf(title, j.Number, j.Title), 1, j.Number, k, pages}
}

// numbered is the plan of a joint with its number before its title, so that a
// loose leaf finds its way back.
func numbered(j overhaul.Joint) plan.Plan {
	p := *j.Plan
	p.Title = fmt.Sprintf("%d %s", j.Number, p.Title)
	return p
}

// before is what is seen to before a joint, in working order: the steps before
// it and its own cautions. Faces are cleaned, and gaskets laid, before the part
// that the joint holds goes on.
func (b *binder) before(j overhaul.Joint, side plan.CautionSide) []plan.Caution {
	steps := b.o.Before(j.Plan, side)
	held := len(steps)
	if side == plan.CautionTighten {
		held = lastPart(steps)
	}
	texts := b.stepTexts(steps[:held], side)
	texts = append(texts, b.fitted(j, side)...)
	if remark := j.Step.Remark(side); remark != "" {
		texts = append(texts, remark)
	}
	texts = append(texts, j.CautionsFor(side)...)
	texts = append(texts, b.stepTexts(steps[held:], side)...)
	cautions := make([]plan.Caution, len(texts))
	for i, text := range texts {
		cautions[i] = plan.Caution{Text: text, Side: side}
	}
	return cautions
}

// lastPart is the place of the last part among steps, or past all where there is
// none.
func lastPart(steps []overhaul.Step) int {
	for i, s := range slices.Backward(steps) {
		if s.Part != "" {
			return i
		}
	}
	return len(steps)
}

// stepTexts says steps as they stand on a card.
func (b *binder) stepTexts(steps []overhaul.Step, side plan.CautionSide) (texts []string) {
	for _, s := range steps {
		text := b.withNote(b.stepWords(s, side), b.byTheManual(lookedUp(s, side)))
		if s.Note != "" {
			text = fmt.Sprintf(b.ask.Words.Book.Before, s.Note)
		}
		texts = append(texts, text)
	}
	return texts
}

// fitted says what goes between the faces before a joint is closed.
func (b *binder) fitted(j overhaul.Joint, side plan.CautionSide) (texts []string) {
	if side != plan.CautionTighten {
		return nil
	}
	if len(j.Step.Gaskets) > 0 {
		texts = append(texts, fmt.Sprintf(b.ask.Words.Book.NewGasket, strings.Join(j.Step.Gaskets, ", ")))
	}
	if j.Step.Sealant != "" {
		texts = append(texts, fmt.Sprintf(b.ask.Words.Book.WithSealant, j.Step.Sealant))
	}
	return texts
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
