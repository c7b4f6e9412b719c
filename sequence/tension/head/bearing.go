package head

import (
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// Ring is a face that presses or turns on another.
type Ring struct{ Face, Hole unit.Length } // outer and inner diameter

// Bearing is the face on which the head turns, and the face pressed on the
// part.
type Bearing struct {
	Ring                // face on which the head turns: of the part or the washer
	Part    Ring        // face on the uppermost clamped part; the same without a washer
	Washer  *WasherSize // nil: none
	Assumed []finding.Finding
}

// Effective returns the diameter at which friction under the head acts.
func (r Ring) Effective() unit.Length {
	return (r.Face + r.Hole) / 2 // ISO 16047: Db = (Do + dh)/2; VDI 2230-1: DKm = (dW + Dh)/2
}

// widest limits a head or a washer face, in diameters of its thread, to find
// wrong units (common practice, no source: large washers reach three
// diameters).
const widest = 4

// Stated is what is known about a head and what is under it. Zero values are
// unknown.
type Stated struct {
	Form       Form        // "": Hexagon
	Across     unit.Length // of a hexagon head
	WasherFace unit.Length // outer diameter of the bearing face; overrides Form and Across
	Washer     Washer      // "": NoWasher
	Hole       unit.Length
}

// Complete combines what is stated with the standards, for a bolt with the
// thread and the strength.
func Complete(t thread.Thread, class strength.Class, b Stated) (Bearing, error) {
	if b.Form == "" {
		b.Form = Hexagon
	}
	if err := b.Form.check(); err != nil {
		return Bearing{}, err
	}
	for _, given := range []struct {
		what finding.Term
		unit.Length
	}{{acrossMeasure, b.Across}, {faceMeasure, b.WasherFace}, {holeMeasure, b.Hole}} {
		least, most := unit.Length(t.MajorMm), unit.Length(t.MajorMm)*widest
		if given.Length != 0 && !(given.Length >= least && given.Length <= most) {
			return Bearing{}, finding.Failed(SizeRange, finding.Values{"what": given.what, "size": given.Length, "thread": t.Name, "least": least, "most": most})
		}
	}
	r := Bearing{}
	if err := r.settleFace(t, b); err != nil {
		return Bearing{}, err
	}
	r.settleHole(t, b)
	if err := r.settleWasher(t, class, b); err != nil {
		return Bearing{}, err
	}
	for _, on := range []Ring{r.Ring, r.Part} {
		if on.Face <= on.Hole {
			return Bearing{}, finding.Failed(FaceNotWider, finding.Values{"face": on.Face, "thread": t.Name, "hole": on.Hole})
		}
	}
	return r, nil
}

func (r *Bearing) settleFace(t thread.Thread, b Stated) error {
	switch {
	case b.WasherFace != 0:
		r.Face = b.WasherFace
		return nil
	case b.Across != 0 && b.Form != Hexagon:
		return finding.Failed(AcrossTellsNone, finding.Values{"across": b.Across, "form": finding.Term(b.Form), "hexagon": finding.Term(Hexagon)})
	case b.Across != 0:
		r.Face = BearingFace(b.Across, t.Unified())
		r.Assumed = append(r.Assumed, finding.Noted(FaceOfAcross, finding.Values{"face": r.Face, "across": b.Across}))
		return nil
	}
	face, standard, err := Face(t, b.Form)
	if err != nil {
		return err
	}
	r.Face = face
	r.Assumed = append(r.Assumed, finding.Noted(FaceAssumed, finding.Values{"face": face, "standard": bodyAndNumber(standard)}).From(standard))
	return nil
}

func (r *Bearing) settleHole(t thread.Thread, b Stated) {
	r.Hole = b.Hole
	if b.Hole == 0 {
		hole, standard := Hole(t)
		r.Hole = hole
		r.Assumed = append(r.Assumed, finding.Noted(HoleAssumed, finding.Values{"hole": hole, "standard": bodyAndNumber(standard)}).From(standard))
	}
	r.Part = r.Ring
}

// settleWasher adds the washer under the head. The head then turns on the
// washer, which does not turn.
func (r *Bearing) settleWasher(t thread.Thread, class strength.Class, b Stated) error {
	switch b.Washer {
	case "", NoWasher:
		return nil
	case NormalWasher:
	default:
		return finding.Failed(NoSuchWasher, finding.Values{"written": string(b.Washer), "allowed": Names(Washers)})
	}
	size, standard, err := NormalWasherSize(t)
	if err != nil {
		return err
	}
	r.Washer = &size
	r.Face, r.Hole = min(r.Face, size.leastOuter()), size.Hole
	r.Part = Ring{Face: size.spread(r.Face), Hole: max(r.Part.Hole, size.Hole)}
	hardness, beyond := washerHardness(class)
	r.Assumed = append(r.Assumed, finding.Noted(WasherAssumed, finding.Values{
		"outer": size.Outer, "thickness": size.Thickness, "hole": size.Hole, "standard": standard, "hardness": hardness, "beyond": beyond,
	}).From("ISO 7089"))
	return nil
}

// bodyAndNumber shortens a source to the standard, without series and size.
func bodyAndNumber(source string) string {
	parts := strings.Fields(source)
	return strings.Join(parts[:min(2, len(parts))], " ")
}
