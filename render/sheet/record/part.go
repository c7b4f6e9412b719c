package record

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// seen is a trouble or a finding with the letter by which the drawing shows its
// place.
type seen struct {
	letter  string
	at      time.Time
	by      string
	what    string
	photo   string
	ids     []string // of fasteners or a station
	point   *[2]float64
	step    int
	settled string
	open    bool // a trouble that is not settled
}

// allSeen lists troubles and findings by the time at which they were entered.
func (l *layout) allSeen() []seen {
	var all []seen
	for _, t := range l.View.Troubles {
		one := seen{at: t.At, by: t.By, what: l.words.With(l.troubleName(t), t.Note), photo: t.Photo, ids: t.IDs, step: t.Step, settled: l.w.NotYet, open: true}
		if t.Settled != nil {
			one.settled, one.open = words.Row(l.decided(t), l.settled(*t.Settled)), false
		}
		one.settled = l.condemned(t, one.settled)
		all = append(all, one)
	}
	for _, r := range l.View.Replaced {
		if r.Of == "" { // else it stands at its trouble
			what := l.p.Records.Acts[string(run.Replace)]
			all = append(all, seen{at: r.At, by: r.By, what: l.words.With(what, r.Note), ids: r.IDs, step: r.Step, settled: sprint(l.w.New, l.decider(r.Mark), l.when(r.At))})
		}
	}
	for _, f := range l.View.Findings {
		one := seen{at: f.At, by: f.By, what: l.words.With(l.p.Seen.Names[string(f.Found)], f.Note), photo: f.Photo, step: f.Step}
		if p := f.Place; p != nil {
			one.point = p.At
			if id := p.Measured().Name(); id != "" {
				one.ids = []string{id}
			}
		}
		all = append(all, one)
	}
	slices.SortStableFunc(all, func(a, b seen) int { return a.at.Compare(b.at) })
	for i := range all {
		all[i].letter = letter(i)
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
			return words.Row(sprint(l.w.New, l.decider(m), l.when(m.At)), m.Note)
		}
	}
	return l.done(m)
}

