package tension

import (
	"fmt"

	"drawdown/geometry/unit"
)

// ring is a face that presses or turns on another.
type ring struct{ face, hole unit.Length } // outer and inner diameter

// bearing is where the head turns, and what it presses on.
type bearing struct {
	ring                // on which the head turns: the part, or the washer
	part    ring        // pressed on the uppermost clamped part; without a washer the same
	washer  *WasherSize // nil: none
	assumed []Assumption
}

// effective gives the diameter at which the friction under the head acts.
func (r ring) effective() unit.Length {
	return (r.face + r.hole) / 2 // ISO 16047: Db = (Do + dh)/2; VDI 2230-1: DKm = (dW + Dh)/2
}

// widest bounds a head or a washer face by the diameter of its thread, to find
// slips of the unit (common practice, no source: large washers reach three
// diameters).
const widest = 4

// settleBearing takes what the bolt states and the standards for the rest.
func settleBearing(b Bolt, form HeadForm, strength Strength) (bearing, error) {
	for _, given := range []struct {
		what string
		unit.Length
	}{{"head", b.HeadAcross}, {"washer face", b.WasherFace}, {"hole", b.Hole}} {
		least, most := unit.Length(b.Thread.MajorMm), unit.Length(b.Thread.MajorMm)*widest
		if given.Length != 0 && !(given.Length >= least && given.Length <= most) {
			return bearing{}, fmt.Errorf("%s %v does not go with %s; allowed: %v to %v", given.what, given.Length, b.Thread.Name, least, most)
		}
	}
	r := bearing{}
	for _, step := range []func() error{
		func() error { return r.settleFace(b, form) },
		func() error { r.settleHole(b); return nil },
		func() error { return r.settleWasher(b, strength) },
	} {
		if err := step(); err != nil {
			return bearing{}, err
		}
	}
	for _, on := range []ring{r.ring, r.part} {
		if on.face <= on.hole {
			return bearing{}, fmt.Errorf("the bearing face of %v under the head of %s is not wider than its hole of %v; allowed: a wider head or washer face, or a smaller hole", on.face, b.Thread.Name, on.hole)
		}
	}
	return r, nil
}

func (r *bearing) settleFace(b Bolt, form HeadForm) error {
	switch {
	case b.WasherFace != 0:
		r.face = b.WasherFace
		return nil
	case b.HeadAcross != 0 && form != HexagonHead:
		return fmt.Errorf("a width across flats of %v does not tell the bearing face of a %s head; allowed: the diameter of the bearing face, or a %s head", b.HeadAcross, form, HexagonHead)
	case b.HeadAcross != 0:
		r.face = BearingFace(b.HeadAcross, b.Thread.Unified())
		r.assumed = append(r.assumed, Assumption{What: AssumedFaceOfAcross, Length: r.face, Across: b.HeadAcross})
		return nil
	}
	face, standard, err := HeadFace(b.Thread, form)
	if err != nil {
		return err
	}
	r.face = face
	r.assumed = append(r.assumed, Assumption{What: AssumedFace, Length: face, Standard: standard})
	return nil
}

func (r *bearing) settleHole(b Bolt) {
	r.hole = b.Hole
	if b.Hole == 0 {
		hole, standard := ClearanceHole(b.Thread)
		r.hole = hole
		r.assumed = append(r.assumed, Assumption{What: AssumedHole, Length: hole, Standard: standard})
	}
	r.part = r.ring
}

// settleWasher lays the washer under the head. The head then turns on the
// washer, which stays where it is.
func (r *bearing) settleWasher(b Bolt, strength Strength) error {
	switch b.Washer {
	case "", NoWasher:
		return nil
	case NormalWasher:
	default:
		return fmt.Errorf("washer %q is not known; allowed: %s, %s", b.Washer, NoWasher, NormalWasher)
	}
	size, standard, err := NormalWasherSize(b.Thread)
	if err != nil {
		return err
	}
	r.washer = &size
	r.face, r.hole = min(r.face, size.leastOuter()), size.Hole
	r.part = ring{face: size.spread(r.face), hole: max(r.part.hole, size.Hole)}
	r.assumed = append(r.assumed, Assumption{What: AnotherAssumption, Text: fmt.Sprintf("washer %v across, %v thick, with a hole of %v (%s, %s), which the head turns on, assumed",
		size.Outer, size.Thickness, size.Hole, standard, washerHardness(strength))})
	return nil
}
