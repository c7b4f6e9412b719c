package forecast

import (
	"fmt"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
)

const paragraphGap = 2.0

func (l *layout) advice(run *sheet.Run) {
	a := l.ask.Advice
	run.Set(run.Pen.Paper.Strong(), l.ask.Words.Say(a.Head))
	run.Set(run.Pen.Paper.Large(), l.said(a.Reasons))
	run.Y += paragraphGap
	run.Set(run.Pen.Paper.Bold(), l.ask.Words.Say(l.f.Class.Says()))
	l.leaves(run)
	run.Y += paragraphGap
}

func (l *layout) leaves(run *sheet.Run) {
	run.Sentence(l.said(l.f.Ends(l.plan))) // force of the lowest bolt, and which bolt takes its load
	run.Sentence(l.said(l.f.Repeat()))
	run.Sentence(l.ask.Words.Say(l.f.Lies(l.plan)[0]))
}

func (l *layout) basis(run *sheet.Run) {
	w := l.ask.Words.Forecast.Basis
	if stated := setup.Basis(l.f.Stated); len(stated) > 0 {
		run.Sentence(fmt.Sprintf(w.Stated, l.joined(stated)))
	}
	assumed := append(l.ask.Words.SayAll(setup.Basis(l.f.Assumed)), w.Unlisted)
	run.Sentence(fmt.Sprintf(w.Assumed, strings.Join(assumed, l.ask.Words.Card.Checks.And)))
}

// joined returns findings joined by the word for and.
func (l *layout) joined(list []finding.Finding) string {
	return strings.Join(l.ask.Words.SayAll(list), l.ask.Words.Card.Checks.And)
}

// said returns findings as consecutive sentences.
func (l *layout) said(list []finding.Finding) string {
	return strings.Join(l.ask.Words.SayAll(list), " ")
}

func (l *layout) foundations(run *sheet.Run) {
	w := l.ask.Words.Forecast
	run.Sentence(l.hundred())
	run.Sentence(l.ask.Words.Say(l.f.FoundationTaken()))
	run.Y += paragraphGap
	l.basis(run)
	run.Y += paragraphGap
	notInModel := fmt.Sprintf(w.NotInModel, l.joined(interaction.LeftOut(false)))
	whole := run.Pen.Paper.BreakAll([]string{notInModel}, l.ask.Paper.Content())
	run.Room(whole.Height(l.ask.Paper.Line)) // keep it together
	run.Sentence(notInModel)
	run.Y += paragraphGap
}

func (l *layout) hundred() string {
	return fmt.Sprintf(l.ask.Words.Forecast.Basis.Hundred, l.joined(procedure.Say(l.f.Hundreds)))
}
