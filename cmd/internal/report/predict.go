package report

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
)

// lowestShown is the number of lowest fasteners that are listed.
const lowestShown = 4

// Prediction prints a prediction in a language. Its statements are decided
// where the figures are calculated; here they are only arranged.
type Prediction struct {
	interaction.Answer
	Report
}

func (r Prediction) Print(compare bool) {
	r.heading(r.Plan)
	fmt.Fprintf(r.To, "%s\n\n", r.Words.Forecast.WorkedOut)
	doubts := r.Forecast.Doubts
	if len(doubts) > 0 && doubts[0].Code == prediction.PreviewOnly { // before everything else
		r.paragraph(doubts[0])
		doubts = doubts[1:]
	}
	r.paragraph(r.Advice.Says()...)
	r.paragraph(append(r.Forecast.Ends(r.Plan), r.Forecast.Class.Says())...)
	r.list(r.Words.Forecast.Doubts, r.Words.SayAll(doubts))
	r.passes()
	r.lowest()
	behaves := []string{r.Words.Say(r.Forecast.Once()), r.said(r.Forecast.Lies(r.Plan))}
	if repeat := r.Forecast.Repeat(); len(repeat) > 0 {
		behaves = append(behaves, r.said(repeat))
	}
	if r.Comparison != nil {
		behaves = append(behaves, r.Words.SayAll(r.Comparison.Snug)...)
	}
	r.list(r.say(PredictBehaves, nil), append(behaves, r.Words.SayAll(r.Notes)...))
	r.targets()
	r.scatter()
	if compare {
		r.others()
	}
	r.basis()
	r.text(r.Words.Forecast.Guidance + " " + r.Words.Sheet.ManualFirst)
}

// paragraph prints findings as one text.
func (r Prediction) paragraph(list ...finding.Finding) { r.text(r.said(list)) }

func (r Prediction) said(list []finding.Finding) string {
	return strings.Join(r.Words.SayAll(list), " ")
}

// joined returns findings joined by the word for and.
func (r Prediction) joined(list []finding.Finding) string {
	return strings.Join(r.Words.SayAll(list), r.Words.Card.Checks.And)
}

// terminal is the width of a terminal in columns, leastName the least width
// that a table keeps for names.
const terminal, leastName = 80, 20

// table prints rows in columns as wide as their contents: words in the first
// column, wrapped if long, and figures in the others.
func (r Prediction) table(rows [][]string) {
	columns := make(Columns, len(rows[0]))
	for _, row := range rows {
		for k, cell := range row {
			columns[k] = max(columns[k], utf8.RuneCountInString(cell)+1)
		}
	}
	room := terminal - 2
	for _, width := range columns[1:] {
		room -= width + 1
	}
	names := min(columns[0]-1, max(leastName, room))
	columns[0] = -(names + 2)
	for _, row := range rows {
		figures := row[1:]
		for _, name := range broken(row[0], names) {
			columns.Row(r.To, append([]string{"  " + name}, figures...)...)
			figures = nil // only on the first line
		}
	}
}

// broken wraps a name at its words; continuation lines are indented.
func broken(name string, width int) []string {
	lines := []string{""}
	for i, word := range strings.SplitAfter(name, " ") {
		last := &lines[len(lines)-1]
		if i > 0 && utf8.RuneCountInString(*last)+utf8.RuneCountInString(strings.TrimRight(word, " ")) > width {
			lines = append(lines, "    "+word)
			continue
		}
		*last += word
	}
	return lines
}

// whole and hundredths format ranges of percentages and of millimetres.
func (r Prediction) whole(b bounds.Band) string      { return r.Words.Value(b, ".0") }
func (r Prediction) hundredths(b bounds.Band) string { return r.Words.Value(b, ".2") }

// named identifies a bolt by what is written on the part.
func (r Prediction) named(fastener int) string { return r.Plan.Written()[fastener] }

// passes prints the table of passes.
func (r Prediction) passes() {
	fmt.Fprintln(r.To)
	rows := [][]string{{r.say(PredictPass, nil), r.say(PredictLeast, nil), r.say(PredictMean, nil), r.say(PredictMost, nil), r.say(PredictSD, nil)}}
	for n, pass := range r.Forecast.Passes {
		s := pass.Spread
		rows = append(rows, []string{fmt.Sprintf("%d  %s", n+1, r.Words.Say(pass.Does(r.Plan))), r.whole(s.Min), r.whole(s.Mean), r.whole(s.Max), r.whole(s.SD)})
	}
	r.table(rows)
	r.text(fmt.Sprintf(r.Words.Forecast.Basis.Hundred, r.joined(procedure.Say(r.Forecast.Hundreds))))
	r.paragraph(r.Forecast.FoundationTaken())
}

