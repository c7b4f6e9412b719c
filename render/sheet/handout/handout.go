// Package handout lays out what a class needs: the part without numbers to
// fill in, the key, the page that tells why, and the marked answers.
package handout

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Which says which kind of sheet to lay out.
type Which string

const (
	Blank Which = "blank" // to fill in
	Key   Which = "key"   // with the numbers
)

// Request says how sheets are wanted.
type Request struct {
	Paper     sheet.Paper
	Words     *words.Catalogue
	Loosening bool // the loosening order is asked for
}

// Task is one part to put in order, and where it stands among others.
type Task struct {
	Plan       plan.Plan
	Number, Of int    // of the sheet; 0 where there is but one
	Seed       uint64 // that made the part; told where there are several
	// MadeUp says that the part was made up for the class: there is no file
	// whose fingerprint it could carry.
	MadeUp bool
}

// Document lays out tasks one after the other and counts the pages through.
// The notes tell what found no room on this paper.
func Document(tasks []Task, ask Request, which Which) (doc scene.Document, notes []string) {
	for k, task := range tasks {
		if k == 0 {
			doc = scene.Document{Title: task.Plan.Title, Subject: task.Plan.Machine, Language: ask.Words.Language}
		}
		pages, left := Pages(task, ask, which)
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	sheet.Count(doc.Pages)
	return doc, notes
}

// Pages lays out one task; the pages lack their count.
func Pages(t Task, ask Request, which Which) (pages []scene.Page, notes []string) {
	pages, notes, lacking := newTask(t, ask, which).pages()
	if which == Blank && lacking > 0 {
		named := newTask(t, ask, which)
		named.named = true
		pages, notes, _ = named.pages()
	}
	return pages, notes
}

// taskSheet is one task while it is laid out.
type taskSheet struct {
	Request
	task  Task
	side  plan.Side
	which Which
	words *words.Handout
	// named says that the names stand in the marks, since there is no room for
	// all of them beside: then only the list is filled in.
	named bool
}

func newTask(t Task, ask Request, which Which) *taskSheet {
	s := &taskSheet{Request: ask, task: t, side: t.Plan.Tighten, which: which, words: &ask.Words.Handout}
	if ask.Loosening {
		s.side = t.Plan.Loosen
	}
	return s
}

// name is the name of the first page in file names.
func (s *taskSheet) name() string { return strconv.Itoa(max(1, s.task.Number)) }

func (s *taskSheet) heading() sheet.Heading {
	badge := s.words.Exercise
	if s.which == Key {
		badge = s.words.Key
	}
	return sheet.Heading{
		Title: s.task.Plan.Title, Badge: badge, Solid: s.which == Key,
		Subtitle: s.task.Plan.Machine, Identity: identity(s.task, s.Words),
	}
}

// identity tells the sheets of a class apart, and says how the part is seen.
func identity(t Task, w *words.Catalogue) string {
	var parts []string
	if t.Of > 0 {
		parts = append(parts, fmt.Sprintf(w.Handout.SheetOf, t.Number, t.Of))
	}
	if !t.MadeUp {
		return strings.Join(append(parts, sheet.Identity(t.Plan, w)), " · ")
	}
	parts = append(parts, fmt.Sprintf(w.Handout.Seed, t.Seed))
	if t.Plan.View != "" {
		parts = append(parts, fmt.Sprintf(w.Sheet.Seen, w.View(t.Plan.View)))
	}
	return strings.Join(parts, " · ")
}

func (s *taskSheet) foot() sheet.Foot {
	return sheet.Foot{Lines: sheet.BreakAll([]string{s.Words.Sheet.ManualFirst}, s.Paper.Content())[0]}
}

// texts are the sentences above the part.
func (s *taskSheet) texts() []string {
	if s.which == Key {
		lead := s.words.KeyLead
		if makersOwn(s.task.Plan) {
			lead = s.words.KeyMaker
		}
		if s.Loosening {
			lead += " " + s.words.Reverse
		}
		return []string{lead}
	}
	task, named := s.words.Tighten, s.words.NamedTighten
	if s.Loosening {
		task, named = s.words.Loosen, s.words.NamedLoosen
	}
	if s.named {
		task = named
	}
	if len(s.task.Plan.Joint.Clusters) > 0 {
		task += " " + s.words.Together
	}
	if s.named {
		return []string{task}
	}
	return []string{task, s.words.ListTask}
}

// makersOwn says whether the maker gave the order of a group.
func makersOwn(p plan.Plan) bool {
	return slices.ContainsFunc(p.Groups, func(g plan.Group) bool { return g.Way == sequence.List || g.Way == sequence.Cast })
}

// rules lists what an answer is held against, for the layout at hand.
func rules(p plan.Plan, w *words.Handout) []string {
	var lines []string
	for k, g := range p.Groups {
		if k > 0 {
			lines = append(lines, w.SmallLast)
			break
		}
		lines = append(lines, groupRules(p, g, w)...)
	}
	if len(p.Joint.Clusters) > 0 {
		lines = append(lines, w.Together)
	}
	return lines
}

func groupRules(p plan.Plan, g plan.Group, w *words.Handout) []string {
	switch settled(p, g) {
	case sequence.Star:
		return w.Circle
	case sequence.RowWay:
		return w.Row
	}
	return w.Spread
}

// settled gives the way that the trade has for the layout of a group, whatever
// the way that the file names.
func settled(p plan.Plan, g plan.Group) sequence.Way {
	return sequence.SettledGroup(p.Joint, g.Members, sequence.Group{Way: sequence.Auto})
}
