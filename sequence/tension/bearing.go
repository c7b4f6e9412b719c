package tension

import (
	"fmt"

	"drawdown/geometry/unit"
)

// bearing is the ring on which the head turns.
type bearing struct {
	face, hole unit.Length // outer and inner diameter
	assumed    []string
}

// effective gives the diameter at which the friction under the head acts.
func (b bearing) effective() unit.Length {
	return (b.face + b.hole) / 2 // ISO 16047: Db = (Do + dh)/2; VDI 2230-1: DKm = (dW + Dh)/2
}

// widest bounds a head or a washer face by the diameter of its thread, to find
// slips of the unit (common practice, no source: large washers reach three
// diameters).
const widest = 4

// settleBearing takes what the bolt states and the standards for the rest.
func settleBearing(b Bolt) (bearing, error) {
	for _, given := range []struct {
		what string
		unit.Length
	}{{"head", b.HeadAcross}, {"washer face", b.WasherFace}, {"hole", b.Hole}} {
		least, most := unit.Length(b.Thread.MajorMm), unit.Length(b.Thread.MajorMm)*widest
		if given.Length != 0 && !(given.Length >= least && given.Length <= most) {
			return bearing{}, fmt.Errorf("%s %v does not go with %s; allowed: %v to %v", given.what, given.Length, b.Thread.Name, least, most)
		}
	}
	ring, err := settleFace(b)
	if err != nil {
		return bearing{}, err
	}
	ring.hole = b.Hole
	if b.Hole == 0 {
		hole, standard := ClearanceHole(b.Thread)
		ring.hole = hole
		ring.assumed = append(ring.assumed, fmt.Sprintf("hole %v (%s), assumed", hole, standard))
	}
	if ring.face <= ring.hole {
		return bearing{}, fmt.Errorf("the bearing face of %v under the head of %s is not wider than its hole of %v; allowed: a wider head or washer face, or a smaller hole", ring.face, b.Thread.Name, ring.hole)
	}
	return ring, nil
}

func settleFace(b Bolt) (bearing, error) {
	if b.WasherFace != 0 {
		return bearing{face: b.WasherFace}, nil
	}
	if b.HeadAcross != 0 {
		face := BearingFace(b.HeadAcross, b.Thread.Unified())
		return bearing{face: face, assumed: []string{fmt.Sprintf("under-head bearing face %v (hexagon head of %v), assumed", face, b.HeadAcross)}}, nil
	}
	across, standard, err := HexagonAcross(b.Thread)
	if err != nil {
		return bearing{}, err
	}
	face := BearingFace(across, b.Thread.Unified())
	return bearing{face: face, assumed: []string{fmt.Sprintf("under-head bearing face %v (%s), assumed", face, standard)}}, nil
}
