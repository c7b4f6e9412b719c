package advice

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
)

// Branch names the result of a prediction.
type Branch string

const (
	// MendFile: a stage is set below an earlier one and has no effect, so
	// nothing is judged.
	MendFile Branch = "mend file"

	// Without other ways to compare with, by the class alone.
	NothingToChange Branch = "nothing to change" // negligible
	RepeatOnce      Branch = "repeat once"       // noticeable
	SeveralPasses   Branch = "several passes"    // strong

	// LeaveIt: no bolt ends low enough to matter.
	LeaveIt Branch = "leave it"
	// LeaveItsRepeat: the same, thanks to the file's own repeat.
	LeaveItsRepeat Branch = "leave it with its repeat"

	// NoCure: no way raises the lowest bolt enough to be reported.
	NoCure Branch = "no cure"
	// NoCureWith: one does, but the bolt is still far too low.
	NoCureWith Branch = "no cure with the best"

	// AskFor: one way is worth asking the maker for.
	AskFor Branch = "ask for"
	// AskForButPass: the same, but the joint is still far from even.
	AskForButPass Branch = "ask for, and go round"
)

// Texts of the advice, by branch and additional ones.
const (
	SaysMendFile   finding.Code = "advice mend file"
	SaysNothing    finding.Code = "advice nothing to change"
	SaysRepeat     finding.Code = "advice repeat once"
	SaysSeveral    finding.Code = "advice several passes"
	SaysNotOnAngle finding.Code = "advice not on angles"
	SaysLeave      finding.Code = "advice leave"
	SaysKeeps      finding.Code = "advice keeps"        // lowest, sd
	SaysOwnRepeat  finding.Code = "advice own repeat"   // before, lowest, sd
	SaysNoCure     finding.Code = "advice no cure"      // lowest
	SaysNoCureWith finding.Code = "advice no cure with" // lowest, change, best
	SaysPassedOver finding.Code = "advice passed over"  //
	SaysGoRound    finding.Code = "advice go round"     //
	SaysPasses     finding.Code = "advice passes"       // passes
	SaysAsk        finding.Code = "advice ask"          // change
	SaysLifts      finding.Code = "advice lifts"        // from, to, nominalFrom, nominalTo
	SaysUneven     finding.Code = "advice but uneven"   // with, without
	SaysMaker      finding.Code = "advice maker stands" //
	SaysNeverAgain finding.Code = "advice never again"  // kinds
)

// Trial is a way to do the work, with the figures on which the advice is based.
type Trial struct {
	Way      Way
	Lowest   bounds.Band // final preload of the lowest bolt in percent; Low is the worst case
	Class    Class       // by the worst case
	UnevenMm bounds.Band // largest value during the work
	Rules    judge.Verdict
	OwnOrder bool // the order is the file's
	Less     bool // leaves out something of the file, and must never be done
}

// Case is everything on which the advice is based.
type Case struct {
	Class         Class   // of the joint with the file's own work
	Falls         bool    // a stage has no effect
	Trials        []Trial // the file's own first; none: nothing was tried
	BeforeRepeats float64 // of the lowest bolt before the file's own repeats of its last torque, in percent; 0: there are none
	FrictionSD    float64 // caused by the torque, in percent
	Repeats       int     // of the last pass until the joint is even with the softest gasket; 0: none, or unknown
	Hundreds      []procedure.Hundred
}

// Advice is what to do, and why.
type Advice struct {
	Branch  Branch
	Best    int // index of the trial that is worth the change; 0: none
	Way     Way // of that trial
	Head    finding.Finding
	Reasons []finding.Finding
}

// Says returns the head and the reasons.
func (a Advice) Says() []finding.Finding { return append([]finding.Finding{a.Head}, a.Reasons...) }

// AsksForRepeat reports whether the recommended way applies the last torque
// again.
func (a Advice) AsksForRepeat() bool {
	return (a.Branch == AskFor || a.Branch == AskForButPass) && slices.Contains(repeats, a.Way)
}

// Decide derives the advice. It also names the kinds that must never be turned
// again.
func Decide(c Case) Advice {
	a := c.decided()
	if kinds := procedure.OnAngle(c.Hundreds); c.Class != Negligible && len(kinds) > 0 {
		a.Reasons = append(a.Reasons, finding.Noted(SaysNeverAgain, finding.Values{"kinds": kinds}))
	}
	return a
}

func (c Case) decided() Advice {
	switch {
	case c.Falls:
		return Advice{Branch: MendFile, Head: finding.Noted(SaysMendFile, nil)}
	case len(c.Trials) == 0:
		return ByClass(c.Class, len(procedure.OnAngle(c.Hundreds)) > 0)
	}
	best, passedOver := c.best()
	switch {
	case c.Trials[0].Class == Negligible:
		return c.leave(best)
	case best == 0 || c.Trials[best].Lowest.Low < limits.HopelessPercent:
		return c.noCure(best, passedOver)
	}
	return c.askFor(best)
}

