// Package remedy lists what to do about a trouble at the bench: the steps in
// order, cautions, and who decides. All of it is common practice, no source;
// the maker's manual overrides it.
package remedy

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/run"
)

// Advice is what to do about a trouble, in the order to try.
type Advice struct {
	Card    run.Direction // direction whose trouble box on the card covers this in short; empty: neither
	Steps   []Step
	Stub    []Step            // of a snapped bolt: how to remove the rest of it
	Decides []finding.Finding // who decides about anything that can do harm; none if nothing can
}

// Step is one thing to try, with its cautions.
type Step struct {
	Do   finding.Finding
	Mind []finding.Finding
}

// soak is the least time that penetrating oil is left to work (common practice,
// no source).
const soak unit.Duration = 15

// stub lists how to remove the rest of a snapped bolt, the gentlest ways first.
var stub = []finding.Code{Depth, Penetrant, Heat, Grip, WeldNut, Cover, Centre, LeftDrill, Extractor, DrillOut, Insert, Chips, TryThread}

var whileLoosening = map[run.Trouble][]finding.Code{
	run.Seized:       {Stop, TurnIn, Penetrant, BackAndForth, Heat},
	run.GivingWay:    {Stop, TurnIn, Penetrant, BackAndForth, Heat},
	run.Broken:       {Stop, LeaveStub},
	run.Stretched:    {Scrap, LookAtOthers},
	run.TurnsOn:      {Lever, Scrap},
	run.BoltThread:   {Scrap, CleanThreads, LookAtOthers},
	run.HoleThread:   {CleanThreads, Cover, Insert, Chips, TryThread},
	run.TurnedTwice:  {Lifted},
	run.Missing:      {Search},
	run.OtherTrouble: {Describe},
}

var whileTightening = map[run.Trouble][]finding.Code{
	run.Seized:       {Stop, NoOil, TakeOut, CleanThreads, FitNew},
	run.GivingWay:    {Stop, SlackenAll, TakeOut, FitNew},
	run.Broken:       {Stop, SlackenAll, FitNew},
	run.Stretched:    {Stop, Scrap, LookAtOthers, FitNew},
	run.TurnsOn:      {Stop, SlackenAll, TakeOut, FitNew},
	run.BoltThread:   {Stop, TakeOut, Scrap, CleanThreads, FitNew},
	run.HoleThread:   {Stop, TakeOut, CleanThreads, Cover, Insert, Chips, TryThread, FitNew},
	run.TurnedTwice:  {Stop, NotBack, FitNew},
	run.Missing:      {Search, SameKind},
	run.OtherTrouble: {Stop, Describe},
}

// cautions lists the cautions of each step.
var cautions = map[finding.Code][]finding.Code{
	BackAndForth: {LongLever},
	Heat:         {Fire, HeatSoftens},
	WeldNut:      {Welding},
	LeftDrill:    {Glasses, DrillWanders},
	Extractor:    {ExtractorBreaks},
}

// boxes lists the troubles that a box of the card covers.
var boxes = map[run.Direction][]run.Trouble{
	run.Loosen:  {run.Seized, run.GivingWay, run.Broken},
	run.Tighten: {run.GivingWay, run.TurnsOn, run.Stretched, run.BoltThread, run.HoleThread},
}

// For returns what to do about a trouble while loosening or tightening.
func For(t run.Trouble, d run.Direction) Advice {
	codes := whileLoosening[t]
	if d == run.Tighten {
		codes = whileTightening[t]
	}
	a := Advice{Steps: steps(codes)}
	if t == run.Broken {
		a.Stub = steps(stub)
	}
	if slices.Contains(codes, Heat) || slices.Contains(codes, Insert) || t == run.Broken {
		a.Decides = []finding.Finding{noted(LeadDecides)}
	}
	if slices.Contains(boxes[d], t) {
		a.Card = d
	}
	return a
}

// ForUnsure returns what to do about an interrupted angle.
func ForUnsure() Advice {
	return Advice{Steps: steps([]finding.Code{NoGuess, FitNew})}
}

func steps(codes []finding.Code) []Step {
	var all []Step
	for _, code := range codes {
		step := Step{Do: noted(code)}
		for _, mind := range cautions[code] {
			step.Mind = append(step.Mind, finding.Warned(mind, nil).From(finding.CommonPractice))
		}
		all = append(all, step)
	}
	return all
}

func noted(code finding.Code) finding.Finding {
	f := finding.Noted(code, nil).From(finding.CommonPractice)
	if code == Penetrant {
		f.Values = finding.Values{"wait": soak}
	}
	return f
}
