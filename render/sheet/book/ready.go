package book

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

func (b *binder) ready(run *sheet.Run, _ found) {
	w := b.w
	sentence(run, w.ReadySays)
	b.fasteners(run)
	b.supplies(run, w.Gaskets, slices.Concat(b.o.Gaskets(), b.o.NewParts()))
	b.supplies(run, w.Sealants, b.o.Sealants())
	b.supplies(run, w.Lubricants, b.lubricants())
}

// byManual lists the fasteners whose figures are not in this book, to be filled
// in from the manual before the rebuild.
func (b *binder) byManual(run *sheet.Run, _ found) {
	w := b.w
	sentence(run, w.FromManualSays)
	t := sheet.Table{Columns: []sheet.Column{
		{Head: w.PartHead, Share: 3.4}, {Head: w.What, Share: 3.4}, {Head: w.SizeHead, Share: 2.2}, {Head: w.Figure, Share: 2.6},
		{Head: w.Oiled, Share: 1.8}, {Head: w.ManualPage, Share: 1.9}, {Head: w.TightenedBy, Share: 1.9},
	}, Ruled: true}
	for _, task := range b.o.ByManual() {
		part := task.Part // printed once: its rows are consecutive
		for _, name := range task.LookUp() {
			t.Rows = append(t.Rows, row(part, name, "", "", "", "", ""))
			part = ""
		}
	}
	t.Draw(run)
}

func (b *binder) tools(run *sheet.Run, _ found) {
	w := b.w
	sentence(run, w.ToolsSays)
	t := sheet.Table{Columns: []sheet.Column{tick(w.Have), {Head: w.Socket, Share: 3, Bold: true}, {Head: w.Joints, Share: 11.4}}, Large: true}
	for _, s := range b.o.Sockets() {
		t.Rows = append(t.Rows, row("", b.socketWords(s.Wrench), numbers(s.In)))
	}
	t.Draw(run)
	if len(b.o.Tools) == 0 {
		return
	}
	t = sheet.Table{Columns: []sheet.Column{tick(w.Have), {Head: w.What, Share: 14.4}}, Large: true}
	for _, tool := range b.o.Tools {
		t.Rows = append(t.Rows, row("", tool))
	}
	t.Draw(run)
}

func (b *binder) fasteners(run *sheet.Run) {
	w := b.w
	t := sheet.Table{Columns: []sheet.Column{
		tick(w.Have), {Head: w.Count, Share: 1.6, Bold: true}, {Head: w.Size, Share: 4}, {Head: w.Class, Share: 1.6},
		{Head: w.State, Share: 5}, {Head: w.Joints, Share: 2.2},
	}}
	for _, f := range b.o.Fasteners() {
		count, state := strconv.Itoa(f.Count)+" ×", b.stateWords(f.Reuse)
		t.Rows = append(t.Rows, row("", count, b.sizeWords(f), f.Class, state, numbers(f.In)))
		if f.NutAcross > 0 {
			t.Rows = append(t.Rows, row("", count, fmt.Sprintf(w.Nut, b.threadWords(f)), "", state, numbers(f.In)))
		}
	}
	t.Draw(run)
}

func (b *binder) threadWords(f overhaul.Fasteners) string {
	return b.ask.Words.Figure(cmp.Or(f.ThreadName(), "?"))
}

func (b *binder) sizeWords(f overhaul.Fasteners) string {
	size := b.threadWords(f)
	if f.Stud() {
		size = fmt.Sprintf(b.w.Stud, size)
	}
	if f.Length == 0 {
		return size
	}
	return size + " × " + b.ask.Words.Figure(f.Labelled(f.Length))
}

func (b *binder) stateWords(r plan.Reuse) string {
	states := map[plan.Reuse]string{plan.ReuseOnce: b.w.New, plan.ReuseInspect: b.w.Inspect, plan.ReuseYes: b.w.Reuse}
	return cmp.Or(states[r], b.w.Mixed)
}

// numbers lists the numbers of joints: 1, 4, 7.
func numbers(joints []overhaul.Joint) string {
	all := make([]string, len(joints))
	for i, j := range joints {
		all[i] = strconv.Itoa(j.Number)
	}
	return strings.Join(all, ", ")
}

