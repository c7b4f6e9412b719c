package forecast

import (
	"fmt"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
)

const (
	headLine     = 6.0 // between baselines of words in the size of headings
	paragraphGap = 2.0
)

// decision is what to do about a joint, and why.
type decision struct {
	head    string
	reasons []string
}

// verdict says in large type what to do and why, and in small what the work
// leaves.
func (l *layout) verdict(run *sheet.Run) {
	w := l.ask.Words.Forecast
	d := l.decided()
	large(run, scene.Bold, d.head)
	if len(d.reasons) > 0 {
		large(run, scene.Regular, strings.Join(d.reasons, " "))
	}
	run.Y += paragraphGap
	bold(run, fmt.Sprintf(w.Acts, w.ActsClass[string(l.f.Class)]))
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

// decided is the verdict on the plan beside other ways, or, without those, what
// the class asks for. What must never be turned again stands with it.
func (l *layout) decided() decision {
	w := l.ask.Words.Forecast
	d := decision{head: l.advice()}
	switch {
	case len(l.f.Falls) > 0:
		d = decision{head: w.Other.MendFile}
	case l.ask.Others != nil:
		d = l.judged(l.ask.Others.Verdict)
	}
	if onAngle := l.onAngle(); l.f.Class != advice.Negligible && len(onAngle) > 0 {
		d.reasons = append(d.reasons, fmt.Sprintf(w.NeverAgain, strings.Join(onAngle, ", ")))
	}
	return d
}

// advice is what the class of the joint asks for.
func (l *layout) advice() string {
	w := l.ask.Words.Forecast
	words := w.Strong
	switch l.f.Class {
	case advice.Negligible:
		return w.Negligible
	case advice.Noticeable:
		words = w.Noticeable
	}
	if len(l.onAngle()) > 0 {
		words += " " + w.NotOnAngle
	}
	return words
}

// judged is what the comparison with other ways comes to.
func (l *layout) judged(v advice.Verdict) decision {
	w := l.ask.Words.Forecast.Other
	switch v.Kind {
	case advice.MendFile:
		return decision{head: w.MendFile}
	case advice.LeaveIt:
		if v.BeforeRepeats > 0 {
			return decision{w.Leave, []string{fmt.Sprintf(w.LeaveRepeat, l.percent(v.BeforeRepeats), l.percent(v.OwnLowest), l.percent(v.FrictionSD))}}
		}
		return decision{w.Leave, []string{fmt.Sprintf(w.LeaveKeeps, l.percent(v.OwnLowest), l.percent(v.FrictionSD))}}
	case advice.NoCure:
		reason := fmt.Sprintf(w.NoCure, l.percent(v.OwnLowest))
		if v.Way != advice.OwnWay {
			reason = fmt.Sprintf(w.NoCureWith, l.percent(v.OwnLowest), l.change(v), l.percent(v.BestLowest))
		}
		reasons := []string{reason}
		if v.PassedOver {
			reasons = append(reasons, w.PassedOver)
		}
		return decision{w.UntilNoNutTurns, l.withPasses(reasons, v)}
	}
	return decision{fmt.Sprintf(w.AskFor, l.change(v)), l.whyAsk(v)}
}

// whyAsk says what the way that is worth asking for does, good and bad.
func (l *layout) whyAsk(v advice.Verdict) []string {
	w := l.ask.Words.Forecast.Other
	reasons := []string{fmt.Sprintf(w.Lifts, l.percent(v.OwnLowest), l.percent(v.BestLowest), l.percent(v.OwnNominal), l.percent(v.BestNominal))}
	if v.BestUnevenMm > 0 {
		reasons = append(reasons, fmt.Sprintf(w.ButUneven, l.figure("%.2f", v.BestUnevenMm), l.figure("%.2f", v.OwnUnevenMm)))
	}
	if v.Rules == judge.Departs {
		reasons = append(reasons, w.ButDeparts)
	}
	if v.StillStrong {
		reasons = l.withPasses(append(reasons, w.UntilNoNutTurns), v)
	}
	return append(reasons, w.MakerStands)
}

// withPasses adds how many passes it takes, where somebody can say.
func (l *layout) withPasses(reasons []string, v advice.Verdict) []string {
	if v.Repeats == 0 {
		return reasons
	}
	return append(reasons, fmt.Sprintf(l.ask.Words.Forecast.Other.Passes, v.Repeats))
}

// change names what the best trial does, so that it is understood without the
// table.
func (l *layout) change(v advice.Verdict) string {
	switch v.Way {
	case advice.Recipe:
		return l.ask.Words.Forecast.Other.RecipeIs
	case advice.LastTwice:
		var again []string
		for _, h := range v.Again() {
			again = append(again, l.ask.Words.Figure(h.Torque.String())+" "+h.Kind)
		}
		return fmt.Sprintf(l.ask.Words.Forecast.Other.OnceMore, strings.Join(again, ", "))
	}
	return l.wayName(v.Way)
}

// leaves says what the work leaves, and what one more pass would.
func (l *layout) leaves() []string {
	w := l.ask.Words.Forecast
	lines := []string{l.lowestEnds()}
	switch more := l.f.OneMore; {
	case more != nil && l.f.Repeats == 0 && !l.f.RepeatIsFelt():
		lines = append(lines, w.NotFelt)
	case more != nil:
		lines = append(lines, fmt.Sprintf(w.OneMore, l.span(more.Spread.Min)))
	}
	worst := l.f.Passes[l.f.WorstPass()]
	return append(lines, fmt.Sprintf(w.Uneven, worst.Number, l.millimetres(worst.UnevenMm)))
}

// lowestEnds says where the lowest bolt ends, and who takes its load.
func (l *layout) lowestEnds() string {
	w := l.ask.Words.Forecast
	words := fmt.Sprintf(w.LowestEnds, l.span(l.f.Last().Spread.Min))
	if t := l.f.Taken; t != nil && l.f.Class != advice.Negligible {
		words += " " + fmt.Sprintf(w.Taken, l.figure("%.0f", t.Points), l.named(t.By))
	}
	return words
}

// onAngle lists the kinds that an angle ends.
func (l *layout) onAngle() (kinds []string) {
	for _, h := range l.f.Hundreds {
		if h.By == procedure.ByMeanAtAngle {
			kinds = append(kinds, h.Kind)
		}
	}
	return kinds
}

// named is a bolt by its number in the order and its id.
func (l *layout) named(fastener int) string {
	return fmt.Sprintf("%d (%s)", l.numbers[fastener], l.plan.Joint.Fasteners[fastener].ID)
}

// percent prints a whole percentage without its sign.
func (l *layout) percent(f float64) string { return l.figure("%.0f", f) }
