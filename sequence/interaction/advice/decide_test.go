package advice_test

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
)

// trial is a way whose lowest bolt ends at a percentage in the worst case.
func trial(way advice.Way, lowest float64) advice.Trial {
	return advice.Trial{Way: way, Lowest: bounds.Band{Low: lowest, Nominal: lowest + 1, High: 100}, Class: advice.ClassOf(lowest), Rules: judge.Sound, OwnOrder: true}
}

func own(lowest float64) advice.Trial { return trial(advice.OwnWay, lowest) }

func departing(lowest float64) advice.Trial {
	t := trial(advice.OnceRound, lowest)
	t.Rules, t.OwnOrder = judge.Departs, false
	return t
}

func less(lowest float64) advice.Trial {
	t := trial(advice.NoFirstStage, lowest)
	t.Less = true
	return t
}

// A case for each branch, and on both sides of each limit. The limits are those
// of the design (engineering judgement): classes from 95 % and from 85 %, 3
// points that are reported, 10 where the joint stays strong, 1 by which a
// change must beat an easier one, 50 % below which nothing helps.
func TestDecide(t *testing.T) {
	none := []advice.Trial(nil)
	for _, c := range []struct {
		name   string
		trials []advice.Trial
		change func(*advice.Case)
		want   advice.Branch
		way    advice.Way
		says   finding.Code // one of the findings
	}{
		{"a stage that falls", []advice.Trial{own(70), trial(advice.OneMorePass, 99)}, func(c *advice.Case) { c.Falls = true }, advice.MendFile, "", advice.SaysMendFile},
		{"nothing tried, even", none, func(c *advice.Case) { c.Class = advice.Negligible }, advice.NothingToChange, "", advice.SaysNothing},
		{"nothing tried, uneven", none, func(c *advice.Case) { c.Class = advice.Noticeable }, advice.RepeatOnce, "", advice.SaysRepeat},
		{"nothing tried, far from even", none, func(c *advice.Case) { c.Class = advice.Strong }, advice.SeveralPasses, "", advice.SaysSeveral},
		{"nothing tried, angles end it", none, func(c *advice.Case) { c.Class, c.Hundreds = advice.Strong, onAngle }, advice.SeveralPasses, "", advice.SaysNotOnAngle},
		{"even enough", []advice.Trial{own(95), trial(advice.OneMorePass, 100)}, nil, advice.LeaveIt, advice.OwnWay, advice.SaysKeeps},
		{"not even enough", []advice.Trial{own(94.9), trial(advice.OneMorePass, 100)}, nil, advice.AskFor, advice.OneMorePass, advice.SaysLifts},
		{"even by its own repeat", []advice.Trial{own(97)}, func(c *advice.Case) { c.BeforeRepeats = 94 }, advice.LeaveItsRepeat, advice.OwnWay, advice.SaysOwnRepeat},
		{"its own repeat does little", []advice.Trial{own(97)}, func(c *advice.Case) { c.BeforeRepeats = 94.1 }, advice.LeaveIt, advice.OwnWay, advice.SaysKeeps},
		{"worth a word", []advice.Trial{own(88), trial(advice.Recipe, 91)}, nil, advice.AskFor, advice.Recipe, advice.SaysAsk},
		{"not worth a word", []advice.Trial{own(88), trial(advice.Recipe, 90.9)}, nil, advice.NoCure, advice.OwnWay, advice.SaysNoCure},
		{"strong, and lifted enough", []advice.Trial{own(60), trial(advice.Recipe, 70)}, func(c *advice.Case) { c.Repeats = 4 }, advice.AskForButPass, advice.Recipe, advice.SaysPasses},
		{"strong, and lifted too little", []advice.Trial{own(60), trial(advice.Recipe, 69.9)}, func(c *advice.Case) { c.Repeats = 4 }, advice.NoCure, advice.OwnWay, advice.SaysPasses},
		{"lifted out of the strong", []advice.Trial{own(80), trial(advice.Recipe, 85)}, nil, advice.AskFor, advice.Recipe, advice.SaysMaker},
		{"lifted, and hopeless", []advice.Trial{own(20), trial(advice.Recipe, 49.9)}, nil, advice.NoCureWith, advice.Recipe, advice.SaysNoCureWith},
		{"lifted to where it helps", []advice.Trial{own(20), trial(advice.Recipe, 50)}, nil, advice.AskForButPass, advice.Recipe, advice.SaysGoRound},
		{"an order that departs", []advice.Trial{own(88), departing(99)}, nil, advice.NoCure, advice.OwnWay, advice.SaysPassedOver},
		{"one that leaves a stage out", []advice.Trial{own(88), less(99)}, nil, advice.NoCure, advice.OwnWay, advice.SaysNoCure},
		{"the easier of two alike", []advice.Trial{own(88), trial("star", 96), trial(advice.Recipe, 97)}, nil, advice.AskFor, "star", advice.SaysAsk},
		{"the better of two", []advice.Trial{own(88), trial("star", 96), trial(advice.Recipe, 97.1)}, nil, advice.AskFor, advice.Recipe, advice.SaysAsk},
		{"a repeat is easier still", []advice.Trial{own(88), trial("star", 96), trial(advice.OneMorePass, 95.1)}, nil, advice.AskFor, advice.OneMorePass, advice.SaysAsk},
		{"a repeat that does less", []advice.Trial{own(88), trial("star", 96), trial(advice.OneMorePass, 95)}, nil, advice.AskFor, "star", advice.SaysAsk},
		{"on angles never again", []advice.Trial{own(88), trial(advice.LastTwice, 96)}, func(c *advice.Case) { c.Hundreds = onAngle }, advice.AskFor, advice.LastTwice, advice.SaysNeverAgain},
	} {
		of := advice.Case{Class: advice.Strong, Trials: c.trials, FrictionSD: 15}
		if len(c.trials) > 0 {
			of.Class = c.trials[0].Class
		}
		if c.change != nil {
			c.change(&of)
		}
		got := advice.Decide(of)
		if got.Branch != c.want || got.Way != c.way || !finding.Has(got.Says(), c.says) {
			t.Errorf("%s: %q by %q, saying %v; want %q by %q, saying %q", c.name, got.Branch, got.Way, got.Says(), c.want, c.way, c.says)
		}
		if asks := slices.Contains([]advice.Way{advice.OneMorePass, advice.LastTwice, advice.Recipe}, c.way) && (c.want == advice.AskFor || c.want == advice.AskForButPass); got.AsksForRepeat() != asks {
			t.Errorf("%s: asks for a repeat: %v", c.name, !asks)
		}
	}
}