func (b *binder) supplies(run *sheet.Run, title string, all []overhaul.Supply) {
	if len(all) == 0 {
		return
	}
	w := b.w
	head(run, title)
	t := sheet.Table{Columns: []sheet.Column{
		tick(w.Have), {Head: w.Count, Share: 1.6, Bold: true}, {Head: w.What, Share: 10.6}, {Head: w.Joints, Share: 2.2},
	}}
	for _, s := range all {
		count := ""
		if s.Count > 0 {
			count = strconv.Itoa(s.Count) + " ×"
		}
		where := numbers(s.In)
		if s.Part != "" {
			where = "–"
		}
		t.Rows = append(t.Rows, row("", count, s.What, where))
	}
	t.Draw(run)
}

// lubricants returns the lubricants as named on the cards, in the language of
// the book.
func (b *binder) lubricants() []overhaul.Supply {
	all := b.o.Lubricants()
	for i, s := range all {
		all[i].What = b.ask.Words.Lubricant(s.What)
	}
	return all
}

func (b *binder) wrenches(run *sheet.Run, _ found) {
	w := b.w
	all := b.o.Wrenches()
	byStandard := ""
	if slices.ContainsFunc(all, func(one overhaul.Wrench) bool { return one.Standard != "" }) {
		byStandard = w.ByStandard
	}
	sentence(run, words.Text(w.WrenchSays, byStandard))
	t := sheet.Table{Columns: []sheet.Column{
		tick(w.Have), {Head: w.Joint, Share: 4.4}, {Head: w.Kind, Share: 3.6},
		{Head: w.Socket, Share: 2.4, Bold: true}, {Head: w.Torque, Share: 3.2, Bold: true}, {Head: w.AngleOn, Share: 2},
	}}
	for _, one := range all {
		t.Rows = append(t.Rows, row("", name(one.Joint), words.Text(one.Kind.Name, b.ask.Words.Figure(one.Kind.ThreadName())),
			b.socketWords(one), b.torqueWords(one), b.gaugeWords(one)))
	}
	t.Draw(run)
}

func (b *binder) socketWords(one overhaul.Wrench) string {
	w := b.w
	if one.Across == 0 {
		return w.NoWidth
	}
	width := b.ask.Words.Figure(one.Kind.Labelled(one.Across))
	if one.Key {
		width = fmt.Sprintf(w.Key, width)
	}
	if one.Standard != "" {
		return "≈ " + width
	}
	return width
}

func (b *binder) torqueWords(one overhaul.Wrench) string {
	if !one.Torque {
		return "–"
	}
	return sheet.TorqueSpan(b.ask.Words, one.Low, one.High)
}

func (b *binder) gaugeWords(one overhaul.Wrench) string {
	if one.Angle {
		return b.w.Gauge
	}
	return "–"
}

func (b *binder) checks(run *sheet.Run, at found) {
	w := b.w
	sentence(run, w.ChecksSays)
	all := b.o.Checks()
	if len(all) == 0 {
		sentence(run, w.NoChecks)
		return
	}
	t := sheet.Table{Columns: []sheet.Column{
		tick(w.Done), {Head: w.Joint, Share: 4}, {Head: w.When, Share: 6}, {Head: w.CardHead, Share: 1.4}, {Head: w.Signed, Share: 3.4},
	}}
	for _, c := range all {
		t.Rows = append(t.Rows, row("", name(c.Joint), b.checkWords(c), at.page(c.Joint.Number, tightening), ""))
	}
	t.Draw(run)
}

func (b *binder) checkWords(c overhaul.Check) string {
	w := b.w
	switch {
	case c.Stage == nil:
		return fmt.Sprintf(w.Again, c.Again)
	case c.Stage.Do == plan.Wait:
		return b.ask.Words.With(fmt.Sprintf(w.Wait, c.Stage.Number, b.ask.Words.Figure(c.Stage.Wait.String())), c.Stage.Note)
	}
	return b.ask.Words.With(fmt.Sprintf(w.CheckPass, c.Stage.Number, b.ask.Words.Figure(c.Stage.Torque.String())), c.Stage.Note)
}
