package cli

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/judge"
)

// printComparison prints the file's own way beside others.
func (p *Program) printComparison(a job.PredictAnswer) {
	c := a.Comparison
	fmt.Fprint(p.Stdout, "\nOther ways beside the file's own, which stands\n")
	p.trialRow("", "way", "least %", "SD %", "uneven mm", "path m", "order")
	for i, trial := range c.Trials {
		mark := " "
		if i == c.Best && i > 0 {
			mark = ">"
		}
		p.trialRow(mark, trial.Name, span(trial.End.Min), span(trial.End.SD), millimetres(trial.Uneven), fmt.Sprintf("%.1f", trial.TravelM), rulesWord(trial.Rules))
		if len(trial.Also) > 0 {
			fmt.Fprint(p.Stdout, wrapped("    = ", "      ", strings.Join(trial.Also, ", ")))
		}
	}
	fmt.Fprintln(p.Stdout)
	p.text("least: the lowest bolt at the end, low–nominal–high. uneven: tilt and warp together, the most on the way. path: of the wrench from bolt to bolt. order: how it stands to the trade's rules, as drawdown check --order tells; one that departs is here to compare, not to work by. It judges the order alone: a way that leaves a stage out is no permission to do so. > is worth asking the maker for.")
	p.text(advice.RecipeWords + recipeHere(c))
	for _, note := range c.Notes {
		p.text(note)
	}
	if best := c.Trials[c.Best]; !slices.Equal(best.Order, c.Trials[0].Order) {
		p.text("Order of " + best.Name + ": " + strings.Join(a.Plan.IDs(best.Order), " "))
	}
	for _, trial := range c.Trials {
		if strings.HasPrefix(trial.Name, "search") && !slices.Equal(trial.Order, c.Trials[0].Order) {
			p.text("Order of " + trial.Name + ": " + strings.Join(a.Plan.IDs(trial.Order), " "))
		}
	}
}

func (p *Program) trialRow(mark, name string, figures ...string) {
	report.Columns{-32, 10, 7, 14, 6, 8}.Row(p.Stdout, append([]string{fmt.Sprintf(" %1s%s", mark, name)}, figures...)...)
}

// recipeHere judges the recipe for this joint against the file's own work; empty
// where it was not tried.
func recipeHere(c *ways.Comparison) string {
	own := c.Trials[0]
	for _, t := range c.Trials {
		if t.Name != advice.Recipe && !slices.Contains(t.Also, advice.Recipe) {
			continue
		}
		word := "no better than"
		switch gain := t.End.Min.Low - own.End.Min.Low; {
		case gain >= ways.WorthPoints:
			word = "better than"
		case gain <= -ways.WorthPoints:
			word = "worse than"
		}
		return fmt.Sprintf(" Here it ends its lowest bolt at %s %%, %s the file's own.", span(t.End.Min), word)
	}
	return ""
}

// rulesWord says how an order stands to the trade's rules.
func rulesWord(v judge.Verdict) string {
	switch v {
	case judge.Sound:
		return "sound"
	case judge.Remarks:
		return "remarks"
	case judge.Described:
		return "maker's"
	}
	return "departs"
}

// millimetres writes a band of short lengths, to a hundredth.
func millimetres(b bounds.Band) string {
	low, nominal, high := fmt.Sprintf("%.2f", b.Low), fmt.Sprintf("%.2f", b.Nominal), fmt.Sprintf("%.2f", b.High)
	if low == high {
		return nominal
	}
	return low + "–" + nominal + "–" + high
}

// printScatter prints what friction adds.
func (p *Program) printScatter(a job.PredictAnswer) {
	s := a.Scatter
	if s == nil {
		return
	}
	fmt.Fprintf(p.Stdout, "\nWith the friction of each bolt on top: %d draws, seed %d, nominal gasket\n", s.Draws, s.Seed)
	fmt.Fprintf(p.Stdout, "  SD of all bolts       torque scatter %.0f %%, cross-talk %.0f %%, both %.0f %%\n", s.FrictionSD, s.Elastic.SD, s.Together.SD)
	fmt.Fprintf(p.Stdout, "  lowest of a joint     %s %% (5 joints in 100 lower, middle, 5 higher)\n", span(s.Together.Lowest))
	for k, i := range a.Forecast.Lowest {
		if k < lowestShown {
			fmt.Fprintf(p.Stdout, "  %-12s          %s %%; cross-talk alone %.0f %%\n", named(a, i), span(s.Together.ByFastener[i]), s.Elastic.ByFastener[i].Nominal)
		}
	}
	p.text(frictionVerdict(a))
	if kinds := a.Forecast.OnAngle(); len(kinds) > 0 && s.Together.SD < s.FrictionSD {
		p.text("Both is less than torque scatter alone: " + angleEnds(kinds) + " on an angle, which friction does not scatter.")
	}
}

func angleEnds(kinds []string) string {
	if len(kinds) == 1 {
		return kinds[0] + " ends"
	}
	return strings.Join(kinds, ", ") + " end"
}

// asksForRepeat says whether the verdict is to give the last torque again.
func asksForRepeat(a job.PredictAnswer) bool {
	return a.Comparison != nil && a.Comparison.Verdict.AsksForRepeat()
}

// frictionVerdict says which of the two is worth work, in step with what the
// prediction asks for.
func frictionVerdict(a job.PredictAnswer) string {
	s := a.Scatter
	switch {
	case s.Elastic.SD < s.Together.SD/3 && asksForRepeat(a):
		return "Friction rules: a repeat leaves its scatter as it is and only lifts the mean of the bolts that lose load. Clean and oil threads alike, or measure stretch."
	case s.Elastic.SD < s.Together.SD/3:
		return "Friction rules: no order or further pass makes these bolts more even. Clean and oil threads alike, or measure stretch."
	case s.Elastic.SD < s.Together.SD*2/3:
		return "Friction and cross-talk count alike: one more pass helps, and so does the same oil on every thread."
	}
	return "Cross-talk rules: further passes help more than care with friction."
}
