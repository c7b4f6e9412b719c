package record

import (
	"cmp"
	"slices"
	"strconv"
	"time"

	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// used is a wrench, and what was done with it.
type used struct {
	number      string
	facts       *run.WrenchFacts
	count       int // torques set
	angles      int // turned
	least, most float64
}

func (l *layout) wrenches() {
	var rows []sheet.Row
	for _, u := range l.used() {
		spans, calibrated, set := l.w.NoRange, "", ""
		if f := u.facts; f != nil && f.Listed {
			calibrated = f.Calibrated
			spans = ""
			if f.ToNm > 0 {
				spans = l.words.Figure(span(f.FromNm, f.ToNm))
			}
		}
		if u.count > 0 {
			set = l.words.Figure(sprint("%d × %s N·m", u.count, span(u.least, u.most)))
		}
		if u.angles > 0 {
			set = words.Row(set, sprint(l.w.Angles, u.angles))
		}
		row := sheet.Row{Words: []string{u.number, spans, cmp.Or(calibrated, l.w.NotCalibrated), set, l.aboutWrench(u.number)}, Warns: calibrated == ""}
		if u.number == "" {
			row.Words[0], row.Words[1], row.Words[2], row.Words[4] = "–", "", "", l.w.NoNumber
		}
		rows = append(rows, row)
	}
	l.list(l.w.Wrenches, []sheet.Column{
		{Head: l.w.Tool, Share: 1.4, Bold: true}, {Head: l.w.Range, Share: 1.6}, {Head: l.w.Last, Share: 1.6},
		{Head: l.w.Used, Share: 2.2}, {Head: l.w.Remark, Share: 4},
	}, rows)
}

// used lists the wrenches by their entries, with the torques that were set by each.
// That of the seal stands for the torques of which no entry names one; where it has
// none either, they come last.
func (l *layout) used() []used {
	var all []used
	for _, e := range l.Entries {
		if e.Wrench == "" {
			continue
		}
		i := slices.IndexFunc(all, func(u used) bool { return u.number == e.Wrench })
		if i < 0 {
			all, i = append(all, used{number: e.Wrench}), len(all)
		}
		all[i].facts = e.WrenchFacts
	}
	for _, st := range l.View.Steps {
		number := st.Wrench
		if number == "" && l.View.Signed != nil {
			number = l.View.Signed.Wrench
		}
		if i := slices.IndexFunc(all, func(u used) bool { return u.number == st.Wrench }); i >= 0 && st.State == run.IsDone && st.AngleDeg > 0 {
			all[i].angles++
		}
		if st.State != run.IsDone || st.TorqueNm == 0 {
			continue
		}
		i := slices.IndexFunc(all, func(u used) bool { return u.number == number })
		if i < 0 {
			all, i = append(all, used{number: number}), len(all)
		}
		u := &all[i]
		if u.count++; u.count == 1 {
			u.least, u.most = st.TorqueNm, st.TorqueNm
		}
		u.least, u.most = min(u.least, st.TorqueNm), max(u.most, st.TorqueNm)
	}
	return all
}

// span writes a range; one figure where both ends are the same.
func span(least, most float64) string {
	if least == most {
		return sprint("%.3g", least)
	}
	return sprint("%.3g–%.3g", least, most)
}

// aboutWrench says what was flagged of a wrench, once.
func (l *layout) aboutWrench(number string) string {
	var all []string
	for _, f := range l.View.Flags {
		if f.Finding.Values["wrench"] == number {
			if said := l.words.Say(f.Finding); !slices.Contains(all, said) {
				all = append(all, said)
			}
		}
	}
	return words.Row(all...)
}

// person is someone who took part.
type person struct {
	name        string
	count       int
	first, last time.Time
}

func (l *layout) people() {
	var all []person
	add := func(name string, at time.Time, made int) {
		if name == "" {
			return
		}
		i := slices.IndexFunc(all, func(p person) bool { return p.name == name })
		if i < 0 {
			all, i = append(all, person{name: name, first: at}), len(all)
		}
		all[i].count += made
		all[i].last = at
	}
	for _, e := range l.Entries {
		add(e.Who, e.Time, 1)
		add(e.Second, e.Time, 0) // who signs second or decides makes no entry by that
		add(e.DecidedBy, e.Time, 0)
	}
	var rows []sheet.Row
	for _, p := range all {
		rows = append(rows, sheet.Row{Words: []string{p.name, strconv.Itoa(p.count), l.when(p.first), l.when(p.last)}})
	}
	l.list(l.w.People, []sheet.Column{{Head: l.p.Records.Columns["who"], Share: 2, Bold: true}, {Head: l.w.Entries, Share: 1}, {Head: l.w.First, Share: 2}, {Head: l.w.Ended, Share: 2}}, rows)
}
