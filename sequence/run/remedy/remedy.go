// Package remedy is what to do about a trouble at the bench: steps in their order,
// what to mind, who decides. All of it is common practice, no source; the maker's
// manual overrides it.
package remedy

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/run"
)

// Advice is what to do about a trouble.
type Advice struct {
	Card     run.Direction     // whose trouble box of the card says the same in short; empty: neither
	Steps    []finding.Finding // in the order in which they are tried
	Cautions []finding.Finding // that belong to the steps
	Last     []finding.Finding // who decides, and that the manual overrides it
}

// soak is how long penetrating oil is left at the least (common practice, no
// source).
const soak unit.Duration = 15

var (
	loosenIt = []finding.Code{Stop, TurnIn, Penetrant, BackAndForth, Heat}
	stub     = []finding.Code{Penetrant, Heat, Grip, WeldNut, Centre, LeftDrill, Extractor, DrillOut, Insert, Chips, TryThread}
)

var whileLoosening = map[run.Trouble][]finding.Code{
	run.Seized:       loosenIt,
	run.GivingWay:    loosenIt,
	run.Broken:       append([]finding.Code{LeaveStub}, stub...),
	run.Stretched:    {Scrap, LookAtOthers},
	run.TurnsOn:      {Lever, Scrap},
	run.BoltThread:   {Scrap, LookAtOthers},
	run.HoleThread:   {Insert, Chips, TryThread},
	run.TurnedTwice:  {Describe},
	run.Missing:      {Search},
	run.OtherTrouble: {Describe},
}

var whileTightening = map[run.Trouble][]finding.Code{
	run.Seized:       {Stop, TakeOut, CleanThreads, FitNew},
	run.GivingWay:    {Stop, SlackenAll, TakeOut, FitNew},
	run.Broken:       slices.Concat([]finding.Code{Stop, SlackenAll}, stub, []finding.Code{FitNew}),
	run.Stretched:    {Stop, Scrap, LookAtOthers, FitNew},
	run.TurnsOn:      {Stop, SlackenAll, TakeOut, FitNew},
	run.BoltThread:   {Stop, TakeOut, Scrap, FitNew},
	run.HoleThread:   {Stop, TakeOut, Insert, Chips, TryThread, FitNew},
	run.TurnedTwice:  {Stop, NotBack, FitNew},
	run.Missing:      {Search, SameKind},
	run.OtherTrouble: {Stop, Describe},
}

// cautions are what belongs to each step.
var cautions = map[finding.Code][]finding.Code{
	Penetrant:    {Fire},
	Heat:         {Fire, HeatSoftens},
	WeldNut:      {Welding},
	LeftDrill:    {Glasses, DrillWanders},
	Extractor:    {ExtractorBreaks},
	DrillOut:     {Glasses, DrillWanders},
	CleanThreads: {NoOil},
}

// boxes are the troubles that a box of the card is about.
var boxes = map[run.Direction][]run.Trouble{
	run.Loosen:  {run.Seized, run.GivingWay, run.Broken},
	run.Tighten: {run.GivingWay, run.TurnsOn, run.Stretched, run.BoltThread, run.HoleThread},
}

// For gives what to do about a trouble while loosening or tightening.
func For(t run.Trouble, d run.Direction) Advice {
	codes := whileLoosening[t]
	if d == run.Tighten {
		codes = whileTightening[t]
	}
	a := advice(codes)
	if slices.Contains(boxes[d], t) {
		a.Card = d
	}
	return a
}

// ForUnsure gives what to do about an angle that was interrupted.
func ForUnsure() Advice { return advice([]finding.Code{NoGuess, FitNew}) }

func advice(codes []finding.Code) Advice {
	var a Advice
	for _, code := range codes {
		a.Steps = append(a.Steps, noted(code))
		for _, mind := range cautions[code] {
			if !finding.Has(a.Cautions, mind) {
				a.Cautions = append(a.Cautions, finding.Warned(mind, nil).From(finding.CommonPractice))
			}
		}
	}
	a.Last = []finding.Finding{noted(LeadDecides), noted(ManualFirst)}
	return a
}

func noted(code finding.Code) finding.Finding {
	f := finding.Noted(code, nil).From(finding.CommonPractice)
	if code == Penetrant {
		f.Values = finding.Values{"wait": soak}
	}
	return f
}
