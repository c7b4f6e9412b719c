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
	for i := range sections {
		s := &sections[i]
		if !s.kind.isList() {
			continue
		}
		run := b.list(s, found{sections, first}, false)
		if run.Scant() {
			if closer := b.list(s, found{sections, first}, true); closer.Length() < run.Length() {
				run = closer
			}
		}
		s.pages = run.Pages("list")
	}
}

// list lays out a list, with less white where that is asked for.
func (b *binder) list(s *section, at found, close bool) *sheet.Run {
	run := sheet.NewRun(b.ask.Paper, b.ask.Words, b.heading(s.title), b.foot(s.kind))
	run.Close = close
	switch s.kind {
	case contents:
		b.contents(run, at)
	case overview:
		b.overview(run)
	case stripSteps:
		b.steps(run, plan.CautionLoosen, at)
	case buildSteps:
		b.steps(run, plan.CautionTighten, at)
	case tools:
		b.tools(run)
	case ready:
		b.ready(run)
	case manual:
		b.byManual(run)
	case wrenches:
		b.wrenches(run)
	case checks:
		b.checks(run, at)
	}
	return run
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

// foot has a place to sign on the lists that are worked through.
func (b *binder) foot(list kind) sheet.Foot {
	w := b.ask.Words
	foot := sheet.Foot{Lines: sheet.BreakAll([]string{w.Sheet.ManualFirst}, b.ask.Paper.Content())[0]}
	if list != contents && list != overview {
		foot.Sign = []string{w.Sheet.DoneBy, w.Sheet.Date, w.Sheet.CheckedBy}
	}
	return foot
}

// found is where the papers are: the first pages of all sections, nil while
// they are not known.
type found struct {
	sections []section
	first    []int
}

// page is the first page of a kind of papers of a joint, or of a list where the
// joint is 0; blank where there is none or it is not known.
func (f found) page(joint int, k kind) string {
	for i, s := range f.sections {
		if f.first != nil && s.joint == joint && s.kind == k {
			return strconv.Itoa(f.first[i])
		}
	}
	return ""
}

// contents names the lists, then the papers of each joint in a line.
func (b *binder) contents(run *sheet.Run, at found) {
	w := b.ask.Words.Book
	sentence(run, w.SingleSided)
	t := sheet.Table{Columns: []sheet.Column{{Head: w.Contents, Share: 10}, {Head: w.Page, Share: 1.4}}}
	for _, s := range at.sections {
		if s.kind.isList() && s.kind != contents {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{s.title, at.page(0, s.kind)}, Bold: s.level == 0})
		}
	}
	t.Draw(run)
	joints := sheet.Table{Columns: []sheet.Column{{Head: w.Joint, Share: 6}, {Head: w.LoosenHead, Share: 2}, {Head: w.TrayHead, Share: 2},
		{Head: w.ConditionHead, Share: 2}, {Head: w.TightenHead, Share: 2}}}
	for _, j := range b.o.Joints() {
		row := []string{fmt.Sprintf("%d %s", j.Number, j.Title)}
		for _, k := range []kind{loosening, trays, conditions, tightening} {
			row = append(row, at.page(j.Number, k))
		}
		joints.Rows = append(joints.Rows, sheet.Row{Words: row})
	}
	joints.Draw(run)
}

// steps lists the steps of one side in working order, each to be ticked, with
// the pages of its papers.
func (b *binder) steps(run *sheet.Run, side plan.CautionSide, at found) {
	w := b.ask.Words.Book
	says, papers := w.StripSays, []kind{loosening, trays, conditions}
	heads := []string{w.CardHead, w.TrayHead, w.ConditionHead}
	if side == plan.CautionTighten {
		says, papers, heads = w.BuildSays, []kind{tightening}, []string{w.CardHead}
	}
	sentence(run, says)
	b.cautions(run, side)
	t := sheet.Table{Columns: []sheet.Column{{Head: w.Done, Share: 1.4, Tick: true}, {Head: w.Step, Share: 13}}, Large: true}
	for _, head := range heads {
		t.Columns = append(t.Columns, sheet.Column{Head: head, Share: 1.5})
	}
	for _, list := range b.listsBefore(side) {
		row := make([]string, len(t.Columns))
		row[1], row[2] = fmt.Sprintf(b.readyWords(list, side), b.title(list)), at.page(0, list)
		t.Rows = append(t.Rows, sheet.Row{Words: row})
	}
	for _, s := range b.o.SideSteps(side) {
		row := []string{"", b.withNote(b.stepWords(s, side), b.manualWords(s, side, at))}
		for _, k := range papers {
			page := ""
			if s.Joint != nil {
				page = at.page(b.number(s.Joint), k)
			}
			row = append(row, page)
		}
		t.Rows = append(t.Rows, sheet.Row{Words: row, Bold: s.Joint != nil, Warns: s.Warns || side == plan.CautionTighten && len(lookedUp(s, side)) > 0})
	}
	if side == plan.CautionTighten {
		t.Rows = append(t.Rows, sheet.Row{Words: []string{"", w.LaterChecks, at.page(0, checks)}})
	}
	t.Draw(run)
}

// listsBefore are the lists of what lies ready before the first step of a side.
func (b *binder) listsBefore(side plan.CautionSide) []kind {
	lists := []kind{tools}
	if side == plan.CautionTighten {
		lists = []kind{ready, wrenches}
	}
	if len(b.o.ByManual()) > 0 {
		lists = append(lists, manual)
	}
	return lists
}

// readyWords say that a list is done with: sizes are looked up before the strip,
// figures before the build.
func (b *binder) readyWords(list kind, side plan.CautionSide) string {
	w := b.ask.Words.Book
	switch {
	case list != manual:
		return w.AllReady
	case side == plan.CautionTighten:
		return w.RowsFilled
	}
	return w.SizesFilled
}

// lookedUp lists what of a part the manual is asked for on one side.
func lookedUp(s overhaul.Step, side plan.CautionSide) []string {
	if side == plan.CautionTighten {
		return s.LookUp()
	}
	return s.Manual
}

// manualWords says that a part's fasteners are loosened by the manual, and when
// building leads to the list in which its figures are written.
func (b *binder) manualWords(s overhaul.Step, side plan.CautionSide, at found) string {
	all := lookedUp(s, side)
	if side == plan.CautionTighten && len(all) > 0 {
		return fmt.Sprintf(b.ask.Words.Book.FiguresOnPage, at.page(0, manual), strings.Join(all, ", "))
	}
	return b.byTheManual(all)
}

// byTheManual says so of what is looked up there; of nothing, nothing.
func (b *binder) byTheManual(all []string) string {
	if len(all) == 0 {
		return ""
	}
	return fmt.Sprintf(b.ask.Words.Book.ByManual, strings.Join(all, ", "))
}

// cautions stand before the first step.
func (b *binder) cautions(run *sheet.Run, side plan.CautionSide) {
	t := sheet.Table{Columns: []sheet.Column{{Head: b.ask.Words.Book.Throughout, Share: 1}}, Large: true}
	for _, c := range b.o.Cautions {
		if c.Side == plan.CautionBoth || c.Side == side {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{fmt.Sprintf(b.ask.Words.Book.Warning, c.Text)}, Warns: true})
		}
	}
	if len(t.Rows) > 0 {
		t.Draw(run)
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
		if len(s.New) > 0 {
			words = b.withNote(words, fmt.Sprintf(w.FitNew, strings.Join(s.New, ", ")))
		}
	case s.Part != "":
		words = fmt.Sprintf(w.Part, s.Part)
	case s.Warns:
		return fmt.Sprintf(w.Warning, s.Note)
	default:
		return s.Note
	}
	return b.withNote(words, s.Remark(side))
}

func (b *binder) number(p *plan.Plan) int {
	for _, j := range b.o.Joints() {
		if j.Plan == p {
			return j.Number
		}
	}
	return 0
}

// sentence sets a running text and keeps what follows off it.
func sentence(run *sheet.Run, words string) {
	run.Sentence(words)
	run.Y += 2
}

// head sets a heading and keeps it with what follows.
func head(run *sheet.Run, words string) {
	run.Room(30)
	run.Pen.Head(run.Pen.Left(), run.Y+5, words)
	run.Y += 8
}
