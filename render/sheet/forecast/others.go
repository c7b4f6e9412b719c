package forecast

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/sheet"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/ways"
)

// others puts the file's own way beside others. Whether one is worth asking the
// maker for stands on the first page.
func (l *layout) others(run *sheet.Run) {
	c := l.ask.Others
	if c == nil {
		return
	}
	w := l.ask.Words.Forecast.Other
	run.Room(70) // the words and some rows of the table
	run.Y += 2
	run.Pen.Head(run.Pen.Left(), run.Y+4, w.Heading)
	run.Y += 8
	for _, line := range l.snug(c.Snug) {
		run.Sentence(line)
	}
	run.Sentence(w.Says)
	run.Y += 2
	table := sheet.Table{Columns: []sheet.Column{
		{Head: w.Way, Share: 50}, {Head: w.Least, Share: 20}, {Head: w.SD, Share: 13}, {Head: w.Uneven, Share: 20}, {Head: w.Path, Share: 13}, {Head: w.Rules, Share: 24},
	}}
	for k, trial := range c.Trials {
		name := l.rowName(trial)
		if k > 0 && k == c.Best {
			name = "→ " + name
		}
		table.Rows = append(table.Rows, sheet.Row{Bold: k == 0 || k == c.Best, Words: []string{
			name, l.span(trial.End.Min), l.ends(trial.End.SD, "%.0f"), l.ends(trial.Uneven, "%.2f"), l.figure("%.1f", trial.TravelM), known(w.RuleWords, string(trial.Rules)),
		}})
	}
	run.Close = true
	table.Draw(run)
	run.Close = false
	l.orders(run)
}

// rowName is the name of a trial with other names of the same work, and a word
// where it is never to be done.
func (l *layout) rowName(trial ways.Trial) string {
	name := l.wayName(trial.Name)
	for _, also := range trial.Also {
		name += " = " + l.wayName(also)
	}
	if trial.Less {
		name += " (" + l.ask.Words.Forecast.Other.OnlyToCompare + ")"
	}
	return name
}

// orders lists the orders that nobody can tell by their names: those found by
// search, and that of the best.
func (l *layout) orders(run *sheet.Run) {
	c := l.ask.Others
	for k, trial := range c.Trials {
		searched := slices.Contains([]string{advice.LeastScatter, advice.LeastTilt, advice.LeastOfBoth}, trial.Name)
		if (searched || k == c.Best) && !slices.Equal(trial.Order, c.Trials[0].Order) {
			run.Sentence(fmt.Sprintf(l.ask.Words.Forecast.Other.OrderOf, l.wayName(trial.Name), strings.Join(l.plan.IDs(trial.Order), " ")))
			run.Y += paragraphGap
		}
	}
}

// wayName is the name of a trial in the language of the sheet.
func (l *layout) wayName(name string) string {
	if words, ok := l.ask.Words.Forecast.Other.Names[name]; ok {
		return words
	}
	return known(l.ask.Words.Sheet.Ways, name)
}

// snug says what the first stage buys.
func (l *layout) snug(s *advice.Snug) (lines []string) {
	w := l.ask.Words.Forecast.Other
	switch {
	case s == nil:
		return nil
	case s.SameUneven && s.SameLowest:
		return []string{w.SnugSame}
	}
	if !s.SameUneven {
		lines = append(lines, fmt.Sprintf(w.SnugUneven, l.figure("%.2f", s.WithoutUnevenMm), l.figure("%.2f", s.OwnUnevenMm)))
	}
	if !s.SameLowest {
		lines = append(lines, fmt.Sprintf(w.SnugLowest, l.figure("%.0f", s.WithoutLowest), l.figure("%.0f", s.OwnLowest)))
	}
	return lines
}
