package book

import (
	"fmt"
	"strconv"
	"strings"

	"drawdown/render/sheet"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// lists lays out the sections that are lists. The first pages of all sections
// are nil while they are not known.
func (b *binder) lists(sections []section, first []int) {
	w := b.ask.Words.Book
	for i := range sections {
		s := &sections[i]
		if s.kind != lists {
			continue
		}
		run := sheet.NewRun(b.ask.Paper, b.ask.Words, b.heading(s.title), b.foot())
		switch s.title {
		case w.Contents:
			b.contents(run, sections, first)
		case w.Overview:
			b.overview(run)
		case w.StripDown:
			b.steps(run, plan.CautionLoosen, sections, first)
		case w.BuildUp:
			b.steps(run, plan.CautionTighten, sections, first)
		case w.Ready:
			b.ready(run)
		case w.Wrenches:
			b.wrenches(run)
		case w.Checks:
			b.checks(run)
		}
		s.pages = run.Pages("list")
	}
}

func (b *binder) heading(title string) sheet.Heading {
	o, w := b.o, b.ask.Words
	identity := []string{fmt.Sprintf(w.Book.Identity, o.Fingerprint)}
	if o.Revision != "" {
		identity = append(identity, fmt.Sprintf(w.Sheet.Revision, o.Revision))
	}
	if o.Date != "" {
		identity = append(identity, o.Date)
	}
	return sheet.Heading{
		Title: title, Badge: w.Book.Badge, Subtitle: joined(o.Title, o.Machine), Identity: strings.Join(identity, " · "),
	}
}

// joined writes the title and the machine, or one of them where they are the
// same.
func joined(title, machine string) string {
	if title == machine {
		return title
	}
	return title + " · " + machine
}

func (b *binder) foot() sheet.Foot {
	return sheet.Foot{Lines: sheet.BreakAll([]string{b.ask.Words.Sheet.ManualFirst}, b.ask.Paper.Content())[0]}
}

// pageWords is the number of a page, or blank while it is not known.
func pageWords(first []int, section int) string {
	if first == nil {
		return ""
	}
	return strconv.Itoa(first[section])
}

func (b *binder) contents(run *sheet.Run, sections []section, first []int) {
	t := sheet.Table{Columns: []sheet.Column{{Head: b.ask.Words.Book.Contents, Share: 10}, {Head: b.ask.Words.Book.Page, Share: 1}}}
	for i, s := range sections {
		if s.title == b.ask.Words.Book.Contents {
			continue
		}
		title := s.title
		if s.level > 0 {
			title = "    " + title
		}
		t.Rows = append(t.Rows, sheet.Row{Words: []string{title, pageWords(first, i)}, Bold: s.level == 0})
	}
	t.Draw(run)
}

// steps lists the steps of one side in working order, each to be ticked.
func (b *binder) steps(run *sheet.Run, side plan.CautionSide, sections []section, first []int) {
	w := b.ask.Words.Book
	says, papers := w.StripSays, loosening
	if side == plan.CautionTighten {
		says, papers = w.BuildSays, tightening
	}
	sentence(run, says)
	b.cautions(run, side)
	t := sheet.Table{Columns: []sheet.Column{{Head: w.Done, Share: 1.3, Tick: true}, {Head: w.Step, Share: 12}, {Head: w.SeePage, Share: 1.4}}}
	for _, s := range b.o.SideSteps(side) {
		page := ""
		for i, section := range sections {
			if s.Joint != nil && section.kind == papers && b.isJoint(section.joint, s.Joint) {
				page = pageWords(first, i)
			}
		}
		t.Rows = append(t.Rows, sheet.Row{Words: []string{"", b.stepWords(s, side), page}, Bold: s.Joint != nil})
	}
	t.Draw(run)
}

func (b *binder) isJoint(number int, p *plan.Plan) bool { return b.o.Joints()[number-1].Plan == p }

// cautions stand before the first step.
func (b *binder) cautions(run *sheet.Run, side plan.CautionSide) {
	for _, c := range b.o.Cautions {
		if c.Side == plan.CautionBoth || c.Side == side {
			sentence(run, fmt.Sprintf(b.ask.Words.Book.Warning, c.Text))
		}
	}
}

// stepWords says a step in a line.
func (b *binder) stepWords(s overhaul.Step, side plan.CautionSide) string {
	w := b.ask.Words.Book
	var words string
	switch {
	case s.Joint != nil:
		title := w.Loosen
		if side == plan.CautionTighten {
			title = w.Tighten
		}
		words = fmt.Sprintf(title, b.number(s.Joint), s.Joint.Title)
	case s.Part != "" && side == plan.CautionTighten:
		words = fmt.Sprintf(w.PartBack, s.Part)
	case s.Part != "":
		words = fmt.Sprintf(w.Part, s.Part)
	case s.Warns:
		return fmt.Sprintf(w.Warning, s.Note)
	default:
		return s.Note
	}
	if remark := s.Remark(side); remark != "" {
		words += "; " + remark
	}
	return words
}

func (b *binder) number(p *plan.Plan) int {
	for _, j := range b.o.Joints() {
		if j.Plan == p {
			return j.Number
		}
	}
	return 0
}

// sentence sets a running text over the whole width.
func sentence(run *sheet.Run, words string) {
	for _, line := range sheet.BreakAll([]string{words}, run.Pen.Paper.Content())[0] {
		run.Room(sheet.Line)
		run.Pen.Text(run.Pen.Left(), run.Y+3, line)
		run.Y += sheet.Line
	}
	run.Y += 2
}

// head sets a heading and keeps it with what follows.
func head(run *sheet.Run, words string) {
	run.Room(30)
	run.Pen.Head(run.Pen.Left(), run.Y+5, words)
	run.Y += 8
}
