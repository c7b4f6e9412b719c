package job

import (
	"cmp"

	"drawdown/geometry/finding"
	"drawdown/patterns/machine"
	"drawdown/patterns/meaning"
	"drawdown/patterns/meant"
	"drawdown/patterns/measures"
	"drawdown/patterns/mechanics"
	"drawdown/patterns/places"
	"drawdown/patterns/problem"
	"drawdown/patterns/texts"
	"drawdown/sequence/figures"
	"drawdown/sequence/judge"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
	"drawdown/sequence/stages"
)

// What becomes of a warning that may be meant.
const (
	IsMeant     finding.Code = "meant"         // why: the warning, reason
	MayBeMeant  finding.Code = "meant or not"  // why: the warning, example: as a file acknowledges it
	MeantUnused finding.Code = "meant, unused" // name
)

// mayBeMeant names the warnings of what is unusual and may be right. What breaks a
// bolt, strips a thread or bends a camshaft is never acknowledged.
var mayBeMeant = map[finding.Code]meant.Name{
	meaning.OddPlace: meant.OffItsPlace, meaning.Stray: meant.FarOff,
	places.FastenersOff: meant.OffThePart, places.BoreOff: meant.OffThePart, places.DowelOff: meant.OffThePart,
	places.BoreOffOwnEdge: meant.OffThePart, places.DowelOffOwnEdge: meant.OffThePart,
	measures.Unusual: meant.Measures, measures.OtherSystem: meant.Measures, measures.LengthTwice: meant.Measures,
	measures.PlaceLeftOut: meant.Measures, measures.PlaceOfOtherList: meant.Measures, measures.PlaceUneven: meant.Measures, measures.PlaceUnlike: meant.Measures, measures.PlacesOfOther: meant.Measures,
	measures.LimitsApart: meant.Measures, measures.LengthOff: meant.Measures, measures.ShimsWide: meant.Measures,
	meaning.StageForAll: meant.EveryKind,
	places.KindOdd:      meant.Kind, meaning.KindUnused: meant.Kind,
	places.IDMissing: meant.MissingID,
	meaning.CastGap:  meant.CastNumbers, meaning.CastsIdle: meant.CastNumbers,
	judge.StatedDeparts: meant.Order, judge.StatedReversed: meant.Order, meaning.StarOffCircle: meant.Order,
	plan.SmallFirst: meant.SmallFirst, plan.FinishedEarly: meant.SmallFirst, stages.SmallerMore: meant.SmallFirst,
	meaning.KindNotTightened: meant.NotTightened, meaning.KindNotTakenOut: meant.NotTightened,
	stages.StageTwice: meant.Stages, stages.WaitsFirst: meant.Stages, stages.WaitsLast: meant.Stages, stages.EndsShort: meant.Stages, stages.UnitsMixed: meant.Stages,
	stages.CheckFirst: meant.CheckPass, stages.CheckDiffers: meant.CheckPass,
	figures.TorqueUsedOnce: meant.UsedOnce,
	figures.HoleOfLarger:   meant.Hole, figures.HoleWithoutClearance: meant.Hole,
	mechanics.StudWithHead: meant.Stud, mechanics.StudWithoutNut: meant.Stud,
	figures.LubricantDiffers: meant.Lubricants,
	meaning.InNoCluster:      meant.Clusters, meaning.ClustersCross: meant.Clusters, meaning.ClusterAlong: meant.Clusters,
	meaning.ClusterInGroups: meant.Clusters, places.ClusterOffBore: meant.Clusters,
	meaning.ClusterOdd: meant.Clusters, plan.CapsSprungAlone: meant.Clusters, judge.StatedParts: meant.Order, judge.StatedExchanged: meant.Order, places.BoreOffPitch: meant.Bores,
	stages.StepTooLarge: meant.Stages, stages.StepTooSmall: meant.Stages, stages.AllAtOnce: meant.Stages, stages.WaitsShort: meant.Stages, stages.EqualsApart: meant.Stages,
	places.OffItsRow: meant.OffItsPlace, places.EndOffPitch: meant.Labels, places.BoreOffLine: meant.Bores, places.DowelsDiffer: meant.Dowels, places.FrontAtLast: meant.View,
	meaning.IntoDiffers: meant.Kind, meaning.KindsAlike: meant.Kind, meaning.OffGap: meant.OffItsPlace,
	places.BoresOutside: meant.Bores, places.InnerOuter: meant.Kind, places.OutlineSlants: meant.OffThePart, places.StationFar: meant.Stations, places.BoreOffCentre: meant.Bores, places.NumbersApart: meant.Labels,
	places.LabelTwice: meant.Labels, places.LabelFar: meant.Labels, places.NumbersJumbled: meant.Labels, places.NumberMissing: meant.Labels,
	places.BoreOtherSize: meant.Bores, places.BoresOverlap: meant.Bores, places.BoreCutsHole: meant.Bores,
	places.DowelOnBolt: meant.Dowels, places.DowelInBore: meant.Dowels,
	places.StationsTogether: meant.Stations, places.StationOff: meant.Stations, places.StationOffMirror: meant.Stations,
	places.LabelsTogether: meant.Labels, places.SidesTogether: meant.Labels, places.LabelUpsideDown: meant.Labels, places.FlywheelAtFront: meant.View,
	places.DowelsTogether: meant.Dowels, places.DigitsExchanged: meant.OffItsPlace, places.FastenerLost: meant.OffItsPlace, places.LabelsExchanged: meant.Stations, meaning.ExtendsOther: meant.Texts, stages.WaitsSet: meant.Stages,
	places.NumberAlone: meant.Labels, places.CircleTurned: meant.OffItsPlace, places.FrontLabelAtRear: meant.View, places.FrontAcross: meant.View, places.IDsExchanged: meant.OffItsPlace, places.PairOfDigits: meant.OffItsPlace, places.AllInTheMiddle: meant.FarOff,
	places.FrontFacesView: meant.View,
	texts.TextTorque:      meant.Texts, texts.TextAngle: meant.Texts, texts.TextDry: meant.Texts, texts.TextLubricant: meant.Texts, texts.TextCount: meant.Texts,
	texts.TextName: meant.Texts, texts.TextSize: meant.Texts, texts.TextGasket: meant.Texts, texts.TextSide: meant.Texts, texts.TextOtherWork: meant.Texts,
	texts.TextMachine:   meant.Texts,
	texts.TextsDisagree: meant.Texts, texts.TextPlace: meant.Texts, texts.TextReuse: meant.Texts, texts.TextCylinders: meant.Texts,
	texts.TextOtherKind: meant.Texts, texts.TextStageKind: meant.Texts, texts.TextAngleFrom: meant.Texts,
	texts.TextGasketAgain: meant.Texts, texts.TextFirst: meant.Texts, texts.TextBefore: meant.Texts, texts.TextAtSide: meant.Texts, texts.TextFromSide: meant.Texts,
	texts.TextPressure: meant.Texts, texts.TextUpsideDown: meant.Texts, texts.TextWait: meant.Texts, texts.TextHot: meant.Texts, texts.TextsThrust: meant.Texts, texts.TextDesignation: meant.Texts, texts.TextAgain: meant.Texts, texts.TextOtherOrder: meant.Texts, machine.TextOfJoint: meant.Steps,
	mechanics.PartThick: meant.PartThickness, mechanics.PartThin: meant.PartThickness, mechanics.GripShort: meant.PartThickness,

	machine.PartTwice: meant.Steps, machine.PartIsJoint: meant.Steps, overhaul.PartTooEarly: meant.Steps, overhaul.OffTooEarly: meant.Steps,
	machine.OtherMachine: meant.Machine, overhaul.TitleTwice: meant.Steps, overhaul.PartOtherSide: meant.Banks,
	machine.GasketUnlisted: meant.Gaskets, overhaul.GasketUnlisted: meant.Gaskets, overhaul.GasketOfOther: meant.Gaskets,
	overhaul.PartBehind: meant.Steps, overhaul.DrainedLate: meant.Steps, overhaul.TurnedOnce: meant.Steps, overhaul.StopperStays: meant.Steps, overhaul.TextOfOther: meant.Steps,
	overhaul.ItemOfOtherSide: meant.Banks, overhaul.SisterLacks: meant.Banks, overhaul.SisterMissing: meant.Banks, overhaul.SistersOrder: meant.Banks, overhaul.MassesDiffer: meant.Banks,
	overhaul.BanksDiffer: meant.Banks, overhaul.FrontUnturned: meant.Banks, overhaul.CylindersShared: meant.Banks, overhaul.CylinderUnknown: meant.Banks,
	overhaul.LimitsDiffer: meant.Banks, measures.BoreOff: meant.Measures, figures.AcrossOfOther: meant.Hole, overhaul.ItemOfOther: meant.Steps, overhaul.ItemTwice: meant.Steps, overhaul.FluidOneWay: meant.Steps, overhaul.SwitchedOn: meant.Steps, overhaul.ToolMissing: meant.Locks,
	overhaul.MassUnlikeJoint: meant.Steps, overhaul.CylinderLeftOut: meant.Measures, overhaul.CylinderNowhere: meant.Measures,
	measures.LimitOnWrongSide: meant.Measures, measures.WidthsDiffer: meant.Measures, measures.SizeOff: meant.Measures,
	overhaul.GasketNowhere: meant.Gaskets,
	overhaul.LockStaysIn:   meant.Locks, overhaul.LockInAgain: meant.Locks, overhaul.LockOutAgain: meant.Locks,
}

