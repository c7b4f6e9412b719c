package forecast

import (
	"fmt"
	"strings"

	"drawdown/render/sheet"
	"drawdown/sequence/interaction"
	"drawdown/sequence/judge"
)

// others puts the file's own way beside others. Whether one is worth asking the
// maker for stands on the first page.
func (l *layout) others(run *sheet.Run) {
	c := l.ask.Others
	if c == nil {
		return
	}
	w := l.ask.Words.Forecast.Other
	run.Room(40)
	run.Y += 2
	run.Pen.Head(run.Pen.Left(), run.Y+4, w.Heading)
	run.Y += 8
	for _, line := range l.snug(c.Snug) {
		run.Sentence(line)
	}
	run.Sentence(w.Says)
	run.Y += 2
	table := sheet.Table{Columns: []sheet.Column{
		{Head: w.Way, Share: 40}, {Head: w.Least, Share: 24}, {Head: w.SD, Share: 15}, {Head: w.Uneven, Share: 22}, {Head: w.Path, Share: 15}, {Head: w.Rules, Share: 20},
	}}
	for k, trial := range c.Trials {
		name := l.wayName(trial.Name)
		if k > 0 && k == c.Best {
			name = "→ " + name
		}
		table.Rows = append(table.Rows, sheet.Row{Bold: k == 0 || k == c.Best, Words: []string{
			name, l.span(trial.End.Min), l.ends(trial.End.SD, "%.0f"), l.ends(trial.Uneven, "%.2f"), l.figure("%.1f", trial.TravelM), known(w.RuleWords, string(trial.Rules)),
		}})
	}
	table.Draw(run)
}

// wayName is the name of a trial in the language of the sheet.
func (l *layout) wayName(name string) string {
	if words, ok := l.ask.Words.Forecast.Other.Names[name]; ok {
		return words
	}
	return known(l.ask.Words.Sheet.Ways, name)
}

func (l *layout) verdictLines(v interaction.Verdict) []string {
	w := l.ask.Words.Forecast.Other
	percent := func(f float64) string { return l.figure("%.0f", f) }
	switch v.Kind {
	case interaction.MendFile:
		return []string{w.MendFile}
	case interaction.LeaveIt:
		if v.BeforeRepeats > 0 {
			return []string{fmt.Sprintf(w.LeaveRepeat, percent(v.BeforeRepeats), percent(v.OwnLowest), percent(v.FrictionSD))}
		}
		return []string{fmt.Sprintf(w.Leave, percent(v.OwnLowest), percent(v.FrictionSD))}
	case interaction.NoCure:
		lines := []string{fmt.Sprintf(w.NoCure, percent(v.OwnLowest)), l.goRound(v)}
		if v.Way != interaction.OwnWay {
			lines[0] = fmt.Sprintf(w.NoCureWith, percent(v.OwnLowest), l.wayName(v.Way), percent(v.BestLowest))
		}
		return lines // the heading says that the maker's stands
	}
	line := fmt.Sprintf(w.AskFor, l.change(v), percent(v.OwnLowest), percent(v.BestLowest))
	if v.BestUnevenMm > 0 {
		line += " " + fmt.Sprintf(w.ButUneven, l.figure("%.2f", v.BestUnevenMm), l.figure("%.2f", v.OwnUnevenMm))
	}
	if v.Rules == judge.Departs {
		line += " " + w.ButDeparts
	}
	lines := []string{line}
	if v.StillStrong {
		lines = append(lines, l.goRound(v))
	}
	return append(lines, w.MakerStands)
}

// change names what the best trial does.
func (l *layout) change(v interaction.Verdict) string {
	if v.Way != interaction.LastTwice {
		return l.wayName(v.Way)
	}
	var again []string
	for _, h := range v.Again() {
		again = append(again, l.ask.Words.Figure(h.Torque.String())+" "+h.Kind)
	}
	return fmt.Sprintf(l.ask.Words.Forecast.Other.OnceMore, strings.Join(again, ", "))
}

// goRound says what helps where no other way does.
func (l *layout) goRound(v interaction.Verdict) string {
	w := l.ask.Words.Forecast.Other
	if v.Repeats == 0 {
		return w.UntilNoNutTurns
	}
	return w.UntilNoNutTurns + " " + fmt.Sprintf(w.Passes, v.Repeats)
}

// snug says what the first stage buys.
func (l *layout) snug(s *interaction.Snug) (lines []string) {
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