var onAngle = []procedure.Hundred{{Kind: "main", By: procedure.ByMeanAtAngle}}

// Unevenness during the work that is a quarter more is reported with the advice
// (limit of the design, engineering judgement).
func TestWhatLiesMoreUneven(t *testing.T) {
	for nominal, want := range map[float64]bool{0.125: false, 0.126: true} {
		first, better := own(88), trial(advice.Recipe, 99)
		first.UnevenMm.Nominal, better.UnevenMm.Nominal = 0.1, nominal
		got := advice.Decide(advice.Case{Class: advice.Noticeable, Trials: []advice.Trial{first, better}})
		if finding.Has(got.Reasons, advice.SaysUneven) != want {
			t.Errorf("uneven by %g mm instead of 0.1: told %v", nominal, !want)
		}
	}
}

// Friction dominates if cross-talk is less than a third of both together, and
// not from two thirds on (limits of the design, engineering judgement).
func TestOnScatter(t *testing.T) {
	for _, c := range []struct {
		elastic float64
		repeat  bool
		want    finding.Code
	}{{3.9, false, advice.FrictionRules}, {3.9, true, advice.FrictionRepeats}, {4.1, true, advice.CountAlike}, {7.9, false, advice.CountAlike}, {8.1, false, advice.CrossTalkRules}} {
		if got := advice.OnScatter(advice.Scatters{Friction: 10, Elastic: c.elastic, Both: 12}, c.repeat, []string{"main"}); len(got) != 1 || got[0].Code != c.want {
			t.Errorf("%g %% of 12 %%: %v, want %q", c.elastic, got, c.want)
		}
	}
	if got := advice.OnScatter(advice.Scatters{Friction: 15, Elastic: 3, Both: 12}, false, []string{"main"}); !finding.Has(got, advice.BothAreLess) {
		t.Errorf("less than friction alone: %v", got)
	}
}