// lowest lists the fasteners with the lowest final preload.
func (r Prediction) lowest() {
	lowest := r.Forecast.Lowest[:min(lowestShown, len(r.Forecast.Lowest))]
	if len(lowest) == 0 {
		fmt.Fprintf(r.To, "\n%s\n", r.say(PredictNoneLow, nil))
		return
	}
	fmt.Fprintf(r.To, "\n%s\n", r.say(PredictLowest, nil))
	var rows [][]string
	for _, i := range lowest {
		rows = append(rows, []string{r.named(i), r.whole(r.Forecast.Last().Percent[i]) + " %"})
	}
	r.table(rows)
}

// targets prints the targets that compensate for the loss.
func (r Prediction) targets() {
	if r.Targets == nil {
		return
	}
	fmt.Fprintf(r.To, "\n%s\n", r.say(PredictTargets, finding.Values{"cap": math.Floor(100*r.Cap + 1e-9)}))
	var rows [][]string
	for _, i := range r.Plan.Tighten.Order {
		kN := bounds.Rough(r.Targets[i] / 1000)
		row := []string{r.named(i), r.Words.Value(100*r.Targets[i]/r.Nominal.TargetsN[i], ".0") + " %", r.Words.Value(kN, "") + " kN"}
		if mm := procedure.StretchMm(r.Plan.KindOf(i), r.Targets[i]); mm > 0 {
			row = append(row, "+"+r.Words.Value(unit.Length(mm), ".3 mm")) // to measure on the bolt
		}
		rows = append(rows, row)
	}
	r.table(rows)
	r.paragraph(r.OnTargets()...)
}

// scatter prints the effect of friction.
func (r Prediction) scatter() {
	s := r.Scatter
	if s == nil {
		return
	}
	fmt.Fprintf(r.To, "\n%s\n", r.say(PredictScatter, finding.Values{"draws": s.Draws, "seed": fmt.Sprint(s.Seed)}))
	r.text(r.say(PredictSDs, finding.Values{"friction": s.Friction.SDPercent, "elastic": s.Elastic.SD, "both": s.Together.SD}))
	r.text(r.say(PredictOfJoint, finding.Values{"ends": s.Together.Lowest}))
	for k, i := range r.Forecast.Lowest {
		if k < lowestShown {
			r.text(r.say(PredictOfBolt, finding.Values{"bolt": r.named(i), "ends": s.Together.ByFastener[i], "elastic": s.Elastic.ByFastener[i].Nominal}))
		}
	}
	r.paragraph(r.OnScatter()...)
}

// others compares the file's own way with others.
func (r Prediction) others() {
	c, w := r.Comparison, r.Words.Forecast.Other
	fmt.Fprintf(r.To, "\n%s\n", w.Heading)
	rows := [][]string{{w.Way, w.Least, w.SD, w.Uneven, w.Path, r.say(PredictOrder, nil)}}
	for i, trial := range c.Trials {
		name := r.Words.Term(trial.Way)
		if i > 0 && i == c.Advice.Best {
			name = "→ " + name
		}
		if trial.Less {
			name += " (" + w.OnlyToCompare + ")"
		}
		rows = append(rows, []string{name, r.whole(trial.End.Min), r.whole(trial.End.SD), r.hundredths(trial.UnevenMm), r.Words.Value(trial.TravelM, ".1"), w.RuleWords[string(trial.Rules)]})
		for _, also := range trial.Also {
			rows = append(rows, []string{"  = " + r.Words.Term(also)})
		}
	}
	r.table(rows)
	fmt.Fprintln(r.To)
	r.text(w.Says)
	r.paragraph(append(c.OnRecipe(), c.Notes...)...)
	for _, trial := range c.Orders() {
		r.text(fmt.Sprintf(w.OrderOf, r.Words.Term(trial.Way), strings.Join(r.Plan.IDs(trial.Order), " ")))
	}
}

// basis prints the basis of the results and what is left out. Assumptions about
// the bolts are many and matter little; they are only in the JSON.
func (r Prediction) basis() {
	w := r.Words.Forecast
	fmt.Fprintln(r.To)
	if len(r.Stated) > 0 {
		r.text(fmt.Sprintf(w.Basis.Stated, r.joined(r.Stated)))
	}
	var assumed []string
	for _, f := range r.Assumed {
		if !setup.OfBolts(f) && f.Code != procedure.FrictionMiddle {
			assumed = append(assumed, r.Words.Say(f))
		}
	}
	r.text(fmt.Sprintf(w.Basis.Assumed, strings.Join(append(assumed, w.Basis.Unlisted), r.Words.Card.Checks.And)))
	r.text(fmt.Sprintf(w.NotInModel, r.joined(interaction.LeftOut(r.Scatter != nil))))
	fmt.Fprintln(r.To)
}
