package record

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// seen is a trouble or a finding with the letter by which the drawing shows its
// place.
type seen struct {
	lettered.Spot
	entry   string
	finding bool // no trouble, nor a new fastener
	at      time.Time
	by      string
	what    string
	photo   string
	step    int
	settled string
	open    bool // a trouble that is not settled
}

// allSeen lists troubles and findings by the time at which they were entered.
func (l *layout) allSeen() []seen {
	var all []seen
	for _, t := range l.View.Troubles {
		one := seen{entry: t.Entry, at: t.At, by: t.By, what: l.words.With(l.troubleName(t), t.Note), photo: t.Photo, Spot: lettered.Spot{IDs: t.IDs}, step: t.Step, settled: l.w.NotYet, open: true}
		if t.Settled != nil {
			one.settled, one.open = words.Row(l.decided(t), l.settled(*t.Settled)), false
		}
		one.settled = l.condemned(t, one.settled)
		all = append(all, one)
	}
	for _, r := range l.View.Replaced {
		if r.Of == "" { // else it stands at its trouble
			what := l.p.Records.Acts[string(run.Replace)]
			all = append(all, seen{entry: r.Entry, at: r.At, by: r.By, what: l.words.With(what, r.Note), Spot: lettered.Spot{IDs: r.IDs}, step: r.Step, settled: sprint(l.w.New, l.decider(r.Mark), l.when(r.At))})
		}
	}
	for _, f := range l.View.Findings {
		all = append(all, seen{entry: f.Entry, finding: true, Spot: lettered.At("", f.Place), at: f.At, by: f.By, what: l.words.With(l.p.Seen.Names[string(f.Found)], f.Note), photo: f.Photo, step: f.Step})
	}
	slices.SortStableFunc(all, func(a, b seen) int { return a.at.Compare(b.at) })
	for i := range all {
		all[i].Letter = lettered.Letter(i)
	}
	return all
}

// troubleName is the trouble in words, or that an angle was interrupted.
func (l *layout) troubleName(t run.TroubleSeen) string {
	return l.p.Trouble.Names[cmp.Or(string(t.Trouble), "unsure")]
}

// settled says what was done about a trouble: a new fastener, or what a person
// wrote.
func (l *layout) settled(m run.Mark) string {
	for _, e := range l.Entries {
		if e.ID == m.Entry && e.Act == run.Replace {
			return words.Row(l.repair(m), sprint(l.w.New, l.decider(m), l.when(m.At)), m.Note)
		}
	}
	return l.done(m)
}

// repair says what was done to the hole by an entry; empty for nothing.
func (l *layout) repair(m run.Mark) string {
	for _, r := range l.View.Repaired {
		if r.Entry == m.Entry {
			return strings.TrimSpace(l.p.Run.Repairs[string(r.Repair)] + " " + r.Thread)
		}
	}
	return ""
}

// done says what was done, by whom and when.
func (l *layout) done(m run.Mark) string {
	who := l.decider(m) + ", " + l.when(m.At)
	said := words.Row(l.repair(m), m.Note)
	if said == "" {
		return who
	}
	return said + " (" + who + ")"
}

// decider is who did something; where another decided it, both.
func (l *layout) decider(m run.Mark) string {
	if m.DecidedBy == "" {
		return m.By
	}
	return sprint(l.p.Run.DecidedBy, m.DecidedBy, m.By)
}

// decided says what was decided of an angle that was interrupted; empty where the
// note alone says it.
func (l *layout) decided(t run.TroubleSeen) string {
	switch t.Decided {
	case "", run.OtherDecision:
		return ""
	case run.TurnOn:
		return sprint(l.p.Run.TurnOn, l.words.Figure(string(t.TurnOn)+"°"))
	}
	return l.p.Run.Decided[string(t.Decided)]
}

// condemned adds that the bolt is not to be used again, and what took its place. A
// hole stays: what was done to it is said.
func (l *layout) condemned(t run.TroubleSeen, settled string) string {
	for _, c := range l.View.Condemned {
		if c.Entry != t.Entry {
			continue
		}
		if t.Trouble != run.HoleThread {
			settled += "; " + l.w.Scrapped
		}
		if c.Replaced != nil && (t.Settled == nil || c.Replaced.Entry != t.Settled.Entry) {
			settled += "; " + sprint(l.w.New, c.Replaced.By, l.when(c.Replaced.At))
		}
	}
	return settled
}

func (l *layout) listSeen() {
	var rows []sheet.Row
	for _, s := range l.seen {
		what := s.what
		if s.photo != "" {
			what = l.words.With(what, l.photoName(s.photo))
		}
		rows = append(rows, sheet.Row{Words: []string{s.Letter, s.Where(l.Plan.Joint, l.words), what, s.by, l.when(s.at), s.settled}, Bold: s.open})
	}
	c := l.p.Records.Columns
	l.list(l.p.Records.Troubles+", "+l.p.Records.Found, []sheet.Column{
		{Head: l.w.Ref, Share: 0.8, Bold: true}, {Head: l.w.Where, Share: 1.6}, {Head: l.w.What, Share: 4}, {Head: c["who"], Share: 1.2},
		{Head: c["when"], Share: 2.2}, {Head: l.w.Settled, Share: 4},
	}, rows)
}

// spots are the places of what was seen.
func (l *layout) spots() []lettered.Spot {
	var all []lettered.Spot
	for _, s := range l.seen {
		all = append(all, s.Spot)
	}
	return all
}
