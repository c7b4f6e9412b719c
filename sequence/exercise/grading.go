package exercise

import (
	"cmp"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// Outcome is the result of a row of answers, as in the JSON output.
type Outcome string

const (
	Right    Outcome = "right"
	Remarks  Outcome = "right, with a remark"
	Wrong    Outcome = "not yet right"
	NotWhole Outcome = "not a whole order" // bolts are left out, repeated or unknown
	NoAnswer Outcome = "no answer"
	Unread   Outcome = "not marked" // a row of the table that cannot be read
)

// Given reports whether there was an answer to grade.
func (o Outcome) Given() bool { return o != NoAnswer && o != Unread }

// Grade is the result of an answer by the rules of the trade. Every order that
// follows them is right, not only that of the key.
type Grade struct {
	Outcome Outcome
	Order   []string     // ids as given
	Report  judge.Report // empty if there was no answer to grade
}

// GradeOf grades an order.
func GradeOf(in judge.Input) Grade {
	g := Grade{Outcome: Right, Order: in.Order, Report: judge.Order(in)}
	switch g.Report.Verdict {
	case judge.Remarks:
		g.Outcome = Remarks
	case judge.Departs:
		g.Outcome = Wrong
	case judge.NotWhole:
		g.Outcome = NotWhole
	}
	return g
}

// ToMend lists the findings that need correction.
func (g Grade) ToMend() []judge.Finding {
	return slices.DeleteFunc(slices.Clone(g.Report.Findings), func(f judge.Finding) bool { return f.Severity == judge.Description })
}

// Broken lists the rules that the answer breaks, without duplicates.
func (g Grade) Broken() []judge.Rule {
	var rules []judge.Rule
	for _, f := range g.ToMend() {
		if !slices.Contains(rules, f.Rule) {
			rules = append(rules, f.Rule)
		}
	}
	return rules
}

// Missed is a rule and the number of answers that broke it.
type Missed struct {
	Rule    judge.Rule
	Answers int
}

// MissedMost lists the rules that were broken, most often first.
func MissedMost(grades []Grade) []Missed {
	count := map[judge.Rule]int{}
	for _, g := range grades {
		for _, rule := range g.Broken() {
			count[rule]++
		}
	}
	var all []Missed
	for rule, n := range count {
		all = append(all, Missed{rule, n})
	}
	slices.SortFunc(all, func(a, b Missed) int { return cmp.Or(b.Answers-a.Answers, cmp.Compare(a.Rule, b.Rule)) })
	return all
}

// Count counts the grades with each outcome.
func Count(grades []Grade) map[Outcome]int {
	count := map[Outcome]int{}
	for _, g := range grades {
		count[g.Outcome]++
	}
	return count
}

// Given counts the answers that could be graded.
func Given(grades []Grade) int {
	count := Count(grades)
	return len(grades) - count[NoAnswer] - count[Unread]
}

// OfOtherParts reports whether at least half of the answers name bolts that
// their parts lack, or leave some out: they may be for other parts.
func OfOtherParts(grades []Grade) bool {
	not := Count(grades)[NotWhole]
	return not > 0 && 2*not >= Given(grades)
}

// DepartsOf reports where the order of a file breaks the rules of the trade. A
// maker's own order is not judged.
func DepartsOf(p plan.Plan) (found finding.Finding, departs bool) {
	report := judge.Order(judge.ForPlan(p, judge.Tighten, p.IDs(p.Tighten.Order)))
	for _, f := range report.Findings {
		if f.Severity == judge.Departure || f.Severity == judge.Remark {
			return finding.Warned(OrderDeparts, finding.Values{"usable": report.Verdict.Right(), "why": f.Found()}), true
		}
	}
	return finding.Finding{}, false
}
