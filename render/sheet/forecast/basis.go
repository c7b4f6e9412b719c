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

func (l *layout) basis(run *sheet.Run) {
	w := l.ask.Words.Forecast.Basis
	if stated := setup.Basis(l.f.Stated); len(stated) > 0 {
		run.Sentence(fmt.Sprintf(w.Stated, l.joined(stated)))
	}
	assumed := append(l.ask.Words.SayAll(setup.Basis(l.f.Assumed)), w.Unlisted)
	run.Sentence(fmt.Sprintf(w.Assumed, strings.Join(assumed, l.ask.Words.Card.Checks.And)))
}

// joined says findings in a row.
func (l *layout) joined(list []finding.Finding) string {
	return strings.Join(l.ask.Words.SayAll(list), l.ask.Words.Card.Checks.And)
}

// said says findings one after the other, as sentences.
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
	whole := sheet.BreakAll([]string{notInModel}, l.ask.Paper.Content())
	run.Room(whole.Height()) // nobody misses its end on another page
	run.Sentence(notInModel)
	run.Y += paragraphGap
}

func (l *layout) hundred() string {
	return fmt.Sprintf(l.ask.Words.Forecast.Basis.Hundred, l.joined(procedure.Say(l.f.Hundreds)))
}
