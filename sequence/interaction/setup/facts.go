package setup

import (
	"fmt"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/tension/strength"
)

// FactKind is what of a joint a fact tells.
type FactKind string

const (
	PartMaterial       FactKind = "part material" // Word
	PartThickness      FactKind = "part thickness"
	UnderMaterial      FactKind = "under material" // Word
	UnderThickness     FactKind = "under thickness"
	GasketKind         FactKind = "gasket kind"      // Word: of Gaskets
	GasketStiffness    FactKind = "gasket stiffness" // Band, MPa/mm
	GasketStrip        FactKind = "gasket strip"     // its width along the edge
	GasketOnWholeFace  FactKind = "gasket on whole face"
	GasketOnRaisedFace FactKind = "gasket on raised face" // From and To: diameters
	FlangeAcross       FactKind = "flange across"
)

// FactKinds lists them.
func FactKinds() []FactKind {
	return []FactKind{PartMaterial, PartThickness, UnderMaterial, UnderThickness, GasketKind, GasketStiffness, GasketStrip, GasketOnWholeFace, GasketOnRaisedFace, FlangeAcross}
}

// Fact is something of part and gasket that a forecast rests on. A word is that
// of the lists of materials and gaskets, or a modulus as the file has it.
type Fact struct {
	Of       FactKind
	Word     string
	From, To unit.Length // To alone where there is but one
	Band     bounds.Band
	Assumed  bool
}

// basis lists what the model rests on, the gasket first: it counts most.
func (s *settledSetup) basis(k compliance.Kernel) (list []Fact) {
	switch {
	case s.stated.Foundation != (bounds.Band{}):
		list = append(list, Fact{Of: GasketStiffness, Band: s.stated.Foundation})
	case s.stated.Stiffness != (bounds.Band{}):
		list = append(list, Fact{Of: GasketStiffness, Band: s.stated.Stiffness})
	default:
		list = append(list, Fact{Of: GasketKind, Word: string(s.gasket), Assumed: s.stated.Gasket == ""})
	}
	switch k := k.(type) {
	case compliance.Plate:
		if k.NarrowestMm > 0 {
			list = append(list, Fact{Of: GasketStrip, To: unit.Length(k.NarrowestMm), Assumed: s.stated.Strip == 0})
		} else {
			list = append(list, Fact{Of: GasketOnWholeFace, Assumed: true})
		}
	case compliance.Flange:
		stated := compliance.Flange{}
		if s.stated.Flange != nil {
			stated = *s.stated.Flange
		}
		if k.FullFace() {
			list = append(list, Fact{Of: GasketOnWholeFace, Assumed: true})
		} else {
			list = append(list, Fact{Of: GasketOnRaisedFace, From: k.GasketInner, To: k.GasketOuter})
		}
		list = append(list, Fact{Of: FlangeAcross, To: k.Outer, Assumed: stated.Outer == 0})
	}
	if s.stated.Row != nil { // its figures hold the part
		return list
	}
	list = append(list,
		Fact{Of: PartMaterial, Word: materialWord(s.material), Assumed: s.stated.Material == ""},
		Fact{Of: PartThickness, To: s.part.Thickness, Assumed: s.stated.Thickness == 0},
		Fact{Of: UnderMaterial, Word: materialWord(s.under), Assumed: s.stated.Counterpart == ""})
	if s.stated.CounterpartThickness != 0 {
		list = append(list, Fact{Of: UnderThickness, To: s.stated.CounterpartThickness})
	}
	return list
}

// materialWord is the word of the list of materials, or what the file has where it
// states a modulus.
func materialWord(word string) string {
	if known, err := strength.ParseMaterial(word); err == nil && slices.Contains(strength.Materials(), known.Name) {
		return known.Name
	}
	return word
}

// String says it in English.
func (f Fact) String() string {
	switch f.Of {
	case PartMaterial:
		return "part of " + f.Word
	case PartThickness:
		return fmt.Sprintf("bends as a plate of %v", f.To)
	case UnderMaterial:
		return "on " + f.Word
	case UnderThickness:
		return fmt.Sprintf("which bends as a plate of %v", f.To)
	case GasketKind:
		return "gasket: " + f.Word
	case GasketStiffness:
		return fmt.Sprintf("gasket of %s MPa/mm", bandWords(f.Band))
	case GasketStrip:
		return fmt.Sprintf("gasket %v wide along the edge", f.To)
	case GasketOnWholeFace:
		return "gasket over the whole face"
	case GasketOnRaisedFace:
		return fmt.Sprintf("raised face, gasket %v to %v", f.From, f.To)
	case FlangeAcross:
		return fmt.Sprintf("flange %v across", f.To)
	}
	return string(f.Of)
}
