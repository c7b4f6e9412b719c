package page

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// jobNeed is something that must be ready.
type jobNeed struct {
	Text, State           string
	Ready                 bool
	Fastener, Kind, Joint string
	ToFit                 bool   // it is there, and nobody said that it is in
	Undo                  string // the last entry about it alone, that can be taken back
}

// Needs lists what must be ready before the joints are tightened: fasteners by joint,
// then what the file lists, with whether it was fitted.
func (v JobView) Needs() []jobNeed {
	t := v.Text()
	var all []jobNeed
	for _, n := range v.Job.Needs {
		if v.Job.Named(n) || n.Among {
			continue // listed below, or counted with its kind
		}
		one := jobNeed{Ready: n.Met(), Fastener: n.ID, Joint: n.Joint}
		switch {
		case n.ID != "":
			one.Text = v.needFastener(n.ID, n.Trouble)
		case n.Gasket != "":
			one.Text, one.Kind = fmt.Sprintf(t.Run.NeedGasket, n.Count, v.Words.Term(finding.Term(n.Gasket))), n.Kind
		default:
			one.Text, one.Kind = fmt.Sprintf(t.Run.NeedKind, n.Count, n.Kind), n.Kind
		}
		if len(v.Job.Rebuild) > 1 {
			one.Text = v.Job.TitleOf(n.Joint) + ": " + one.Text
		}
		one.State = v.readyState(n.Ready, n.Count, n.Met(), nil)
		one.Undo = v.lastSaid(func(e run.Entry) bool {
			return e.Joint == n.Joint && e.Kind == one.Kind && (e.Place != nil && e.Place.Fastener == n.ID || e.Place == nil && n.ID == "")
		})
		all = append(all, one)
	}
	for _, s := range v.Job.Supplies {
		all = append(all, v.supplied(s))
	}
	return all
}

// needFastener asks for a new one, and says what the old one was condemned for, where it
// was.
func (f Frame) needFastener(name string, t run.Trouble) string {
	if t == "" {
		return fmt.Sprintf(f.Text().Run.NeedNew, name)
	}
	return fmt.Sprintf(f.Text().Run.NeedFastener, name, f.Text().Trouble.Names[string(t)])
}

// supplied is a line of what the file lists.
func (v JobView) supplied(s teardown.Supply) jobNeed {
	count := ""
	if s.Count > 0 {
		count = fmt.Sprintf("%d × ", s.Count)
	}
	var joints []string
	for _, of := range s.Joints {
		joints = append(joints, v.Job.TitleOf(of))
	}
	return jobNeed{
		Text:  words.Row(count+v.Words.Term(finding.Term(s.What)), s.Part, strings.Join(joints, ", ")),
		State: v.readyState(s.Ready, s.Count, s.Met(), s.Fitted), Ready: s.Met(), Kind: s.What, ToFit: s.UsedOnce() && s.Met() && s.Fitted == nil,
		Undo: v.lastSaid(func(e run.Entry) bool { return e.Kind == s.What && e.Place == nil }),
	}
}

// readyState says how much is there, and who fitted it.
func (v JobView) readyState(ready, count int, met bool, fitted *run.Mark) string {
	t := v.Text().Job
	switch {
	case fitted != nil:
		return fmt.Sprintf(t.IsFitted, fitted.By, v.when(fitted.At)) + " ✓"
	case count > 0:
		said := fmt.Sprintf(t.CountReady, ready, count)
		if met {
			said += " ✓"
		}
		return said
	case met:
		return t.OneReady + " ✓"
	}
	return ""
}

// lastSaid returns the last entry of those that say that something is there or in.
func (v JobView) lastSaid(about func(run.Entry) bool) string {
	for _, e := range slices.Backward(v.Job.Said) {
		if about(e) {
			return e.ID
		}
	}
	return ""
}

// UndoAll is the last entry by which all is ready or fitted.
func (v JobView) UndoAll() string {
	return v.lastSaid(func(e run.Entry) bool { return e.Kind == "" && e.Place == nil })
}

// Unready reports whether something is not ready.
func (v JobView) Unready() bool {
	return slices.ContainsFunc(v.Needs(), func(n jobNeed) bool { return !n.Ready })
}

// ToFit reports whether something is there that nobody said is in.
func (v JobView) ToFit() bool {
	return slices.ContainsFunc(v.Needs(), func(n jobNeed) bool { return n.ToFit })
}

// shownPoint is something that is open when the job is closed, in words.
type shownPoint struct{ Key, Text, Accepted string }

// Points are what is open or outside its limits.
func (v JobView) Points() []shownPoint {
	var all []shownPoint
	for _, p := range v.Job.Points {
		one := shownPoint{Key: p.Key, Text: words.Capital(v.Words.Say(p.Finding))}
		if m := p.Accepted; m != nil {
			one.Accepted = fmt.Sprintf(v.Text().Job.AcceptedBy, m.By, v.when(m.At), m.Note)
		}
		all = append(all, one)
	}
	return all
}
