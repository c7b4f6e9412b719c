package book

import (
	"fmt"
	"strconv"

	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// lists lays out the sections that are lists. first has the first pages of all
// sections, or is nil while they are unknown.
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

func (b *binder) list(s *section, at found, close bool) *sheet.Run {
	run := sheet.NewRun(b.ask.Paper, b.ask.Words, b.heading(s.title), b.foot(s.kind))
	run.Close = close
	b.listings()[s.kind].lay(run, at)
	return run
}

// listing is a list for the whole machine: its title and its content.
type listing struct {
	title string
	lay   func(*sheet.Run, found)
}

func (b *binder) listings() map[kind]listing {
	return map[kind]listing{
		contents:   {b.w.Contents, b.contents},
		overview:   {b.w.Overview, b.overview},
		tools:      {b.w.Tools, b.tools},
		stripTasks: {b.w.StripDown, func(run *sheet.Run, at found) { b.tasks(run, plan.CautionLoosen, at) }},
		buildTasks: {b.w.BuildUp, func(run *sheet.Run, at found) { b.tasks(run, plan.CautionTighten, at) }},
		ready:      {b.w.Ready, b.ready},
		manual:     {b.w.FromManual, b.byManual},
		wrenches:   {b.w.Wrenches, b.wrenches},
		checks:     {b.w.Checks, b.checks},
		values:     {b.w.Values, b.values},
	}
}

func (b *binder) title(k kind) string { return b.listings()[k].title }

func (b *binder) heading(title string) sheet.Heading {
	o, revision := b.o, ""
	if o.Revision != "" {
		revision = fmt.Sprintf(b.ask.Words.Sheet.Revision, o.Revision)
	}
	subtitle := words.Row(o.Title, o.Machine)
	if o.Title == o.Machine {
		subtitle = o.Title
	}
	return sheet.Heading{
		Title: title, Badge: b.w.Badge, Subtitle: subtitle, Identity: words.Row(fmt.Sprintf(b.w.Identity, o.Fingerprint), revision, o.Date),
	}
}

func (b *binder) foot(list kind) sheet.Foot {
	if list == contents || list == overview {
		return b.ask.Foot()
	}
	w := b.ask.Words.Sheet
	return b.ask.Foot(w.DoneBy, w.Date, w.CheckedBy)
}

// found has the first pages of all sections, nil while they are unknown.
type found struct {
	sections []section
	first    []int
}

// page is the first page of a kind of sheet of a joint, or of a list if joint
// is 0; "" if there is none or it is unknown.
func (f found) page(joint int, k kind) string {
	for i, s := range f.sections {
		if f.first != nil && s.joint == joint && s.kind == k {
			return strconv.Itoa(f.first[i])
		}
	}
	return ""
}

// pages are the first pages of several sheets of a joint; all blank without a
// joint.
func (f found) pages(joint int, papers ...kind) []string {
	cells := make([]string, len(papers))
	for i, k := range papers {
		if joint > 0 {
			cells[i] = f.page(joint, k)
		}
	}
	return cells
}

func (b *binder) contents(run *sheet.Run, at found) {
	w := b.w
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
		joints.Rows = append(joints.Rows, row(append([]string{name(j)}, at.pages(j.Number, loosening, trays, conditions, tightening)...)...))
	}
	joints.Draw(run)
}

func (b *binder) tasks(run *sheet.Run, side plan.CautionSide, at found) {
	w := b.w
	says, papers := w.StripSays, []kind{loosening, trays, conditions}
	heads := []string{w.CardHead, w.TrayHead, w.ConditionHead}
	if side == plan.CautionTighten {
		says, papers, heads = w.BuildSays, []kind{tightening}, heads[:1]
	}
	sentence(run, says)
	b.cautions(run, side)
	t := sheet.Table{Columns: []sheet.Column{tick(w.Done), {Head: w.Step, Share: 13}}, Large: true}
	for _, head := range heads {
		t.Columns = append(t.Columns, sheet.Column{Head: head, Share: 1.5})
	}
	blank := make([]string, len(heads)-1) // no sheet except the first
	for _, list := range b.listsBefore(side) {
		t.Rows = append(t.Rows, row(append([]string{"", fmt.Sprintf(b.readyWords(list, side), b.title(list)), at.page(0, list)}, blank...)...))
	}
	for _, task := range b.o.TasksOf(side) {
		stop := b.stopWords(task, side, at)
		if stop != "" {
			t.Rows = append(t.Rows, sheet.Row{Words: append([]string{"", stop}, at.pages(0, papers...)...), Warns: true})
		}
		for k, text := range b.steps(task, side) {
			joint := 0
			if k == 0 {
				joint = b.number(task.Joint)
			}
			t.Rows = append(t.Rows, sheet.Row{
				Words: append([]string{"", text}, at.pages(joint, papers...)...),
				Bold:  joint > 0, Warns: task.Warns, Caution: task.Warns,
			})
		}
	}
	if side == plan.CautionTighten {
		t.Rows = append(t.Rows, row("", w.LaterChecks, at.page(0, checks)))
	}
	t.Draw(run)
}

func row(cells ...string) sheet.Row { return sheet.Row{Words: cells} }

func tick(head string) sheet.Column { return sheet.Column{Head: head, Share: 1.4, Tick: true} }

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

// readyWords say that a list is complete: sizes are looked up before the
// teardown, figures before the rebuild.
func (b *binder) readyWords(list kind, side plan.CautionSide) string {
	w := b.w
	switch {
	case list != manual:
		return w.AllReady
	case side == plan.CautionTighten:
		return w.RowsFilled
	}
	return w.SizesFilled
}

func (b *binder) cautions(run *sheet.Run, side plan.CautionSide) {
	t := sheet.Table{Columns: []sheet.Column{{Head: b.w.Throughout, Share: 1}}, Large: true}
	for _, c := range b.o.Cautions {
		if c.Side == plan.CautionBoth || c.Side == side {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{fmt.Sprintf(b.w.Warning, c.Text)}, Warns: true})
		}
	}
	if len(t.Rows) > 0 {
		t.Draw(run)
	}
}

// number is that of a joint; 0 if there is none.
func (b *binder) number(p *plan.Plan) int {
	for _, j := range b.o.Joints() {
		if j.Plan == p {
			return j.Number
		}
	}
	return 0
}

// sentence sets a running text and leaves space after it.
func sentence(run *sheet.Run, words string) {
	run.Sentence(words)
	run.Y += 2
}

// head sets a heading and keeps it together with what follows.
func head(run *sheet.Run, words string) {
	run.Room(30)
	run.Pen.Head(run.Pen.Left(), run.Y+5, words)
	run.Y += 8
}
