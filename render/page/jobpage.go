package page

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// JobView is the page of a job, at /jobs/ID. Its script posts to
// /api/jobs/ID/entries and to /api/runs.
type JobView struct {
	Frame
	ID                      string
	Job                     teardown.View
	Number, Order, Note, By string
	Started                 time.Time
	Runs                    []RunLine
	Newer                   []run.Difference // of the file as it is now; none where it is the same
}

// Job writes the page of a job.
func Job(w io.Writer, v JobView) error { return write(w, "job", v) }

// IsOpen reports whether entries are taken.
func (v JobView) IsOpen() bool { return v.Job.Status == teardown.Open }

// About names the machine, the order and who started the job.
func (v JobView) About() string {
	line := v.runLines([]RunLine{{Machine: v.Job.Machine, Number: v.Number, Order: v.Order}})
	started := v.when(v.Started)
	if v.By != "" {
		started = fmt.Sprintf(v.Text().Job.StartedBy, v.By, started)
	}
	return words.Row(line[0].About, started, v.Note)
}

// ClosedLine says who closed the job; empty while it is open.
func (v JobView) ClosedLine() string {
	m := v.Job.ClosedBy
	if m == nil {
		return ""
	}
	return fmt.Sprintf(v.Text().Job.ClosedBy, m.By, v.when(m.At))
}

// jobList is the teardown or the reassembly.
type jobList struct {
	ID, Title string
	Lines     []jobLine
	OnPaper   []jobLine // part steps that can be entered from paper
}

// jobLine is a line of a list, in words, with what can be done there.
type jobLine struct {
	Title, About, State string
	Run                 string        // its address
	Start               run.Direction // a run to start; empty for none
	Joint, Bar          string        // of that run
	Part                int           // a part step to tick; 0 for none
	OutOfOrder          bool          // the part step, or the start of the run, needs a reason
	Next                bool          // it is the first of its list that is not done
	Caution             bool
	Undo                string // the entry of a part step that can be taken back
}

// Lists are the teardown and the reassembly.
func (v JobView) Lists() []jobList {
	t := v.Text().Job
	down, up := v.jobLines(v.Job.Teardown, run.Loosen, t.StartLoosen), v.jobLines(v.Job.Rebuild, run.Tighten, t.StartTighten)
	begun := slices.ContainsFunc(v.Job.Rebuild, func(l teardown.LineNow) bool { return l.State != teardown.ToDo })
	if !begun && len(down) > 1 && slices.ContainsFunc(down, func(l jobLine) bool { return l.Next }) {
		for i := range up {
			up[i].Next = false // it comes after the teardown
		}
	}
	return []jobList{v.jobList("teardown", t.Teardown, down), v.jobList("rebuild", t.Rebuild, up)}
}

func (v JobView) jobList(id, title string, lines []jobLine) jobList {
	open := slices.DeleteFunc(slices.Clone(lines), func(l jobLine) bool { return l.Part == 0 })
	return jobList{id, title, lines, open}
}

func (v JobView) jobLines(list []teardown.LineNow, d run.Direction, start string) []jobLine {
	t := v.Text()
	var all []jobLine
	earlier := false // a line before it is not done
	for _, l := range list {
		one := jobLine{Title: l.Title + l.Part + l.Note, State: t.Job.States[string(l.State)], Caution: l.Caution, OutOfOrder: earlier}
		if l.By != "" {
			one.State = words.Row(one.State, fmt.Sprintf(t.Run.StateBy, l.By, t.Paper.When(l.Source == run.OnPaper, l.Day, v.when(l.At))))
		}
		if l.Fasteners > 0 {
			one.About = t.Home.Fasteners.Of(l.Fasteners)
		}
		one.About = words.Row(one.About, l.Remark)
		if v.changed(l.Joint) && l.State != teardown.IsDone && v.IsOpen() {
			one.About = words.Row(one.About, t.Job.Newer)
		}
		switch {
		case l.Run != "" && l.State == teardown.IsDone:
			one.Run = "/records/" + l.Run
		case l.Run != "":
			one.Run = "/runs/" + l.Run
		case !v.IsOpen():
		case l.State == teardown.IsOut:
		case l.Joint != "":
			one.Start, one.Joint, one.Bar = d, l.Joint, start
		case l.State != teardown.IsDone:
			one.Part = l.Number
		}
		one.Next = v.IsOpen() && !earlier && l.State != teardown.IsDone
		earlier = earlier || l.State != teardown.IsDone
		all = append(all, one)
	}
	for i, l := range slices.Backward(list) {
		if l.Entry != "" && v.IsOpen() {
			all[i].Undo = l.Entry
			break // what was done before it stays
		}
	}
	return all
}