// done says what was done, by whom and when.
func (l *layout) done(m run.Mark) string {
	who := l.decider(m) + ", " + l.when(m.At)
	if m.Note == "" {
		return who
	}
	return m.Note + " (" + who + ")"
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

// condemned adds that the fastener is not to be used again, and what took its
// place.
func (l *layout) condemned(t run.TroubleSeen, settled string) string {
	for _, c := range l.View.Condemned {
		if c.Entry != t.Entry {
			continue
		}
		settled += "; " + l.w.Scrapped
		if c.Replaced != nil && (t.Settled == nil || c.Replaced.Entry != t.Settled.Entry) {
			settled += "; " + sprint(l.w.New, c.Replaced.By, l.when(c.Replaced.At))
		}
	}
	return settled
}

// letter counts A to Z, then AA.
func letter(i int) string {
	text := string(rune('A' + i%26))
	if i >= 26 {
		return letter(i/26-1) + text
	}
	return text
}

const flag = "▲" // before the letters in the drawing

const (
	partShare = 0.34 // of the page's height that the drawing may have
	leastPart = 42.0
)

// drawPart draws the part with a letter at the place of everything that was
// seen.
func (l *layout) drawPart() (notes []string) {
	if len(l.Plan.Joint.Fasteners) == 0 { // its file cannot be read any more
		return nil
	}
	p := l.run.Pen.Paper
	read := p.BreakText(l.w.Drawing, p.Content())
	height := l.partHeight()
	l.run.Room(height + float64(len(read))*p.Line + 4)
	shown := l.Plan
	shown.Joint = l.flagged()
	box := scene.Box{Left: l.run.Pen.Left(), Top: l.run.Y, Right: l.run.Pen.Right(), Bottom: l.run.Y + height}
	d := diagram.Draw(diagram.Part{
		Plan: shown, Show: diagram.Words, Words: diagram.IDs(l.Plan.Joint), Beside: l.besides(),
		Front: l.words.Sheet.Front, Box: box, SmallEm: p.TextEm, NoArrows: true,
	})
	l.run.Pen.Add(d.Items...)
	l.run.Y += height + 3.5
	l.run.Y = l.run.Pen.Lines(l.run.Pen.Left(), l.run.Y, read)
	l.ask.Missing.Note(len(d.Unplaced), len(l.Plan.Joint.Fasteners))
	notes = l.left(d)
	for _, note := range notes {
		l.run.Sentence(note)
	}
	l.run.Y += 1.5
	return notes
}

// partHeight is what the part takes of the width, with room for words above and
// below, up to its share of the page.
func (l *layout) partHeight() float64 {
	p := l.run.Pen.Paper
	points := l.Plan.Joint.Points()
	for _, path := range l.Plan.Joint.Outline {
		points = append(points, path...)
	}
	extent := geometry.Bounds(points)
	return min(p.Content()*extent.Height()/max(extent.Width(), 1)+6*p.Line, max(leastPart, partShare*p.Height))
}

// flagged is the joint with a label at each place that is no fastener.
func (l *layout) flagged() geometry.Joint {
	joint := l.Plan.Joint
	joint.Labels = slices.Clone(joint.Labels)
	for _, s := range l.seen {
		at := s.point
		for _, station := range joint.Stations {
			if slices.Contains(s.ids, station.ID) {
				at = &[2]float64{station.At.X, station.At.Y}
			}
		}
		for _, bore := range joint.Bores {
			if bore.Label != "" && slices.Contains(s.ids, bore.Label) {
				at = &[2]float64{bore.Centre.X, bore.Centre.Y}
			}
		}
		if at != nil {
			joint.Labels = append(joint.Labels, geometry.Label{Text: flag + s.letter, At: geometry.Point{X: at[0], Y: at[1]}})
		}
	}
	return joint
}

// besides are the letters at each fastener; nil where there are none.
func (l *layout) besides() []string {
	letters := make([]string, len(l.Plan.Joint.Fasteners))
	for i, f := range l.Plan.Joint.Fasteners {
		for _, s := range l.seen {
			if slices.Contains(s.ids, f.ID) {
				letters[i] += s.letter
			}
		}
		if letters[i] != "" {
			letters[i] = flag + letters[i]
		}
	}
	if strings.Join(letters, "") == "" {
		return nil
	}
	return letters
}

// left tells what found no room.
func (l *layout) left(d diagram.Drawing) (notes []string) {
	name := l.ask.Paper.Name
	say := func(code finding.Code, values finding.Values) {
		values["where"], values["paper"] = "drawing", name
		notes = append(notes, l.words.Say(finding.Warned(code, values)))
	}
	if n := len(d.Unplaced); n > 0 {
		say(sheet.NumbersNoRoom, finding.Values{"left": n, "of": len(l.Plan.Joint.Fasteners)})
	}
	if d.BesideLeftOut > 0 {
		say(sheet.SmallNoRoom, finding.Values{"left": d.BesideLeftOut})
	}
	for _, word := range d.Dropped {
		say(sheet.LabelNoRoom, finding.Values{"label": word})
	}
	return notes
}

func (l *layout) listSeen() {
	var rows []sheet.Row
	for _, s := range l.seen {
		what := s.what
		if s.photo != "" {
			what = l.words.With(what, sprint(l.w.Photo, s.photo[:min(8, len(s.photo))]))
		}
		rows = append(rows, sheet.Row{Words: []string{s.letter, l.placeOf(s), what, s.by, l.when(s.at), s.settled}, Bold: s.open})
	}
	c := l.p.Records.Columns
	l.list(l.p.Records.Troubles+", "+l.p.Records.Found, []sheet.Column{
		{Head: l.w.Ref, Share: 0.8, Bold: true}, {Head: l.w.Where, Share: 1.6}, {Head: l.w.What, Share: 4}, {Head: c["who"], Share: 1.2},
		{Head: c["when"], Share: 2.2}, {Head: l.w.Settled, Share: 4},
	}, rows)
}

func (l *layout) placeOf(s seen) string {
	switch {
	case len(s.ids) > 0:
		return strings.Join(s.ids, ", ")
	case s.point != nil:
		return l.words.Figure(sprint("%.0f, %.0f mm", s.point[0], s.point[1]))
	}
	return ""
}
