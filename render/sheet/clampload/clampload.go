// Package clampload lays out what a joint has and needs: the clamp load in every
// state, the stress on its gasket, and which limit rules the aim. It calculates
// nothing.
package clampload

import (
	"fmt"

	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/service"
)

// Request is what there is to draw.
type Request struct {
	sheet.Request
	Joint service.Joint
	Found []finding.Finding // what speaks against the joint, warnings first
}

type layout struct {
	Request
	run *sheet.Run
}

// Document lays out the joint of a plan, with page numbers.
func Document(p plan.Plan, ask Request) scene.Document {
	w := ask.Words
	l := layout{ask, sheet.NewRun(ask.Paper, w, sheet.PlanHeading(p, w, w.Torque.AtWork.Badge, func(k plan.Kind) string {
		return words.Row(k.Name, w.Figure(k.ThreadName()), k.Class)
	}), sheet.Foot{Lines: ask.Paper.BreakText(words.Text(w.Torque.WorkedOut+".", w.Sheet.ManualFirst), ask.Paper.Content())})}
	l.verdict()
	l.run.Sentence(w.Torque.AtWork.Legend)
	for _, k := range ask.Joint.Kinds {
		l.states(k)
	}
	l.gasket()
	for _, k := range ask.Joint.Kinds {
		l.limits(k)
	}
	l.grounds()
	return sheet.Document(p, ask.Request, l.run.Pages("clamp-load"))
}

// gap is between two parts of the sheet, in mm.
const gap = 3

// verdict says first whether the joint holds, and whether only by limits that its
// file does not state.
func (l *layout) verdict() {
	w := l.Words.Torque.AtWork
	switch {
	case len(l.Found) > 0:
		l.run.Set(l.Paper.Strong(), w.HoldsNot)
	case finding.Has(l.Joint.Assumed, service.UsualWindow):
		l.run.Set(l.Paper.Strong(), w.HoldsAsUsual)
	default:
		l.run.Set(l.Paper.Strong(), w.Holds)
	}
	for _, f := range l.Found {
		l.run.Sentence("– " + l.Words.Say(f))
	}
	l.run.Y += gap / 2
}

// titled returns a title with the kind, if there are several.
func (l *layout) titled(title, kind string) string {
	if len(l.Joint.Kinds) < 2 {
		return title
	}
	return fmt.Sprintf(l.Words.Sheet.Named, kind, title)
}

func (l *layout) named(name string, says finding.Finding) string {
	return fmt.Sprintf(l.Words.Sheet.Named, name, l.Words.Say(says))
}

func (l *layout) states(k service.Kind) {
	w := l.Words.Torque.AtWork
	var bars []bar
	for _, s := range k.States {
		bars = append(bars, bar{
			name: w.States.Of(string(s.Name)), low: kN(s.Clamp.Low), nominal: kN(s.Clamp.Nominal), high: kN(s.Clamp.High), needed: kN(s.Needed),
		})
	}
	l.bars(l.titled(w.Clamp, k.Name), bars)
	if y := k.Yield; y != nil {
		l.run.Sentence(l.named(w.HotYield, y.Says()))
	}
	if f := k.Fatigue; f != nil {
		l.run.Sentence(l.named(w.Fatigue, f.Says()))
	}
}

func (l *layout) gasket() {
	g := l.Joint.Gasket
	if g == nil || !g.Window.Known() {
		return
	}
	w := l.Words.Torque.AtWork
	var bars []bar
	for _, s := range g.AtWork {
		needed := g.Window.Work
		if s.State == service.Cold {
			needed = g.Window.Seating
		}
		bars = append(bars, bar{
			name: w.States.Of(string(s.State)), low: float64(s.Stress.Low), nominal: float64(s.Stress.Nominal), high: float64(s.Stress.High), needed: float64(needed), most: float64(g.Window.Crush),
		})
	}
	l.bars(w.Pressed, bars)
	l.run.Sentence(l.named(w.Window, g.Says()))
}

func (l *layout) limits(k service.Kind) {
	if k.Aim == nil {
		return
	}
	w := l.Words.Torque.AtWork
	var bars []bar
	for _, limit := range k.Limits {
		f := kN(limit.Force)
		bars = append(bars, bar{name: w.Limits.Of(string(limit.By)), low: f, nominal: f, high: f, needed: kN(k.Aim.Needed)})
	}
	l.bars(l.titled(w.Greatest, k.Name), bars)
	l.run.Set(l.Paper.Bold(), l.named(w.Aim, k.Aim.Says()))
}

// grounds lists what is missing, and what the figures rest on.
func (l *layout) grounds() {
	w := l.Words.Torque
	l.list(w.Notes, l.Joint.Open)
	l.list(w.Assumed, l.Joint.Assumed)
}

func (l *layout) list(heading string, found []finding.Finding) {
	if len(found) == 0 {
		return
	}
	l.run.Y += gap
	l.run.Room(3 * l.Paper.Line)
	l.run.Set(l.Paper.Bold(), heading)
	for _, f := range found {
		l.run.Sentence("– " + l.Words.Say(f))
	}
}

func kN[T ~float64](newtons T) float64 { return float64(newtons) / 1000 }