// RunLines are the runs of the job, in words.
func (v JobView) RunLines() []shownRun { return v.runLines(v.Runs) }

// changes says what a newer file changes, stage by stage; title names a joint, or is
// empty where there is only one.
func (f Frame) changes(list []run.Difference, title func(joint string) string) []string {
	t := f.Text()
	var all []string
	for _, d := range list {
		if d.What == run.ChangedFile && len(list) > 1 {
			continue // the others say what
		}
		for _, p := range d.Parts() {
			stage := ""
			if p.Stage > 0 {
				stage = t.Records.Columns["stage"] + " " + strconv.Itoa(p.Stage)
			}
			what := slices.DeleteFunc([]string{title(d.Joint), t.Job.Changes[string(d.What)], stage}, func(s string) bool { return s == "" })
			all = append(all, fmt.Sprintf(t.Job.Change, strings.Join(what, ", "), p.Before, p.After))
		}
	}
	return all
}

// NewerLines say what the file changes as it is now.
func (v JobView) NewerLines() []string { return v.differences(v.Newer) }

func (v JobView) differences(list []run.Difference) []string {
	return v.changes(list, func(joint string) string {
		if joint == "" || len(v.Job.Rebuild) < 2 {
			return ""
		}
		return v.Job.TitleOf(joint)
	})
}

// changed reports whether a newer file changes a joint.
func (v JobView) changed(joint string) bool {
	return slices.ContainsFunc(v.Newer, func(d run.Difference) bool { return joint != "" && d.Joint == joint })
}

// Tables are the lists of what was seen, that hold something.
func (v JobView) Tables() []recordTable {
	t := v.Text()
	by := func(e run.Entry) string { return fmt.Sprintf(t.Run.StateBy, e.Who, v.when(e.Time)) }
	var found, measured, notes, overs, adopted, accepted []string
	for _, e := range v.Job.Findings {
		what := t.Trouble.Names[string(e.Trouble)]
		if e.Act == run.Unsure {
			what = t.Trouble.Names["unsure"]
		}
		found = append(found, words.Row(v.seenAt(e), what, t.Seen.Names[string(e.Found)], e.Note, by(e)))
	}
	for _, e := range v.Job.Measured {
		measured = append(measured, words.Row(v.seenAt(e.Entry), e.Measure, v.readLine(string(e.Value), e.Unit, e.Result), by(e.Entry)))
	}
	for _, e := range v.Job.Notes {
		notes = append(notes, words.Row(e.Note, by(e)))
	}
	for _, e := range v.Job.HandOvers {
		handed := by(e)
		if e.To != "" {
			handed = fmt.Sprintf(t.Records.HandedTo, e.Who, e.To, v.when(e.Time))
		}
		overs = append(overs, words.Row(handed, e.Note))
	}
	for _, e := range v.Job.Adopted {
		adopted = append(adopted, words.Row(by(e), e.Note))
		if e.Revision != nil {
			adopted = append(adopted, v.differences(e.Revision.Differences)...)
		}
	}
	for _, p := range v.Points() {
		if !v.IsOpen() {
			accepted = append(accepted, words.Row(p.Text, p.Accepted))
		}
	}
	return slices.DeleteFunc([]recordTable{
		{"points", v.Words.Record.OpenPoints, accepted}, {"findings", t.Records.Found, found}, {"readings", t.Records.Readings, measured}, {"notes", t.Records.Notes, notes},
		{"handovers", t.Records.HandOvers, overs}, {"adopted", t.Job.Adopted, adopted},
	}, func(t recordTable) bool { return len(t.Lines) == 0 })
}

// Photos are those of what was found, on the job and in its runs.
func (v JobView) Photos() []shownPhoto {
	t := v.Text()
	var all []shownPhoto
	for _, e := range v.Job.Findings {
		what := t.Trouble.Names[string(e.Trouble)] + t.Seen.Names[string(e.Found)]
		all = append(all, shownPhoto{e.Photo, words.Row(v.seenAt(e), what, e.Note, fmt.Sprintf(t.Run.StateBy, e.Who, v.when(e.Time)))})
	}
	return withPhoto(all)
}

// seenAt names where something was seen: the joint, where there are several, and
// the place.
func (v JobView) seenAt(e run.Entry) string {
	joint := ""
	if len(v.Job.Rebuild) > 1 {
		if joint = e.Joint; joint != "" {
			joint = v.Job.TitleOf(joint)
		}
	}
	place := e.Place.Measured().Name()
	if e.Place == nil && e.Step > 0 {
		place = strconv.Itoa(e.Step)
	}
	return words.Row(joint, place)
}
