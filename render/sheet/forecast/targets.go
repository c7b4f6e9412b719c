package forecast

import (
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction"
)

const (
	targetColumn = 56.0 // width of three columns, at the least
	targetRow    = 5.2
)

// toTargets says whether a pass brings each bolt to a target of its own, which
// makes up for what it loses.
func toTargets(pass interaction.ForecastPass) bool { return pass.Stage == nil && pass.Share == 0 }

// targets lists what each bolt is brought to in a last pass of that kind.
func (l *layout) targets(run *sheet.Run) {
	if !toTargets(l.f.Last()) {
		return
	}
	w := l.ask.Words.Forecast
	order := l.plan.Tighten.Order
	across := min(max(1, int(run.Pen.Paper.Content()/targetColumn)), len(order))
	down := (len(order) + across - 1) / across
	run.Room(min(40+targetRow*float64(down), 120))
	run.Y += paragraphGap
	large(run, scene.Bold, w.Targets)
	run.Sentence(w.TargetsSay)
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
				row.Words = append(row.Words, l.named(order[k]), percent, force)
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

// target is what the last pass brings a bolt to, in percent of what stands for
// 100 % and in kN. The forecast has what the bolt ends with by both measures.
func (l *layout) target(fastener int) (percent, force string) {
	last := l.f.Last()
	ofAim := last.OfAim[fastener].Nominal
	if ofAim == 0 {
		return "–", "–"
	}
	share := last.Percent[fastener].Nominal / ofAim
	return l.percent(100 * share), l.figure("%.1f", share*l.f.TargetsN[fastener].Nominal/1000)
}
