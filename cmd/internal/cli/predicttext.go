package cli

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
)

// lowestShown is how many of the fasteners that end low are named.
const lowestShown = 4

// predictReport prints a prediction in a language. What it says is decided where
// the figures are; here it is put one below the other.
type predictReport struct {
	interaction.Answer
	to io.Writer
	c  *words.Catalogue
}

func (r predictReport) print(compare bool) {
	title := r.Plan.Title
	if r.Plan.Machine != "" {
		title += " · " + r.Plan.Machine
	}
	fmt.Fprintf(r.to, "%s\n%s\n\n", title, r.c.Forecast.WorkedOut)
	doubts := r.Forecast.Doubts
	if len(doubts) > 0 && doubts[0].Code == prediction.PreviewOnly { // first of all
		r.say(doubts[0])
		doubts = doubts[1:]
	}
	r.say(r.Advice.Says()...)
	r.say(append(r.Forecast.Ends(r.Plan), r.Forecast.Class.Says())...)
	r.list(r.c.Forecast.Doubts, r.c.SayAll(doubts))
	r.passes()
	r.lowest()
	behaves := []string{r.c.Say(r.Forecast.Once()), r.said(r.Forecast.Lies(r.Plan))}
	if repeat := r.Forecast.Repeat(); len(repeat) > 0 {
		behaves = append(behaves, r.said(repeat))
	}
	if r.Comparison != nil {
		behaves = append(behaves, r.c.SayAll(r.Comparison.Snug)...)
	}
	r.list(r.noted(PredictBehaves, nil), append(behaves, r.c.SayAll(r.Notes)...))
	r.targets()
	r.scatter()
	if compare {
		r.others()
	}
	r.basis()
	r.text(r.c.Forecast.Guidance + " " + r.c.Sheet.ManualFirst)
}

// say prints findings one after the other, as a paragraph.
func (r predictReport) say(list ...finding.Finding) { r.text(r.said(list)) }

// said words findings as a paragraph.
func (r predictReport) said(list []finding.Finding) string {
	return strings.Join(r.c.SayAll(list), " ")
}

func (r predictReport) text(line string) { fmt.Fprint(r.to, wrapped("  ", "  ", line)) }

// noted words what is said around the figures.
func (r predictReport) noted(code finding.Code, values finding.Values) string {
	return r.c.Say(finding.Noted(code, values))
}

// list prints lines one below the other, under a heading.
func (r predictReport) list(heading string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(r.to, "\n%s\n", heading)
	for _, line := range lines {
		fmt.Fprint(r.to, wrapped("  - ", "    ", line))
	}
}

// joined says findings in a row.
func (r predictReport) joined(list []finding.Finding) string {
	return strings.Join(r.c.SayAll(list), r.c.Card.Checks.And)
}

// terminal is the width of a terminal in columns, and leastName the least that a
// table keeps for names.
const terminal, leastName = 80, 20

// table prints rows in columns that are as wide as what stands in them: words in
// the first, which breaks them where they are long, and figures in the others.
func (r predictReport) table(rows [][]string) {
	columns := make(report.Columns, len(rows[0]))
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
			columns.Row(r.to, append([]string{"  " + name}, figures...)...)
			figures = nil // beside the first line alone
		}
	}
}

// broken breaks a name at its words; what follows is set in a little.
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

// whole writes a band of percentages.
func (r predictReport) whole(b bounds.Band) string { return r.c.Value(b, ".0") }

// named is a bolt by its number on the card and its id.
func (r predictReport) named(fastener int) string {
	return fmt.Sprintf("%d (%s)", r.Plan.Tighten.Numbers()[fastener], r.Plan.Joint.Fasteners[fastener].ID)
}

// passes prints the table of passes.
func (r predictReport) passes() {
	fmt.Fprintln(r.to)
	rows := [][]string{{r.noted(PredictPass, nil), r.noted(PredictLeast, nil), r.noted(PredictMean, nil), r.noted(PredictMost, nil), r.noted(PredictSD, nil)}}
	for n, pass := range r.Forecast.Passes {
		s := pass.Spread
		rows = append(rows, []string{fmt.Sprintf("%d  %s", n+1, r.c.Say(pass.Does(r.Plan))), r.whole(s.Min), r.whole(s.Mean), r.whole(s.Max), r.whole(s.SD)})
	}
	r.table(rows)
	r.text(fmt.Sprintf(r.c.Forecast.Basis.Hundred, r.joined(procedure.Say(r.Forecast.Hundreds))))
	r.say(r.Forecast.FoundationTaken())
}

