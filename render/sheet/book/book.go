// Package book combines the sheets of a whole machine: contents, overview, the
// teardown in working order, the parts to prepare, the rebuild, and the check
// passes. It decides what goes where; the sheets of a joint come from their own
// packages, and the lists from package overhaul.
package book

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/condition"
	"drawdown/render/sheet/tray"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// Request describes the book to lay out.
type Request struct {
	sheet.Request
	Trays Trays
	// Drawn is called after each joint's sheets with how many of all are done;
	// nil: not called.
	Drawn func(done, all int)
}

// Trays selects how trays are included.
type Trays string

const (
	FullTrays    Trays = "full" // at true size, over as many sheets as needed
	ReducedTrays Trays = "page" // each reduced to one page
	NoTrays      Trays = "none"
)

// TrayChoices lists all values of Trays.
var TrayChoices = []Trays{FullTrays, ReducedTrays, NoTrays}

// section is a group of pages listed in the contents.
type section struct {
	title string
	level int // 0 for a part of the book, 1 for an entry in it
	joint int // number of the joint; 0: the whole machine
	kind  kind
	pages []scene.Page
}

type kind uint8

func (k kind) isList() bool { return k < loosening }

const (
	contents kind = iota
	overview
	tools
	stripTasks
	buildTasks
	ready
	manual
	wrenches
	checks
	values
	loosening
	trays
	conditions
	tightening
)

type binder struct {
	o     overhaul.Overhaul
	ask   Request
	w     words.Book
	notes []finding.Finding
	err   error // the first; the book is incomplete
}

