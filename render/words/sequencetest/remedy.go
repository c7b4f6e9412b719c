package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/run/remedy"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	remedy.Stop:            {},
	remedy.TurnIn:          {},
	remedy.Penetrant:       {"wait": unit.Duration(15)},
	remedy.BackAndForth:    {},
	remedy.Heat:            {},
	remedy.LeaveStub:       {},
	remedy.Depth:           {},
	remedy.Lifted:          {},
	remedy.LongLever:       {},
	remedy.Grip:            {},
	remedy.WeldNut:         {},
	remedy.Centre:          {},
	remedy.LeftDrill:       {},
	remedy.Extractor:       {},
	remedy.DrillOut:        {},
	remedy.Insert:          {},
	remedy.Chips:           {},
	remedy.Cover:           {},
	remedy.TryThread:       {},
	remedy.Lever:           {},
	remedy.Scrap:           {},
	remedy.LookAtOthers:    {},
	remedy.SlackenAll:      {},
	remedy.TakeOut:         {},
	remedy.CleanThreads:    {},
	remedy.FitNew:          {},
	remedy.NoGuess:         {},
	remedy.NotBack:         {},
	remedy.Search:          {},
	remedy.SameKind:        {},
	remedy.Describe:        {},
	remedy.Glasses:         {},
	remedy.Fire:            {},
	remedy.HeatSoftens:     {},
	remedy.Welding:         {},
	remedy.DrillWanders:    {},
	remedy.ExtractorBreaks: {},
	remedy.NoOil:           {},
	remedy.LeadDecides:     {},
})
