package record

import (
	"strings"
	"time"

	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// brief is the record of a run within that of its job: what it came to, then its steps,
// those alike in one row.
func (l *layout) brief() {
	paper := l.run.Pen.Paper
	l.run.Room(paper.Strong().Step + 6*paper.Line)
	l.run.Set(paper.Strong(), words.Row(l.Plan.Title, l.w.Work[string(l.View.Direction)], l.ID))
	for _, line := range l.statusLines() {
		l.run.Sentence(line)
	}
	l.run.Sentence(words.Row(l.w.Started+" "+words.Row(l.when(l.Started), l.begunBy()), sheet.Identity(l.Plan, l.words), filled(l.w.Again+" %s", l.Again)))
	l.run.Y++
	if l.View.Status == run.Voided && len(l.View.AsDone()) == len(l.View.Steps) && !l.anyDone() {
		l.run.Y += 2
		return // nothing was done on it
	}
	notes := l.View.Notes
	for _, n := range notes {
		l.run.Sentence(l.p.Records.Notes + ": " + words.Row(n.Note, l.decidedBy(n.Mark), n.By, l.when(n.At)))
	}
	l.View.Notes = nil // they stand above
	for _, part := range []func(){l.flags, l.accepted, l.listSeen, l.readings, l.stepsTogether, l.wrenches, l.handOvers, l.remarks} {
		part()
	}
	l.View.Notes = notes
	l.run.Y += 2
}

func (l *layout) anyDone() bool {
	for _, st := range l.View.Steps {
		if st.State != run.ToDo {
			return true
		}
	}
	return false
}

// together are steps of one stage that one person did one after the other.
type together struct {
	of    run.Step // the first of them
	done  []string // fasteners, with the time of each
	alone bool     // there is something to say of it
}

// stepsTogether lists the steps as they were done. Those of a stage that were done in
// turn stand in one row, each fastener with its time.
func (l *layout) stepsTogether() {
	var groups []together
	for _, st := range l.View.AsDone() {
		alone := st.Met != nil || st.Fresh != nil || st.Undone != nil || st.Old || st.OutOfOrder || st.Recovery > 0 || st.State == run.LeftOut || l.View.DecidedAt(st.Number) != nil || st.Name() == string(run.Begin)
		id := strings.Join(st.IDs, "+")
		if !st.At.IsZero() && st.Source != run.OnPaper {
			id = strings.TrimSpace(id + "\u00a0" + st.At.In(l.ask.Zone).Format("15:04:05"))
			if late := l.tapped(st); late != "" {
				id += "\u00a0(" + late + ")"
			}
		}
		if n := len(groups); n > 0 && !alone && !groups[n-1].alone && groups[n-1].joins(st) {
			groups[n-1].done = append(groups[n-1].done, id)
			continue
		}
		groups = append(groups, together{st, []string{id}, alone})
	}
	var rows []sheet.Row
	for _, g := range groups {
		st := g.of
		when := ""
		if !st.At.IsZero() {
			when = l.p.Paper.When(st.Source == run.OnPaper, st.Day, st.At.In(l.ask.Zone).Format(time.DateOnly))
		}
		remark := st.Wrench
		if g.alone {
			remark = l.remark(st)
		}
		rows = append(rows, sheet.Row{Words: []string{l.stage(st), l.figure(st), strings.Join(g.done, ", "), l.state(st), st.By, when, remark}, Bold: st.Met != nil || st.Fresh != nil})
	}
	c := l.p.Records.Columns
	l.run.Close = true
	l.list(l.p.Records.Steps, []sheet.Column{
		{Head: c["stage"], Share: 0.9}, {Head: c["figure"], Share: 2.4}, {Head: c["fastener"], Share: 4.8}, {Head: c["state"], Share: 1.2},
		{Head: c["who"], Share: 0.9}, {Head: c["when"], Share: 2.6}, {Head: l.w.Remark, Share: 1.6},
	}, rows)
	l.run.Close = false
}

// joins says whether a step belongs to those before it.
func (g together) joins(st run.Step) bool {
	a := g.of
	return a.Stage == st.Stage && a.Round == st.Round && a.Figure == st.Figure && a.Name() == st.Name() && a.State == st.State &&
		a.By == st.By && a.Source == st.Source && a.Day == st.Day && a.Wrench == st.Wrench
}
