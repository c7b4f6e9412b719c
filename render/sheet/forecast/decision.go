package forecast

import (
	"fmt"

	"drawdown/render/scene"
	"drawdown/render/sheet"
)

const (
	headLine     = 6.0 // between baselines of words in the size of headings
	paragraphGap = 2.0
)

func (l *layout) advice(run *sheet.Run) {
	a := l.ask.Advice
	run.Set(largeBold, l.ask.Words.Say(a.Head))
	run.Set(large, l.said(a.Reasons))
	run.Y += paragraphGap
	run.Set(sheet.Bold, l.ask.Words.Say(l.f.Class.Says()))
	l.leaves(run)
	run.Y += paragraphGap
}

var (
	large     = sheet.Style{Em: sheet.HeadEm, Step: headLine, Weight: scene.Regular, Ink: scene.Black}
	largeBold = sheet.Style{Em: sheet.HeadEm, Step: headLine, Weight: scene.Bold, Ink: scene.Black}
)

func (l *layout) leaves(run *sheet.Run) {
	run.Sentence(l.said(l.f.Ends(l.plan))) // where the lowest bolt ends, and who takes its load
	run.Sentence(l.said(l.f.Repeat()))
	run.Sentence(l.ask.Words.Say(l.f.Lies(l.plan)[0]))
}

func (l *layout) named(fastener int) string {
	return fmt.Sprintf("%d (%s)", l.numbers[fastener], l.plan.Joint.Fasteners[fastener].ID)
}
