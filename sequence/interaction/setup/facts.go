package setup

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/strength"
)

// Facts about a joint, stated or assumed.
const (
	Gasket          finding.Code = "fact gasket kind"           // gasket
	GasketStiffness finding.Code = "fact gasket stiffness"      // stiffness
	Foundation      finding.Code = "fact foundation"            // stiffness
	RowStated       finding.Code = "fact row"                   // bending, foundation, length, start
	GasketStrip     finding.Code = "fact gasket strip"          // width
	GasketBounded   finding.Code = "fact gasket bounded"        // most, thickness
	GasketWhole     finding.Code = "fact gasket on whole face"  // why: nothing, inside, ring
	GasketRaised    finding.Code = "fact gasket on raised face" // inner, outer
	FlangeAcross    finding.Code = "fact flange across"         // outer
	PartMaterial    finding.Code = "fact part material"         // material
	PartThickness   finding.Code = "fact part thickness"        // thickness, by: nothing, half, grip, height
	UnderMaterial   finding.Code = "fact under material"        // material
	UnderThickness  finding.Code = "fact under thickness"       // thickness
	SeparateParts   finding.Code = "fact separate parts"        // parts, width
	FacesMeet       finding.Code = "fact faces meet"            // factor

	FlangeBore    finding.Code = "fact flange bore"      // bore
	Pipe          finding.Code = "fact pipe"             // wall, radius
	Flexibility   finding.Code = "fact bolt flexibility" // flexibility
	RowSize       finding.Code = "fact row size"         // width, length
	RowLeft       finding.Code = "fact row left aside"   //
	EqualParts    finding.Code = "fact two equal parts"  //
	Outline       finding.Code = "fact outline"          // width, height
	KindGrip      finding.Code = "fact kind grip"        // kind, grip
	KindThread    finding.Code = "fact kind all thread"  // kind
	KindStiffness finding.Code = "fact kind stiffness"   // kind, why
)

// basis are the facts shown on a sheet, the gasket first, because it matters
// most.
var basis = []finding.Code{
	Foundation, GasketStiffness, RowStated, Gasket, GasketBounded, GasketStrip, GasketWhole, GasketRaised, FlangeAcross,
	PartMaterial, PartThickness, UnderMaterial, UnderThickness, SeparateParts, FacesMeet,
}

// Basis selects the facts about part and gasket from those stated or assumed.
func Basis(facts []finding.Finding) (list []finding.Finding) {
	for _, code := range basis {
		for _, f := range facts {
			if f.Code == code {
				list = append(list, f)
			}
		}
	}
	return list
}

// OfBolts reports whether a fact is about a kind of bolt. There are many of
// these, and they matter little.
func OfBolts(f finding.Finding) bool { return f.At.Kind != "" }

// assume records a fact, without duplicates.
func (s *settledSetup) assume(code finding.Code, values finding.Values) {
	noted := finding.Noted(code, values)
	if !slices.ContainsFunc(s.Assumed, noted.Same) {
		s.Assumed = append(s.Assumed, noted)
	}
}

// assumeOf records an assumption about a kind.
func (s *settledSetup) assumeOf(kind plan.Kind, code finding.Code, values finding.Values) {
	values["kind"] = kind.Name
	s.Assumed = append(s.Assumed, finding.Noted(code, values).About(finding.Place{Kind: kind.Name}))
}

// facts returns what is stated.
func (s Setup) facts() (list []finding.Finding) {
	say := func(stated bool, code finding.Code, values finding.Values) {
		if stated {
			list = append(list, finding.Noted(code, values))
		}
	}
	say(s.Material != "", PartMaterial, finding.Values{"material": materialTerm(s.Material)})
	say(s.Thickness != 0, PartThickness, finding.Values{"thickness": s.Thickness})
	say(s.Counterpart != "", UnderMaterial, finding.Values{"material": materialTerm(s.Counterpart)})
	say(s.CounterpartThickness != 0, UnderThickness, finding.Values{"thickness": s.CounterpartThickness})
	say(s.Gasket != "" && s.Stiffness == (bounds.Band{}), Gasket, finding.Values{"gasket": gasketTerm(s.Gasket)})
	say(s.Stiffness != (bounds.Band{}), GasketStiffness, finding.Values{"stiffness": s.Stiffness.Rough()})
	say(s.Foundation != (bounds.Band{}) && s.Row == nil, Foundation, finding.Values{"stiffness": s.Foundation.Rough()})
	say(s.Strip != 0, GasketStrip, finding.Values{"width": s.Strip})
	say(s.Own != 0, Flexibility, finding.Values{"flexibility": float64(s.Own)})
	if r := s.Row; r != nil {
		say(true, RowStated, finding.Values{"bending": r.BendingNmm2, "foundation": s.Foundation.Rough(), "length": unit.Length(r.LengthMm), "start": unit.Length(r.StartMm)})
	}
	if f := s.Flange; f != nil {
		say(f.Outer != 0, FlangeAcross, finding.Values{"outer": f.Outer})
		say(f.Bore != 0, FlangeBore, finding.Values{"bore": f.Bore})
		say(!f.FullFace(), GasketRaised, finding.Values{"inner": f.GasketInner, "outer": f.GasketOuter})
		say(f.PipeWall != 0, Pipe, finding.Values{"wall": f.PipeWall, "radius": f.PipeRadius})
	}
	return list
}

// materialTerm is the word in the list of materials, or the text of a file that
// states a modulus.
func materialTerm(word string) finding.Term {
	if known, err := strength.ParseMaterial(word); err == nil && slices.Contains(strength.Materials(), known.Name) {
		return finding.Term(known.Name)
	}
	return finding.Term(word)
}

// gasketTerm is the word in the list of gaskets. "none" alone would be unclear
// among the terms of the trade.
func gasketTerm(g compliance.Gasket) finding.Term {
	if g == compliance.NoGasket {
		return "no gasket"
	}
	return finding.Term(g)
}
