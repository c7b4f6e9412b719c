package head

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
	"drawdown/sequence/tension/strength"
)

// ring is a face that presses or turns on another.
type Ring struct{ Face, Hole unit.Length } // outer and inner diameter

// bearing is where the head turns, and what it presses on.
type Bearing struct {
	Ring                // on which the head turns: the part, or the washer
	Part    Ring        // pressed on the uppermost clamped part; without a washer the same
	Washer  *WasherSize // nil: none
	Assumed []tension.Assumption
}

// effective gives the diameter at which the friction under the head acts.
func (r Ring) Effective() unit.Length {
	return (r.Face + r.Hole) / 2 // ISO 16047: Db = (Do + dh)/2; VDI 2230-1: DKm = (dW + Dh)/2
}

// widest bounds a head or a washer face by the diameter of its thread, to find
// slips of the unit (common practice, no source: large washers reach three
// diameters).
const widest = 4

// headStated is what is known of a head and what lies under it. Zero values are
// unknown.
type Stated struct {
	Form       Form        // empty: HexagonHead
	Across     unit.Length // of a hexagon head
	WasherFace unit.Length // outer diameter of the bearing face; goes before Form and Across
	Washer     Washer      // empty: NoWasher
	Hole       unit.Length
}

// settleBearing takes what is stated and the standards for the rest, for a bolt
// of the thread and the strength.
func Complete(t thread.Thread, strength strength.Class, b Stated) (Bearing, error) {
	if b.Form == "" {
		b.Form = Hexagon
	}
	if err := b.Form.check(); err != nil {
		return Bearing{}, err
	}
	for _, given := range []struct {
		what string
		unit.Length
	}{{"head", b.Across}, {"washer face", b.WasherFace}, {"hole", b.Hole}} {
		least, most := unit.Length(t.MajorMm), unit.Length(t.MajorMm)*widest
		if given.Length != 0 && !(given.Length >= least && given.Length <= most) {
			return Bearing{}, fmt.Errorf("%s %v does not go with %s; allowed: %v to %v", given.what, given.Length, t.Name, least, most)
		}
	}
	r := Bearing{}
	for _, step := range []func() error{
		func() error { return r.settleFace(t, b) },
		func() error { r.settleHole(t, b); return nil },
		func() error { return r.settleWasher(t, strength, b) },
	} {
		if err := step(); err != nil {
			return Bearing{}, err
		}
	}
	for _, on := range []Ring{r.Ring, r.Part} {
		if on.Face <= on.Hole {
			return Bearing{}, fmt.Errorf("the bearing face of %v under the head of %s is not wider than its hole of %v; allowed: a wider head or washer face, or a smaller hole", on.Face, t.Name, on.Hole)
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
		return fmt.Errorf("a width across flats of %v does not tell the bearing face of a %s head; allowed: the diameter of the bearing face, or a %s head", b.Across, b.Form, Hexagon)
	case b.Across != 0:
		r.Face = BearingFace(b.Across, t.Unified())
		r.Assumed = append(r.Assumed, tension.Assumption{What: tension.AssumedFaceOfAcross, Length: r.Face, Across: b.Across})
		return nil
	}
	face, standard, err := Face(t, b.Form)
	if err != nil {
		return err
	}
	r.Face = face
	r.Assumed = append(r.Assumed, tension.Assumption{What: tension.AssumedFace, Length: face, Standard: standard})
	return nil
}

func (r *Bearing) settleHole(t thread.Thread, b Stated) {
	r.Hole = b.Hole
	if b.Hole == 0 {
		hole, standard := Hole(t)
		r.Hole = hole
		r.Assumed = append(r.Assumed, tension.Assumption{What: tension.AssumedHole, Length: hole, Standard: standard})
	}
	r.Part = r.Ring
}

// settleWasher lays the washer under the head. The head then turns on the
// washer, which stays where it is.
func (r *Bearing) settleWasher(t thread.Thread, strength strength.Class, b Stated) error {
	switch b.Washer {
	case "", NoWasher:
		return nil
	case NormalWasher:
	default:
		return fmt.Errorf("washer %q is not known; allowed: %s, %s", b.Washer, NoWasher, NormalWasher)
	}
	size, standard, err := NormalWasherSize(t)
	if err != nil {
		return err
	}
	r.Washer = &size
	r.Face, r.Hole = min(r.Face, size.leastOuter()), size.Hole
	r.Part = Ring{Face: size.spread(r.Face), Hole: max(r.Part.Hole, size.Hole)}
	r.Assumed = append(r.Assumed, tension.Assumption{What: tension.AnotherAssumption, Text: fmt.Sprintf("washer %v across, %v thick, with a hole of %v (%s, %s), which the head turns on, assumed",
		size.Outer, size.Thickness, size.Hole, standard, washerHardness(strength))})
	return nil
}
