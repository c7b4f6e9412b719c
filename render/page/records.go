package page

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/nearby"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// RecordsView lists runs, also open ones, selected by the form fields machine,
// joint, person, from and to.
type RecordsView struct {
	Frame
	Asked RecordsAsked
	Runs  []RunLine
	Next  string // address of the next page; "" for none
}

// RecordsAsked is the selection. Dates are year-month-day.
type RecordsAsked struct{ Machine, Joint, Person, From, To string }

// Records writes the list.
func Records(w io.Writer, v RecordsView) error {
	v.Dated = true
	return write(w, "records", v)
}

// Searched reports whether a selection is set.
func (v RecordsView) Searched() bool { return v.Asked != RecordsAsked{} }

// Lines are the runs, in words.
func (v RecordsView) Lines() []shownRun {
	all := v.runLines(v.Runs)
	for i := range all {
		all[i].Address = "/records/" + v.Runs[i].Run
	}
	return all
}

// RecordView is the complete record of a run, at /records/ID.
type RecordView struct {
	RunView
	Head   string   // of the chain
	Faults []string // findings of verify, in words; none for a sound record
}

// Record writes the record of a run.
func Record(w io.Writer, v RecordView) error {
	v.Dated = true
	return write(w, "record", v)
}

// StillPart is the part with the final state of each fastener.
func (v RecordView) StillPart() Part {
	part := v.Part()
	part.Still = true
	return part
}

// SealLines say who sealed the run, or that it is open or void.
func (v RecordView) SealLines() []string {
	t := v.Text()
	switch s := v.Run.Signed; {
	case v.Run.VoidedBy != nil:
		m := v.Run.VoidedBy
		return []string{words.Row(fmt.Sprintf(t.Run.VoidBy, m.By, v.when(m.At)), m.Note)}
	case s != nil:
		return slices.DeleteFunc([]string{
			fmt.Sprintf(t.Run.SealedBy, s.By, v.when(s.At)), v.secondBy(*s),
			words.Row(filled(t.Records.WrenchNumber, s.Wrench)),
		}, func(line string) bool { return line == "" })
	}
	return []string{t.Records.NotSealed}
}

// secondBy names the second signature, and who entered it.
func (v RunView) secondBy(s run.Signature) string {
	if s.Second == "" {
		return ""
	}
	return fmt.Sprintf(v.Text().Records.SecondBy, s.Second, s.By)
}

// HeadLine returns the head of the chain.
func (v RecordView) HeadLine() string { return filled(v.Text().Records.Head, v.Head) }

// Columns are the headings of the table of steps.
func (v RecordView) Columns() []string {
	var all []string
	for _, name := range []string{"step", "stage", "fastener", "figure", "state", "who", "when"} {
		all = append(all, v.Text().Records.Columns[name])
	}
	return all
}

// stepRow is a step in the table.
type stepRow struct {
	Number, Stage, Fastener, Figure, State, By, At string
	Old                                            bool
}

// StepRows are the steps as they were done.
func (v RecordView) StepRows() []stepRow {
	t := v.Text().Records
	var rows []stepRow
	for _, s := range v.Run.AsDone() {
		figure, unit := v.figure(s)
		row := stepRow{
			Number: v.stepNumber(s), Stage: number(s.Stage), Fastener: v.fastener(s.IDs), Figure: strings.TrimSpace(figure + " " + unit),
			State: v.stateAndReason(s), By: words.Row(s.By, s.Wrench), Old: s.Old,
		}
		if d := v.Run.DecidedAt(s.Number); d != nil && s.Undone == nil && s.Met == nil { // the decision counts, not the figure of the plan
			row.Figure = words.Row(v.Text().Run.Interrupted, v.decided(*d))
		}
		if s.Old {
			row.State = words.Row(row.State, t.Old)
		}
		if !s.At.IsZero() {
			at := s.At.In(v.Now.Location()).Format("2006-01-02 15:04:05") // two steps can be in the same minute
			row.At = v.Text().Paper.When(s.Source == run.OnPaper, s.Day, at)
		}
		rows = append(rows, row)
	}
	return rows
}

// stateAndReason describes the state of a step and the reason for it, or who
// decided about its angle.
func (v RecordView) stateAndReason(s run.Step) string {
	state := v.Text().Records.StepStates[string(s.State)]
	switch {
	case s.Met != nil:
		return words.Row(v.Text().Trouble.Names[troubleName(*s.Met)], s.Met.Note)
	case s.Fresh != nil:
		return words.Row(v.Text().Records.Acts[string(run.Replace)], s.Fresh.Note)
	}
	switch d := v.Run.DecidedAt(s.Number); {
	case s.Undone != nil:
		acts := v.Text().Records.Acts
		return words.Row(acts[string(s.Undone.Act)], s.Reason, acts[string(run.Undo)], v.by(s.Undone.Back))
	case d != nil:
		return words.Row(state, v.by(*d.Settled))
	case s.OutOfOrder:
		return words.Row(state, v.Words.With(v.Text().Run.OutOfOrder, s.Reason))
	}
	return words.Row(state, s.Reason)
}

// stepNumber is the number of a step of the plan; those of a new fastener are
// counted separately.
func (v RunView) stepNumber(s run.Step) string {
	if nth, of := v.Run.CatchUp(s); of > 0 {
		return fmt.Sprintf(v.Text().Records.NewStep, nth, of)
	}
	return number(s.Number)
}

// number is empty for what is at no step, or in no stage.
func number(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// recordTable is one list of a record.
type recordTable struct {
	ID, Title string
	Lines     []string
}

// Tables are the lists of a record that are not empty.
func (v RecordView) Tables() []recordTable {
	t := v.Text()
	var troubles, readings, flags, overs, prints []string
	for _, seen := range v.Run.Troubles {
		troubles = append(troubles, words.Row(v.troubleLine(seen), v.by(seen.Mark)))
	}
	for _, r := range v.Run.Replaced {
		if r.Of == "" { // otherwise it is listed with its trouble
			troubles = append(troubles, words.Row(v.fastener(r.IDs)+": "+t.Records.Acts[string(run.Replace)], v.by(r.Mark)))
		}
	}
	for _, r := range v.Run.Readings {
		outside := ""
		if r.Outside && !r.Verdict.Outside() {
			outside = t.Records.Outside
		}
		again := ""
		if r.Past {
			again = v.Words.Record.ReadAgain
		}
		value := v.readLine(string(r.Value), r.Unit, r.Result)
		readings = append(readings, words.Row(v.at(r.Step, r.Place), r.Measure, value, outside, again, v.by(r.Mark)))
	}
	for _, f := range v.Run.Flags {
		flags = append(flags, words.Row(v.Words.Say(f.Finding), v.by(f.Mark)))
	}
	for _, h := range v.Run.HandOvers {
		overs = append(overs, words.Row(v.handedBy(h), h.Note))
	}
	for _, p := range v.Run.Prints {
		stale := ""
		if p.OutOfDate {
			stale = t.Pattern.OutOfDate
		}
		prints = append(prints, words.Row(t.Pattern.Sheets[p.Sheet], p.Fingerprint, v.by(p.Mark), stale))
	}
	tables := []recordTable{
		{"troubles", t.Records.Troubles, troubles}, {"flags", t.Records.Flags, flags}, {"readings", t.Records.Readings, readings},
		{"findings", t.Records.Found, v.seen(v.Run.Findings)}, {"notes", t.Records.Notes, v.seen(v.Run.Notes)},
		{"handovers", t.Records.HandOvers, overs}, {"prints", t.Records.Prints, prints},
		{"corrections", t.Records.Corrections, v.seen(v.Run.Corrections)},
	}
	return slices.DeleteFunc(tables, func(t recordTable) bool { return len(t.Lines) == 0 })
}

func (v RunView) by(m run.Mark) string {
	return words.Row(fmt.Sprintf(v.Text().Run.StateBy, v.decider(m), v.when(m.At)), m.Note)
}

func (v RunView) seen(list []run.Seen) []string {
	var all []string
	for _, s := range list {
		all = append(all, words.Row(v.at(s.Step, s.Place), v.about(s.Of), v.Text().Seen.Names[string(s.Found)], v.by(s.Mark)))
	}
	return all
}

// about describes the entry that another one refers to: what was done, and
// where.
func (v RunView) about(id string) string {
	for _, e := range v.Entries {
		if e.ID == id && id != "" {
			return words.Row(v.Text().Records.Acts[string(e.Act)], v.at(e.Step, e.Place))
		}
	}
	return ""
}

// at describes a place: a fastener, a station, or a point on the part.
func (v RunView) at(step int, place *run.Place) string {
	switch {
	case place != nil && place.Fastener != "":
		return v.fastener([]string{place.Fastener})
	case place != nil && place.Station != "":
		return place.Station
	case place != nil && place.Label != "":
		return place.Label
	case place != nil && place.At != nil:
		near := nearby.To(v.Joint.joint, geometry.Point{X: place.At[0], Y: place.At[1]})
		return cmp.Or(v.Words.Between(near.Between, near.Near), v.Text().Seen.Point)
	}
	if s := v.step(step); s != nil {
		return v.fastener(s.IDs)
	}
	return ""
}

// correctable is an entry that can be corrected.
type correctable struct{ Entry, Name string }

// Correctable lists the entries that can be corrected, latest first.
func (v RecordView) Correctable() []correctable {
	var all []correctable
	for _, e := range slices.Backward(v.Entries) {
		if e.Act == run.Correct {
			continue
		}
		all = append(all, correctable{e.ID, words.Row(v.Text().Records.Acts[string(e.Act)], v.at(e.Step, e.Place), fmt.Sprintf(v.Text().Run.StateBy, e.Who, v.when(e.Time)))})
	}
	return all
}

// shownPhoto is a photo with what it shows.
type shownPhoto struct{ Sum, Says string }

// Photos are those of what was found and of troubles.
func (v RecordView) Photos() []shownPhoto {
	var all []shownPhoto
	for _, seen := range v.Run.Troubles {
		all = append(all, shownPhoto{seen.Photo, words.Row(v.troubleLine(seen), v.by(seen.Mark))})
	}
	for _, f := range v.Run.Findings {
		all = append(all, shownPhoto{f.Photo, words.Row(v.at(f.Step, f.Place), v.Text().Seen.Names[string(f.Found)], v.by(f.Mark))})
	}
	return withPhoto(all)
}

func withPhoto(list []shownPhoto) []shownPhoto {
	return slices.DeleteFunc(list, func(p shownPhoto) bool { return p.Sum == "" })
}
