package forecast

import (
	"fmt"
	"strings"

	"drawdown/render/sheet"
	"drawdown/sequence/interaction/ways"
)

func (l *layout) others(run *sheet.Run) {
	c := l.ask.Others
	if c == nil {
		return
	}
	w := l.ask.Words.Forecast.Other
	run.Room(70) // the text and some rows of the table
	run.Y += 2
	run.Pen.Head(run.Pen.Left(), run.Y+4, w.Heading)
	run.Y += 8
	for _, line := range l.ask.Words.SayAll(c.Snug) {
		run.Sentence(line)
	}
	run.Sentence(w.Says)
	run.Y += 2
	table := sheet.Table{Columns: []sheet.Column{
		{Head: w.Way, Share: 50}, {Head: w.Least, Share: 20}, {Head: w.SD, Share: 13}, {Head: w.Uneven, Share: 20}, {Head: w.Path, Share: 13}, {Head: w.Rules, Share: 24},
	}}
	for k, trial := range c.Trials {
		name := l.rowName(trial)
		if k > 0 && k == c.Advice.Best {
			name = "→ " + name
		}
		table.Rows = append(table.Rows, sheet.Row{Bold: k == 0 || k == c.Advice.Best, Words: []string{
			name, l.span(trial.End.Min), l.ends(trial.End.SD, "%.0f"), l.ends(trial.UnevenMm, "%.2f"), l.figure("%.1f", trial.TravelM), w.RuleWords[string(trial.Rules)],
		}})
	}
	run.Close = true
	table.Draw(run)
	run.Close = false
	l.orders(run)
}

func (l *layout) rowName(trial ways.Trial) string {
	name := l.ask.Words.Term(trial.Way)
	for _, also := range trial.Also {
		name += " = " + l.ask.Words.Term(also)
	}
	if trial.Less {
		name += " (" + l.ask.Words.Forecast.Other.OnlyToCompare + ")"
	}
	return name
}

func (l *layout) orders(run *sheet.Run) {
	for _, trial := range l.ask.Others.Orders() {
		run.Sentence(fmt.Sprintf(l.ask.Words.Forecast.Other.OrderOf, l.ask.Words.Term(trial.Way), strings.Join(l.plan.IDs(trial.Order), " ")))
		run.Y += paragraphGap
	}
}