// acknowledged makes notes of the warnings that a file means, and says of the
// others how they are acknowledged. An entry that no warning meets is reported.
func acknowledged(entries []meant.Entry, problems problem.List) problem.List {
	reasons, met := map[meant.Name]string{}, map[meant.Name]bool{}
	for _, e := range entries {
		reasons[e.Name] = e.Reason
	}
	for i := range problems {
		p := &problems[i]
		if p.Severity != problem.Warning || p.Found == nil || p.Found.Code == MayBeMeant {
			continue // or of a joint, whose own file may mean it
		}
		code := cmp.Or(p.Code, p.Found.Code)
		name, may := mayBeMeant[code]
		if !may {
			continue
		}
		said := finding.Warned(MayBeMeant, finding.Values{"why": *p.Found, "example": "meant: {" + string(name) + ": …}"})
		if reason := reasons[name]; reason != "" {
			met[name] = true
			said = finding.Noted(IsMeant, finding.Values{"why": *p.Found, "reason": problem.Quoted(reason)})
		}
		p.Code, p.Severity, p.Found = code, said.Severity, &said
	}
	if problems.Stops() {
		return problems // and hides warnings that an entry may be for
	}
	for _, e := range entries {
		if e.Own && !met[e.Name] {
			problems = append(problems, warnedAt(e.At, finding.Warned(MeantUnused, finding.Values{"name": string(e.Name)})))
		}
	}
	return problems
}