// lowest names the fasteners that end lowest, by their numbers on the card.
func (r predictReport) lowest() {
	lowest := r.Forecast.Lowest[:min(lowestShown, len(r.Forecast.Lowest))]
	if len(lowest) == 0 {
		fmt.Fprintf(r.to, "\n%s\n", r.noted(PredictNoneLow, nil))
		return
	}
	fmt.Fprintf(r.to, "\n%s\n", r.noted(PredictLowest, nil))
	var rows [][]string
	for _, i := range lowest {
		rows = append(rows, []string{r.named(i), r.whole(r.Forecast.Last().Percent[i]) + " %"})
	}
	r.table(rows)
}

// targets prints those that make up for the loss.
func (r predictReport) targets() {
	if r.Targets == nil {
		return
	}
	fmt.Fprintf(r.to, "\n%s\n", r.noted(PredictTargets, finding.Values{"cap": math.Floor(100*r.Cap + 1e-9)}))
	var rows [][]string
	for _, i := range r.Plan.Tighten.Order {
		kN := bounds.Rough(r.Targets[i] / 1000)
		rows = append(rows, []string{r.named(i), r.c.Value(100*r.Targets[i]/r.Nominal.TargetsN[i], ".0") + " %", r.c.Value(kN, "") + " kN"})
	}
	r.table(rows)
	r.say(r.OnTargets()...)
}

// scatter prints what friction adds.
func (r predictReport) scatter() {
	s := r.Scatter
	if s == nil {
		return
	}
	fmt.Fprintf(r.to, "\n%s\n", r.noted(PredictScatter, finding.Values{"draws": s.Draws, "seed": fmt.Sprint(s.Seed)}))
	r.text(r.noted(PredictSDs, finding.Values{"friction": s.Friction.SDPercent, "elastic": s.Elastic.SD, "both": s.Together.SD}))
	r.text(r.noted(PredictOfJoint, finding.Values{"ends": s.Together.Lowest}))
	for k, i := range r.Forecast.Lowest {
		if k < lowestShown {
			r.text(r.noted(PredictOfBolt, finding.Values{"number": r.Plan.Tighten.Numbers()[i], "id": r.Plan.Joint.Fasteners[i].ID, "ends": s.Together.ByFastener[i], "elastic": s.Elastic.ByFastener[i].Nominal}))
		}
	}
	r.say(r.OnScatter()...)
}

// others prints the file's own way beside others.
func (r predictReport) others() {
	c, w := r.Comparison, r.c.Forecast.Other
	fmt.Fprintf(r.to, "\n%s\n", w.Heading)
	rows := [][]string{{w.Way, w.Least, w.SD, w.Uneven, w.Path, r.noted(PredictOrder, nil)}}
	for i, trial := range c.Trials {
		name := r.c.Term(trial.Way)
		if i > 0 && i == c.Advice.Best {
			name = "→ " + name
		}
		if trial.Less {
			name += " (" + w.OnlyToCompare + ")"
		}
		rows = append(rows, []string{name, r.whole(trial.End.Min), r.whole(trial.End.SD), r.c.Value(trial.UnevenMm, ".2"), r.c.Value(trial.TravelM, ".1"), w.RuleWords[string(trial.Rules)]})
		for _, also := range trial.Also {
			rows = append(rows, []string{"  = " + r.c.Term(also)})
		}
	}
	r.table(rows)
	fmt.Fprintln(r.to)
	r.text(w.Says)
	r.say(append(c.OnRecipe(), c.Notes...)...)
	for _, trial := range c.Orders() {
		r.text(fmt.Sprintf(w.OrderOf, r.c.Term(trial.Way), strings.Join(r.Plan.IDs(trial.Order), " ")))
	}
}

// basis says what it all rests on, and what is left out. What is assumed of the
// bolts is much and changes little: JSON has it.
func (r predictReport) basis() {
	w := r.c.Forecast
	fmt.Fprintln(r.to)
	if len(r.Stated) > 0 {
		r.text(fmt.Sprintf(w.Basis.Stated, r.joined(r.Stated)))
	}
	var assumed []string
	for _, f := range r.Assumed {
		if !setup.OfBolts(f) && f.Code != procedure.FrictionMiddle {
			assumed = append(assumed, r.c.Say(f))
		}
	}
	r.text(fmt.Sprintf(w.Basis.Assumed, strings.Join(append(assumed, w.Basis.Unlisted), r.c.Card.Checks.And)))
	r.text(fmt.Sprintf(w.NotInModel, r.joined(interaction.LeftOut(r.Scatter != nil))))
	fmt.Fprintln(r.to)
}
