package advice_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
)

// A tenth of the part's unevenness, at least 0.02 mm, and one point of the
// lowest bolt are reported, in both directions (limits of the design,
// engineering judgement).
func TestOnFirstStage(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		own, without       float64 // mm
		lowest, lowestThen float64 // percent
		want               string
	}{
		{1.25, 1.375, 90, 90, "[snug uneven]"},
		{1.25, 1.37, 90, 90, "[snug same]"},
		{1.25, 1.125, 90, 90, "[snug uneven]"},
		{1.25, 1.13, 90, 90, "[snug same]"},
		{0, 0.02, 90, 90, "[snug uneven]"},
		{0, 0.0199, 90, 90, "[snug same]"},
		{1, 1, 90, 91, "[snug lowest]"},
		{1, 1, 90, 90.9, "[snug same]"},
		{1, 1, 90, 89, "[snug lowest]"},
		{1, 1, 90, 89.1, "[snug same]"},
		{1, 2, 90, 80, "[snug uneven snug lowest]"},
	} {
		first := advice.Trial{UnevenMm: bounds.Band{Nominal: c.own}, Lowest: bounds.Band{Low: c.lowest}}
		then := advice.Trial{UnevenMm: bounds.Band{Nominal: c.without}, Lowest: bounds.Band{Low: c.lowestThen}}
		found := advice.OnFirstStage(first, then)
		var codes []finding.Code
		for _, f := range found {
			codes = append(codes, f.Code)
			switch f.Code {
			case advice.SnugUneven:
				if f.Values["own"] != c.own || f.Values["without"] != c.without {
					t.Errorf("%+v: %v", c, f.Values)
				}
			case advice.SnugLowest:
				if f.Values["own"] != c.lowest || f.Values["without"] != c.lowestThen {
					t.Errorf("%+v: %v", c, f.Values)
				}
			}
		}
		if got := fmt.Sprint(codes); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// Three points of the lowest bolt are reported (limit of the design,
// engineering judgement).
func TestOnRecipe(t *testing.T) {
	t.Parallel()
	for lowest, want := range map[float64]string{91: "better", 90.9: "", 85.1: "", 85: "worse"} {
		got := advice.OnRecipe(own(88), trial(advice.Recipe, lowest))
		if got.Code != advice.RecipeHere || got.Values["than"] != want || got.Values["ends"].(bounds.Band).Low != lowest {
			t.Errorf("%g after 88: %v, want %q", lowest, got.Values, want)
		}
	}
}

// An order is passed over only if it is not the file's own, departs from the
// trade's rules, and would have been better.
func TestWhatIsPassedOver(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		lowest float64
		rules  judge.Verdict
		own    bool
		want   advice.Branch
		passed bool
	}{
		{"another order that keeps the rules", 99, judge.Sound, false, advice.AskFor, false},
		{"the file's order departs", 99, judge.Departs, true, advice.AskFor, false},
		{"another order departs", 99, judge.Departs, false, advice.NoCure, true},
		{"another order departs and does no better", 89, judge.Departs, false, advice.NoCure, false},
	} {
		other := trial(advice.OnceRound, c.lowest)
		other.Rules, other.OwnOrder = c.rules, c.own
		got := advice.Decide(advice.Case{Class: advice.Noticeable, Trials: []advice.Trial{own(88), other}})
		if passed := finding.Has(got.Says(), advice.SaysPassedOver); got.Branch != c.want || passed != c.passed {
			t.Errorf("%s: %q, passed over %v", c.name, got.Branch, passed)
		}
	}
}

// A change is described so that it is clear without a table: the last torque by
// kinds, the recipe by its content, other ways by name.
func TestWhatAWayChanges(t *testing.T) {
	t.Parallel()
	hundreds := []procedure.Hundred{{Kind: "main", By: procedure.ByLastTorque}, {Kind: "side", By: procedure.ByMeanAtAngle}}
	for way, want := range map[advice.Way]string{
		advice.LastTwice: "[way torque once more main]", advice.Recipe: "way recipe", advice.OneMorePass: "one more pass",
	} {
		got := advice.Decide(advice.Case{Class: advice.Noticeable, Trials: []advice.Trial{own(88), trial(way, 99)}, Hundreds: hundreds})
		said := ""
		switch change := got.Head.Values["change"].(type) {
		case finding.Finding:
			said = string(change.Code)
		case []finding.Finding:
			for _, f := range change {
				said += fmt.Sprintf("[%s %v]", f.Code, f.Values["kind"])
			}
		default:
			said = fmt.Sprint(change)
		}
		if said != want {
			t.Errorf("%s: %q, want %q", way, said, want)
		}
	}
}

// The reported gains are the figures of the two trials.
func TestFiguresOfTheAdvice(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		of   advice.Case
		code finding.Code
		want finding.Values
	}{
		{advice.Case{Trials: []advice.Trial{own(88), trial(advice.Recipe, 99)}}, advice.SaysLifts, finding.Values{"from": 88.0, "to": 99.0, "nominalFrom": 89.0, "nominalTo": 100.0}},
		{advice.Case{Trials: []advice.Trial{own(97)}, FrictionSD: 15}, advice.SaysKeeps, finding.Values{"lowest": 97.0, "sd": 15.0}},
		{advice.Case{Trials: []advice.Trial{own(97)}, FrictionSD: 15, BeforeRepeats: 90}, advice.SaysOwnRepeat, finding.Values{"before": 90.0, "lowest": 97.0, "sd": 15.0}},
		{advice.Case{Trials: []advice.Trial{own(80)}}, advice.SaysNoCure, finding.Values{"lowest": 80.0}},
		{advice.Case{Trials: []advice.Trial{own(80)}, Repeats: 1}, advice.SaysPasses, finding.Values{"passes": 1}},
	} {
		c.of.Class = c.of.Trials[0].Class
		got := advice.Decide(c.of).Says()
		if !finding.Has(got, c.code) {
			t.Errorf("%q is not said: %v", c.code, got)
		}
		for _, f := range got {
			if f.Code == c.code {
				if diff := cmp.Diff(c.want, f.Values); diff != "" {
					t.Errorf("%q: %s", c.code, diff)
				}
			}
		}
	}
}

// Less than one pass is no pass, and an even joint needs none with angles
// either.
func TestWhatIsNotSaid(t *testing.T) {
	t.Parallel()
	if got := advice.Decide(advice.Case{Class: advice.Strong, Trials: []advice.Trial{own(80)}}); finding.Has(got.Says(), advice.SaysPasses) {
		t.Errorf("passes that nobody counted are told: %v", got.Says())
	}
	even := advice.Case{Class: advice.Negligible, Trials: []advice.Trial{own(99)}, Hundreds: onAngle}
	if got := advice.Decide(even); finding.Has(got.Says(), advice.SaysNeverAgain) {
		t.Errorf("an even joint: %v", got.Says())
	}
	if got := advice.ByClass(advice.Negligible, true); len(got.Reasons) > 0 {
		t.Errorf("nothing to change: %v", got.Reasons)
	}
}