// ByClass is the advice by the class alone.
func ByClass(class Class, anglesEnd bool) Advice {
	if class == Negligible {
		return Advice{Branch: NothingToChange, Head: finding.Noted(SaysNothing, nil)}
	}
	a := Advice{Branch: SeveralPasses, Head: finding.Noted(SaysSeveral, nil)}
	if class == Noticeable {
		a = Advice{Branch: RepeatOnce, Head: finding.Noted(SaysRepeat, nil)}
	}
	if anglesEnd {
		a.Reasons = []finding.Finding{finding.Noted(SaysNotOnAngle, nil)}
	}
	return a
}

// best picks the trial that is worth the change. A gain within the scatter of
// the torque is not, and neither is an order that departs from the trade's
// rules, unless it is the file's own. passedOver reports that such an order
// would do better.
func (c Case) best() (best int, passedOver bool) {
	own := c.Trials[0]
	for i, trial := range c.Trials {
		gain, so := trial.Lowest.Low-own.Lowest.Low, c.Trials[best].Lowest.Low-own.Lowest.Low
		enough := float64(limits.WorthPoints)
		if trial.Class == Strong {
			enough = limits.WorthStrongPoints
		}
		// An easier change wins unless another raises the worst bolt by a point
		// more.
		margin := float64(limits.EasierPoints)
		if trial.Way == OneMorePass || trial.Way == LastTwice {
			margin = -margin // to do a stage again is the easiest change of all
		}
		switch better := own.Class != Negligible && !trial.Less && gain >= enough && gain > so+margin; {
		case better && trial.Rules == judge.Departs && !trial.OwnOrder:
			passedOver = true
		case better:
			best = i
		}
	}
	return best, passedOver
}

func (c Case) leave(best int) Advice {
	own := c.Trials[0]
	a := Advice{Branch: LeaveIt, Best: best, Way: c.Trials[best].Way, Head: finding.Noted(SaysLeave, nil)}
	reason := finding.Noted(SaysKeeps, finding.Values{"lowest": own.Lowest.Low, "sd": c.FrictionSD})
	if c.BeforeRepeats > 0 && own.Lowest.Low-c.BeforeRepeats >= limits.WorthPoints {
		a.Branch = LeaveItsRepeat
		reason = finding.Noted(SaysOwnRepeat, finding.Values{"before": c.BeforeRepeats, "lowest": own.Lowest.Low, "sd": c.FrictionSD})
	}
	a.Reasons = []finding.Finding{reason}
	return a
}

func (c Case) noCure(best int, passedOver bool) Advice {
	own, other := c.Trials[0], c.Trials[best]
	a := Advice{Branch: NoCure, Best: best, Way: other.Way, Head: finding.Noted(SaysGoRound, nil)}
	if best == 0 {
		a.Reasons = append(a.Reasons, finding.Noted(SaysNoCure, finding.Values{"lowest": own.Lowest.Low}))
	} else {
		a.Branch = NoCureWith
		a.Reasons = append(a.Reasons, finding.Noted(SaysNoCureWith, finding.Values{"lowest": own.Lowest.Low, "change": changed(other.Way, c.Hundreds), "best": other.Lowest.Low}))
	}
	if passedOver {
		a.Reasons = append(a.Reasons, finding.Noted(SaysPassedOver, nil))
	}
	return c.withPasses(a)
}

func (c Case) askFor(best int) Advice {
	own, other := c.Trials[0], c.Trials[best]
	a := Advice{Branch: AskFor, Best: best, Way: other.Way, Head: finding.Noted(SaysAsk, finding.Values{"change": changed(other.Way, c.Hundreds)})}
	a.Reasons = append(a.Reasons, finding.Noted(SaysLifts, finding.Values{
		"from": own.Lowest.Low, "to": other.Lowest.Low, "nominalFrom": own.Lowest.Nominal, "nominalTo": other.Lowest.Nominal,
	}))
	if other.UnevenMm.Nominal > limits.MoreUneven*own.UnevenMm.Nominal {
		a.Reasons = append(a.Reasons, finding.Noted(SaysUneven, finding.Values{"with": other.UnevenMm.Nominal, "without": own.UnevenMm.Nominal}))
	}
	if other.Class == Strong {
		a.Branch = AskForButPass
		a.Reasons = append(a.Reasons, finding.Noted(SaysGoRound, nil))
		a = c.withPasses(a)
	}
	a.Reasons = append(a.Reasons, finding.Noted(SaysMaker, nil))
	return a
}

// withPasses adds the number of passes needed, if known.
func (c Case) withPasses(a Advice) Advice {
	if c.Repeats > 0 {
		a.Reasons = append(a.Reasons, finding.Noted(SaysPasses, finding.Values{"passes": c.Repeats}))
	}
	return a
}
