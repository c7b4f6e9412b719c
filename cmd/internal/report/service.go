package report

import (
	"fmt"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
	"drawdown/sequence/service"
)

// workColumns are those of what is left at work.
var workColumns = Columns{-33, 11, 11, 11, 11}

// printService prints what the joint of a file has and needs.
func (p Report) printService(j service.Joint, answers []figures.Answer) {
	if j.Gasket == nil && !j.Stated {
		return
	}
	p.printGasket(j.Gasket)
	for _, a := range answers {
		if k := j.Kind(a.Kind); k != nil {
			p.printAtWork(*k)
			p.printLimits(*k)
		}
	}
	p.grounds(j.Open, j.Assumed, j.Sources)
}

func (p Report) printGasket(g *service.Gasket) {
	if g == nil {
		return
	}
	w := p.Words.Torque.AtWork
	p.line("\n", WorkGasket, finding.Values{"gasket": finding.Term(g.Kind), "area": g.AreaMm2, "thickness": g.Thickness})
	if g.Window.Known() {
		p.fact(w.Window, p.Words.Say(g.Says()))
	}
	if c := g.Compression; c.Nominal > 0 {
		p.fact(w.Compressed, p.say(WorkCompressed, finding.Values{"low": c.Low, "nominal": c.Nominal, "high": c.High}))
	}
	workColumns.Row(p.To, "  "+w.Stress, w.Low, w.Nominal, w.High, w.Needed)
	row := func(name string, s service.Stresses, needed string) {
		workColumns.Row(p.To, "    "+name, p.Words.Value(s.Low, "~"), p.Words.Value(s.Nominal, "~"), p.Words.Value(s.High, "~"), needed)
	}
	if len(g.AtWork) == 0 {
		row(w.States.Cold, g.Tightened, p.needed(float64(g.Window.Seating)))
	}
	for _, s := range g.AtWork {
		needed := float64(g.Window.Work)
		if s.State == service.Cold {
			needed = float64(g.Window.Seating)
		}
		row(w.States.Of(string(s.State)), s.Stress, p.needed(needed))
	}
}

// needed formats a figure that may be unknown.
func (p Report) needed(figure float64) string {
	return either(figure > 0, p.Words.Value(figure, "~"), none)
}

func (p Report) printAtWork(k service.Kind) {
	w := p.Words.Torque.AtWork
	fmt.Fprintln(p.To)
	workColumns.Row(p.To, "  "+p.say(WorkLeft, finding.Values{"kind": k.Name}), w.Low, w.Nominal, w.High, w.Needed)
	for _, s := range k.States {
		f := s.Clamp
		workColumns.Row(p.To, "    "+w.States.Of(string(s.Name)), p.Words.Value(f.Low/1000, "~"), p.Words.Value(f.Nominal/1000, "~"), p.Words.Value(f.High/1000, "~"), p.needed(float64(s.Needed/1000)))
	}
	if y := k.Yield; y != nil {
		p.fact(w.HotYield, p.Words.Say(y.Says()))
	}
	if f := k.Fatigue; f != nil {
		p.fact(w.Fatigue, p.Words.Say(f.Says()))
	}
}

// printLimits draws a bar for each limit of the preload, the tightest first.
func (p Report) printLimits(k service.Kind) {
	if k.Aim == nil {
		return
	}
	w := p.Words.Torque.AtWork
	fmt.Fprintln(p.To)
	p.text(p.say(WorkLimits, finding.Values{"kind": k.Name}))
	const widest = 30
	most := k.Limits[len(k.Limits)-1].Force
	row := func(name string, force float64) {
		length := int(float64(widest) * force / float64(most))
		fmt.Fprintf(p.To, "    %-29s %11s  %s\n", name, p.Words.Value(force/1000, "~"), strings.Repeat("■", max(1, min(length, widest))))
	}
	if k.Aim.Needed > 0 {
		row(w.Needed, float64(k.Aim.Needed))
	}
	for _, l := range k.Limits {
		row(w.Limits.Of(string(l.By)), float64(l.Force))
	}
	p.fact(w.Aim, p.Words.Say(k.Aim.Says()))
}
