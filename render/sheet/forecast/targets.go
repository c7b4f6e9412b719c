package forecast

import (
	"drawdown/geometry/finding"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction"
)

const (
	targetColumn = 56.0 // least width of three columns
	targetRow    = 5.3
	mostKept     = 120.0 // of a table that is kept on one page
)

func (l *layout) targets(run *sheet.Run) {
	if !l.f.Last().ToTargets() {
		return
	}
	w := l.ask.Words.Forecast
	order := l.plan.Tighten.Order
	across, down := l.targetTable(run.Pen.Paper.Content())
	run.Room(min(l.targetsHeight(run.Pen.Paper.Content()), mostKept))
	run.Y += paragraphGap
	run.Set(run.Pen.Paper.Strong(), w.Targets)
	run.Sentence(l.targetsSay())
	run.Y += paragraphGap
	var table sheet.Table
	for range across {
		table.Columns = append(table.Columns, sheet.Column{Head: w.TargetOf, Share: 22}, sheet.Column{Head: "%", Share: 12, Bold: true}, sheet.Column{Head: "kN", Share: 14})
	}
	for r := range down {
		var row sheet.Row
		for c := range across {
			if k := c*down + r; k < len(order) {
				percent, force := l.target(order[k])
				row.Words = append(row.Words, l.names[order[k]], percent, force)
			} else {
				row.Words = append(row.Words, "", "", "")
			}
		}
		table.Rows = append(table.Rows, row)
	}
	run.Close = true
	table.Draw(run)
	run.Close = false
}

func (l *layout) targetsSay() string {
	return l.ask.Words.Forecast.TargetsSay + " " + l.ask.Words.Say(finding.Noted(interaction.TargetsCaution, nil))
}

func (l *layout) targetTable(width float64) (across, down int) {
	n := len(l.names)
	across = min(max(1, int(width/targetColumn)), n)
	return across, (n + across - 1) / across
}

func (l *layout) targetsHeight(width float64) float64 {
	w := l.ask.Words.Forecast
	_, down := l.targetTable(width)
	heads := l.ask.Paper.Strong().Lines(w.Targets, width)
	return 2*paragraphGap + l.ask.Paper.Strong().Step*float64(len(heads)) + l.ask.Paper.BreakAll([]string{l.targetsSay()}, width).Height(l.ask.Paper.Line) + targetRow*float64(down+1) + 3
}

// target is the target of a bolt in the last pass, in percent of what means 100
// %, and in kN. The forecast gives the final force of the bolt in both
// measures.
func (l *layout) target(fastener int) (percent, force string) {
	last := l.f.Last()
	ofAim := last.OfAim[fastener].Nominal
	if ofAim == 0 {
		return "–", "–"
	}
	share := last.Percent[fastener].Nominal / ofAim
	return l.figure("%.0f", 100*share), l.figure("%.1f", share*l.f.TargetsN[fastener].Nominal/1000)
}
