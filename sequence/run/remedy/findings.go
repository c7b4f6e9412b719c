package remedy

import "drawdown/geometry/finding"

// Steps of remedies, in the order in which they are tried.
const (
	Stop         finding.Code = "remedy stop"           //
	TurnIn       finding.Code = "remedy turn in"        //
	Penetrant    finding.Code = "remedy penetrant"      // wait
	BackAndForth finding.Code = "remedy back and forth" //
	Heat         finding.Code = "remedy heat"           //
	LeaveStub    finding.Code = "remedy leave stub"     //
	Depth        finding.Code = "remedy depth"          //
	Grip         finding.Code = "remedy grip"           //
	WeldNut      finding.Code = "remedy weld nut"       //
	Cover        finding.Code = "remedy cover"          //
	Centre       finding.Code = "remedy centre"         //
	LeftDrill    finding.Code = "remedy left drill"     //
	Extractor    finding.Code = "remedy extractor"      //
	DrillOut     finding.Code = "remedy drill out"      //
	Insert       finding.Code = "remedy insert"         //
	Chips        finding.Code = "remedy chips"          //
	TryThread    finding.Code = "remedy try thread"     //
	Lever        finding.Code = "remedy lever"          //
	Scrap        finding.Code = "remedy scrap"          //
	LookAtOthers finding.Code = "remedy others"         //
	SlackenAll   finding.Code = "remedy slacken all"    //
	TakeOut      finding.Code = "remedy take out"       //
	CleanThreads finding.Code = "remedy clean threads"  //
	FitNew       finding.Code = "remedy fit new"        //
	NoGuess      finding.Code = "remedy no guess"       //
	NotBack      finding.Code = "remedy not back"       //
	Lifted       finding.Code = "remedy lifted"         //
	Search       finding.Code = "remedy search"         //
	SameKind     finding.Code = "remedy same kind"      //
	Describe     finding.Code = "remedy describe"       //
)

// Cautions.
const (
	Glasses         finding.Code = "remedy glasses"          //
	Fire            finding.Code = "remedy fire"             //
	HeatSoftens     finding.Code = "remedy heat softens"     //
	Welding         finding.Code = "remedy welding"          //
	DrillWanders    finding.Code = "remedy drill wanders"    //
	ExtractorBreaks finding.Code = "remedy extractor breaks" //
	LongLever       finding.Code = "remedy long lever"       //
	NoOil           finding.Code = "remedy no oil"           //
)

// LeadDecides names the person who decides.
const LeadDecides finding.Code = "remedy lead" //
