package page

import (
	"io"
	"slices"
	"strconv"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/run"
)

// RunView is the page of a run, at /runs/ID. Its script posts entries to
// /api/runs/ID/entries, follows /api/runs/ID/events, and gets what has changed from
// /runs/ID/live: see RunLive.
type RunView struct {
	Frame
	ID      string
	Run     run.View
	Joint   Joint       // JointOf: the server keeps it
	Entries []run.Entry // all, in the order in which they were taken
	Number  string      // of the machine, from the job
	Order   string      // the shop's order
	JobNote string
	Again   bool             // a later check
	Prints  []Print          // where the sheets are
	Newer   []run.Difference // in a newer file, while nothing is done; none where it is the same
}

// Run writes the page of a run.
func Run(w io.Writer, v RunView) error { return write(w, "run", v) }

// RunLive writes what an entry changes on the page of a run.
func RunLive(w io.Writer, v RunView) error { return write(w, "live", v) }

// Loosening reports whether the joint is taken apart.
func (v RunView) Loosening() bool { return v.Run.Direction == run.Loosen }

// SetsTorque reports whether a wrench is used that has a number.
func (v RunView) SetsTorque() bool {
	return slices.ContainsFunc(v.Run.Steps, func(s run.Step) bool { return s.TorqueNm > 0 })
}

// Turns reports whether fasteners are tightened by angles, for which a gauge is used.
func (v RunView) Turns() bool {
	return !v.Loosening() && slices.ContainsFunc(v.Run.Steps, func(s run.Step) bool { return s.AngleDeg > 0 })
}

// Badge says what the run does.
func (v RunView) Badge() string { return v.badge(v.Run.Direction, v.Again) }

// About names the machine and the job.
func (v RunView) About() string {
	line := v.runLines([]RunLine{{Number: v.Number, Order: v.Order}})
	return words.Row(line[0].About, v.Run.Machine) // the number first: a narrow screen cuts the rest
}

// PrintLines are the sheets, in words.
func (v RunView) PrintLines() []shownPrint { return v.printLines(v.Prints) }

// next is the step that the order asks for; nil where there is none.
func (v RunView) next() *run.Step {
	if v.Run.Next == nil {
		return nil
	}
	return v.step(*v.Run.Next)
}

func (v RunView) step(number int) *run.Step {
	i := slices.IndexFunc(v.Run.Steps, func(s run.Step) bool { return s.Number == number })
	if i < 0 {
		return nil
	}
	return &v.Run.Steps[i]
}

// takenBack are the acts that one tap takes back.
var takenBack = []run.Act{run.Done, run.Begin, run.LeaveOut, run.Report, run.AnotherRound, run.Finished, run.Measure, run.Find, run.Ready}

// Undo is the last tap that can be taken back; empty for none.
func (v RunView) Undo() string {
	if e := v.undoable(); e != nil {
		return e.ID
	}
	return ""
}

// UndoOf names what is taken back, and whose it is.
func (v RunView) UndoOf() string {
	if e := v.undoable(); e != nil {
		return words.Row(v.entryName(*e), e.Who)
	}
	return ""
}

// entryName names what an entry recorded.
func (v RunView) entryName(e run.Entry) string {
	t := v.Text()
	name := map[run.Act]string{
		run.Report: t.Trouble.Names[string(e.Trouble)], run.LeaveOut: t.Run.States["out"], run.AnotherRound: t.Run.AnotherRound,
		run.Finished: t.Run.Finished, run.Measure: e.Measure, run.Find: t.Run.Find, run.Ready: t.Run.Ready,
	}[e.Act]
	if s := v.step(e.Step); s != nil {
		return words.Row(v.stepName(*s), name)
	}
	if e.Place != nil && e.Place.Fastener != "" {
		return words.Row(v.fastener([]string{e.Place.Fastener}), name)
	}
	return name
}

// undoable is the last tap that can be taken back; nil for none. While a trouble
// stops the work that is its report, or a step that was done after it.
func (v RunView) undoable() *run.Entry {
	e := v.lastTap()
	stopped := v.next() == nil && len(v.openTroubles()) > 0
	if e == nil || v.Run.Status != run.Open || stopped && e.Act != run.Report && e.Act != run.Done {
		return nil
	}
	return e
}

func (v RunView) lastTap() *run.Entry {
	undone := map[string]bool{}
	for _, e := range slices.Backward(v.Entries) {
		switch {
		case e.Act == run.Undo:
			undone[e.Of] = true
		case slices.Contains(takenBack, e.Act):
			if !undone[e.ID] {
				if v.leftBySettling(e) {
					return nil
				}
				return &e
			}
		case e.Act == run.Replace || e.Act == run.Settle || e.Act == run.Unsure:
			return nil // what was done before it stays
		}
	}
	return nil
}

// leftBySettling reports whether a step was left out as its trouble was settled: the
// bolt is out, and does not come back by a tap.
func (v RunView) leftBySettling(e run.Entry) bool {
	return e.Act == run.LeaveOut && slices.ContainsFunc(v.Entries, func(s run.Entry) bool {
		return s.Act == run.Settle && s.Who == e.Who && s.Note == e.Note
	})
}

// NewerLines say what a newer file changes in the joint.
func (v RunView) NewerLines() []string {
	return v.changes(v.Newer, func(string) string { return "" })
}

// IsOpen reports whether entries are taken.
func (v RunView) IsOpen() bool { return v.Run.Status == run.Open }

// Boxes are the boxes of the stages with how far each is.
func (v RunView) Boxes() []shownStage {
	now := v.stageNow()
	var all []shownStage
	for _, b := range v.Joint.Stages {
		one := shownStage{StageBox: b, State: "todo"}
		switch {
		case b.Number == now:
			one.State = "now"
		case v.stageOver(b.Number) && v.leftIn(b.Number):
			one.State = "left"
		case v.stageOver(b.Number):
			one.State = "done"
		}
		all = append(all, one)
	}
	return all
}

type shownStage struct {
	StageBox
	State string // todo, now, left or done
}

// leftIn reports whether a step of a stage was left out.
func (v RunView) leftIn(stage int) bool {
	return slices.ContainsFunc(v.Run.Steps, func(s run.Step) bool { return s.Stage == stage && !s.Old && s.State == run.LeftOut })
}

// stageNow is the stage that is worked on; 0 for none.
func (v RunView) stageNow() int {
	if next := v.next(); next != nil {
		return next.Stage
	}
	for _, a := range v.Run.Asks {
		if a.Stage > 0 {
			return a.Stage
		}
	}
	for _, s := range v.Run.Steps {
		if !over(s) {
			return s.Stage
		}
	}
	return 0
}

func (v RunView) stageOver(number int) bool {
	return !slices.ContainsFunc(v.Run.Steps, func(s run.Step) bool { return s.Stage == number && !over(s) })
}

// over reports whether nothing is left to do at a step.
func over(s run.Step) bool { return s.State == run.IsDone || s.State == run.LeftOut || s.Old }

// fastener names fasteners by number and id: 3 M3. Where both are the same it is
// said once.
func (v RunView) fastener(ids []string) string {
	number, names := v.Joint.number(ids), strings.Join(ids, "+")
	if number == names || number == "" {
		return names
	}
	return number + " " + names
}

func plain(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }
