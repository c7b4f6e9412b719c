package forecast

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/sheet"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
)

// doubt says in the language of the sheet why the forecast is not to be trusted.
func (l *layout) doubt(d advice.Doubt) string {
	w := l.ask.Words.Forecast.Doubt
	switch d.Kind {
	case advice.PreviewOnly:
		return w.Preview
	case advice.TorqueFalls:
		f := d.Fall
		return fmt.Sprintf(w.TorqueFalls, f.Stage, f.Kind, l.ask.Words.Figure(f.Torque.String()), l.ask.Words.Figure(f.BeforeTorque.String()), f.Before)
	case advice.PastYield:
		return fmt.Sprintf(w.PastYield, d.Name, l.figure("%.0f", d.Figure))
	case advice.NoSnugPass:
		return w.NoSnugPass
	case advice.SlackAtTheEnd:
		return fmt.Sprintf(w.SlackAtTheEnd, d.Bolts)
	case advice.SlackOnTheWay:
		return fmt.Sprintf(w.SlackOnTheWay, d.Bolts)
	case advice.HardeningCount:
		return w.Hardening
	case advice.ThickForAPlate:
		return fmt.Sprintf(w.Thick, l.figure("%.1f", d.Figure))
	}
	return d.String()
}

// basis says what the forecast rests on: what the file states, and what is
// assumed.
func (l *layout) basis() (lines []string) {
	w := l.ask.Words.Forecast.Basis
	var stated, assumed []string
	for _, f := range l.f.Basis {
		if f.Assumed {
			assumed = append(assumed, l.fact(f))
		} else {
			stated = append(stated, l.fact(f))
		}
	}
	if len(stated) > 0 {
		lines = append(lines, fmt.Sprintf(w.Stated, strings.Join(stated, l.ask.Words.Card.Checks.And)))
	}
	return append(lines, fmt.Sprintf(w.Assumed, strings.Join(append(assumed, l.unlisted()...), l.ask.Words.Card.Checks.And)))
}

// unlisted is what is assumed without a fact of its own.
func (l *layout) unlisted() (list []string) {
	w := l.ask.Words.Forecast.Basis
	if l.separate() {
		list = append(list, w.Separate)
	}
	if l.facesMeet() {
		list = append(list, w.FacesMeet)
	}
	return append(list, w.Unlisted)
}

// separate says whether the parts are modelled each on its own, such as caps: a
// joint of clusters for which the basis tells of a part, and of no gasket under
// the whole of it. A preview knows no pieces.
func (l *layout) separate() bool {
	if slices.ContainsFunc(l.f.Doubts, func(d advice.Doubt) bool { return d.Kind == advice.PreviewOnly }) {
		return false
	}
	return len(l.plan.Joint.Clusters) > 0 && l.rests(setup.PartThickness) &&
		!l.rests(setup.GasketStrip) && !l.rests(setup.GasketOnWholeFace) && !l.rests(setup.GasketOnRaisedFace)
}

// rests says whether the forecast rests on a fact of a kind.
func (l *layout) rests(on setup.FactKind) bool {
	return slices.ContainsFunc(l.f.Basis, func(f setup.Fact) bool { return f.Of == on })
}

// facesMeet says whether no gasket keeps the faces apart.
func (l *layout) facesMeet() bool {
	return slices.ContainsFunc(l.f.Basis, func(f setup.Fact) bool {
		if f.Of != setup.GasketKind {
			return false
		}
		band, err := compliance.Gasket(f.Word).StiffnessMPaPerMm()
		return err == nil && band == (bounds.Band{})
	})
}

// foundations says what the figures rest on, and what they leave out.
func (l *layout) foundations(run *sheet.Run) {
	w := l.ask.Words.Forecast
	run.Sentence(l.hundred())
	run.Sentence(fmt.Sprintf(w.Foundation, l.rough(l.f.FoundationMPaPerMm)))
	run.Y += paragraphGap
	for _, line := range l.basis() {
		run.Sentence(line)
	}
	run.Y += paragraphGap
	whole := sheet.BreakAll([]string{w.NotInModel}, l.ask.Paper.Content())
	run.Room(whole.Height()) // nobody misses its end on another page
	run.Sentence(w.NotInModel)
	run.Y += paragraphGap
}

// hundred says what 100 % is.
func (l *layout) hundred() string {
	w := l.ask.Words.Forecast.Basis
	var list []string
	for _, h := range l.f.Hundreds {
		force := l.figure("%.3g", h.ForceN.Nominal/1000)
		switch h.By {
		case procedure.ByLastTorque:
			list = append(list, fmt.Sprintf(w.HundredTorque, h.Kind, l.ask.Words.Figure(h.Torque.String()), force))
		case procedure.ByMeanAtAngle:
			list = append(list, fmt.Sprintf(w.HundredMean, h.Kind))
		case procedure.ByYieldLoad:
			list = append(list, fmt.Sprintf(w.HundredYield, h.Kind, force))
		default:
			list = append(list, fmt.Sprintf(w.HundredForce, force))
		}
	}
	return fmt.Sprintf(w.Hundred, strings.Join(list, l.ask.Words.Card.Checks.And))
}

func (l *layout) fact(f setup.Fact) string {
	w := l.ask.Words.Forecast.Basis
	words, known := w.Facts[string(f.Of)]
	if !known {
		return f.String()
	}
	if !strings.Contains(words, "%s") {
		return words
	}
	return fmt.Sprintf(words, l.factFigure(f))
}

// factFigure is the word or the figure of a fact.
func (l *layout) factFigure(f setup.Fact) string {
	w := l.ask.Words.Forecast.Basis
	switch f.Of {
	case setup.PartMaterial, setup.UnderMaterial:
		return known(w.Materials, f.Word)
	case setup.GasketKind:
		return known(w.Gaskets, f.Word)
	case setup.GasketStiffness:
		return l.rough(f.Band)
	}
	if f.From > 0 {
		return l.ask.Words.Figure(fmt.Sprintf("%g–%.4g mm", float64(f.From), float64(f.To)))
	}
	return l.ask.Words.Figure(fmt.Sprintf("%.4g mm", float64(f.To)))
}

// known gives the word of the language, or, of what the file has in words of its
// own, these.
func known(words map[string]string, word string) string {
	if translated, ok := words[word]; ok {
		return translated
	}
	return word
}