// Document lays out the book. The notes say what did not fit on the paper; the
// error reports a part that needs too many sheets at true size.
func Document(o overhaul.Overhaul, ask Request) (scene.Document, []finding.Finding, error) {
	b := &binder{o: o, ask: ask, w: ask.Words.Book}
	sections := b.sections()
	if b.err != nil {
		return scene.Document{}, nil, b.err
	}
	// The lists refer to pages. Their lengths do not depend on the page
	// numbers, so a second pass with the pages known gives the same lengths.
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

func (b *binder) sections() []section {
	joints := b.o.Joints()
	done, all := 0, 2*len(joints)
	told := func() {
		if done++; b.ask.Drawn != nil {
			b.ask.Drawn(done, all)
		}
	}
	out := b.empty(0, contents, overview, tools)
	if len(b.o.Measures) > 0 {
		out = append(out, b.empty(0, values)...)
	}
	out = append(out, b.empty(0, stripTasks)...)
	for _, j := range joints {
		out = append(out, b.stripPapers(j)...)
		told()
	}
	out = append(out, b.empty(0, buildTasks)...)
	out = append(out, b.empty(1, b.listsBefore(plan.CautionTighten)...)...)
	for _, j := range slices.Backward(joints) {
		out = append(out, b.card(j, b.w.Tighten, tightening))
		told()
	}
	return append(out, b.empty(0, checks)...)
}

func (b *binder) empty(level int, kinds ...kind) []section {
	var lists []section
	for _, k := range kinds {
		lists = append(lists, section{title: b.title(k), level: level, kind: k})
	}
	return lists
}

func (b *binder) stripPapers(j overhaul.Joint) []section {
	papers := []section{b.card(j, b.w.Loosen, loosening)}
	if b.ask.Trays != NoTrays {
		ask := b.counting()
		pages, notes, err := tray.Pages(numbered(j), tray.Style{OnePage: b.ask.Trays == ReducedTrays}, ask)
		b.fail(j, err)
		if err := ask.Missing.Err(ask.Paper); err != nil && b.err == nil {
			b.err = finding.Failed(TrayNoUse, finding.Values{"joint": j.Title, "why": err})
		}
		papers = append(papers, b.paper(j, b.w.Tray, trays, pages, notes))
	}
	ask := b.counting()
	pages, notes := condition.Pages(numbered(j), ask)
	b.fail(j, ask.Missing.Err(ask.Paper))
	return append(papers, b.paper(j, b.w.Condition, conditions, pages, notes))
}

// counting is a request that counts what is missing.
func (b *binder) counting() sheet.Request {
	ask := b.ask.Request
	ask.Missing = &sheet.Missing{}
	return ask
}

// fail records the first error of a joint's sheets.
func (b *binder) fail(j overhaul.Joint, err error) {
	if err != nil && b.err == nil {
		b.err = fmt.Errorf("%s: %w", j.Title, err)
	}
}

// card lays out one side of a joint's card. The tasks before the joint are on
// the card too, so that nobody has to look them up in the list.
func (b *binder) card(j overhaul.Joint, title string, k kind) section {
	side, which := plan.CautionLoosen, card.LoosenSide
	if k == tightening {
		side, which = plan.CautionTighten, card.TightenSide
	}
	p := numbered(j)
	p.Cautions = b.before(j, side)
	ask := b.counting()
	pages, notes := card.Pages(p, which, ask)
	b.fail(j, ask.Missing.Err(ask.Paper))
	return b.paper(j, title, k, pages, notes)
}

func (b *binder) paper(j overhaul.Joint, title string, k kind, pages []scene.Page, notes []string) section {
	for _, n := range notes {
		b.notes = append(b.notes, finding.Warned(OfJoint, finding.Values{"joint": j.Title, "what": n}))
	}
	return section{fmt.Sprintf(title, j.Number, j.Title), 1, j.Number, k, pages}
}

// numbered is the plan of a joint with its number before its title, so that a
// loose sheet can be put back.
func numbered(j overhaul.Joint) plan.Plan {
	p := *j.Plan
	p.Title = name(j)
	return p
}

func name(j overhaul.Joint) string { return fmt.Sprintf("%d %s", j.Number, j.Title) }

// before lists what to do before a joint, in working order: the tasks before it
// and its own cautions. Faces are cleaned and gaskets placed before the part
// held by the joint goes on.
func (b *binder) before(j overhaul.Joint, side plan.CautionSide) []plan.Caution {
	tasks := b.o.Before(j.Plan, side)
	held := len(tasks)
	if side == plan.CautionTighten {
		held = lastPart(tasks)
	}
	texts := slices.Concat(b.taskTexts(tasks[:held], side), b.fitted(j, side), actions(j.Task.Remark(side)),
		j.CautionsFor(side), b.taskTexts(tasks[held:], side))
	var cautions []plan.Caution
	for _, text := range texts {
		if text != "" {
			cautions = append(cautions, plan.Caution{Text: text, Side: side})
		}
	}
	return cautions
}

// lastPart is the index of the last part among tasks, or past the end if there
// is none.
func lastPart(tasks []overhaul.Task) int {
	for i, t := range slices.Backward(tasks) {
		if t.Part != "" {
			return i
		}
	}
	return len(tasks)
}

// taskTexts returns a text for each action: each has its own tick box.
func (b *binder) taskTexts(tasks []overhaul.Task, side plan.CautionSide) (texts []string) {
	for _, t := range tasks {
		steps := b.steps(t, side)
		if t.Note != "" && !t.Warns {
			for k := range steps {
				steps[k] = fmt.Sprintf(b.w.Before, steps[k])
			}
		}
		if last := len(steps) - 1; side == plan.CautionTighten && last >= 0 {
			steps[last] = b.ask.Words.With(steps[last], b.byTheManual(lookedUp(t, side)))
		}
		texts = append(texts, steps...)
	}
	return texts
}

func (b *binder) fitted(j overhaul.Joint, side plan.CautionSide) (texts []string) {
	if side == plan.CautionTighten && len(j.Task.Gaskets) > 0 {
		texts = append(texts, fmt.Sprintf(b.w.NewGasket, strings.Join(j.Task.Gaskets, ", ")))
	}
	if side == plan.CautionTighten && j.Task.Sealant != "" {
		texts = append(texts, fmt.Sprintf(b.w.WithSealant, j.Task.Sealant))
	}
	return texts
}

// firstPages returns the first page of each section, from 1.
func firstPages(sections []section) []int {
	pages, at := make([]int, len(sections)), 1
	for i, s := range sections {
		pages[i] = at
		at += len(s.pages)
	}
	return pages
}
