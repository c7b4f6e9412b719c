package forecast

import (
	"fmt"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

const (
	headLine     = 6.0 // between baselines of words in the size of headings
	paragraphGap = 2.0
)

// advice says in large type what to do and why, and in small what the work
// leaves.
func (l *layout) advice(run *sheet.Run) {
	a := l.ask.Advice
	large(run, scene.Bold, l.ask.Words.Say(a.Head))
	if len(a.Reasons) > 0 {
		large(run, scene.Regular, l.said(a.Reasons))
	}
	run.Y += paragraphGap
	bold(run, l.ask.Words.Say(l.f.Class.Says()))
	for _, line := range l.leaves() {
		run.Sentence(line)
	}
	run.Y += paragraphGap
}

// large sets words in the size of headings.
func large(run *sheet.Run, weight scene.Weight, words string) {
	for _, line := range font.Break(words, weight, sheet.HeadEm, run.Pen.Paper.Content()) {
		run.Room(headLine)
		run.Pen.Write(run.Pen.Left(), run.Y+5, sheet.HeadEm, weight, scene.Start, scene.Black, line)
		run.Y += headLine
	}
}

// bold sets running text in bold.
func bold(run *sheet.Run, words string) {
	for _, line := range font.Break(words, scene.Bold, sheet.TextEm, run.Pen.Paper.Content()) {
		run.Room(sheet.Line)
		run.Pen.Write(run.Pen.Left(), run.Y+3, sheet.TextEm, scene.Bold, scene.Start, scene.Black, line)
		run.Y += sheet.Line
	}
}

// leaves says what the work leaves, and what one more pass would.
func (l *layout) leaves() []string {
	lines := []string{l.lowestEnds()}
	if repeat := l.f.Repeat(); len(repeat) > 0 {
		lines = append(lines, l.said(repeat))
	}
	return append(lines, l.ask.Words.Say(l.f.Lies(l.plan)[0]))
}

// lowestEnds says where the lowest bolt ends, and who takes its load.
func (l *layout) lowestEnds() string { return l.said(l.f.Ends(l.plan)) }

// named is a bolt by its number in the order and its id.
func (l *layout) named(fastener int) string {
	return fmt.Sprintf("%d (%s)", l.numbers[fastener], l.plan.Joint.Fasteners[fastener].ID)
}
