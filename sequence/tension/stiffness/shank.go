package stiffness

import (
	"cmp"
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// ThreadLength returns the length of thread on a standard bolt.
func ThreadLength(t thread.Thread, bolt unit.Length) unit.Length {
	d := unit.Length(t.MajorMm)
	if t.Unified() {
		if bolt <= 6*strength.Inch {
			return 2*d + strength.Inch/4. // ASME B18.2.1, Shigley 9th ed., table 8-7: 2 D + 1/4 in to 6 in
		}
		return 2*d + strength.Inch/2. // ASME B18.2.1: 2 D + 1/2 in above
	}
	switch {
	case bolt <= 125:
		return 2*d + 6 // ISO 4014, ISO 888: b = 2d + 6
	case bolt <= 200:
		return 2*d + 12
	}
	return 2*d + 25
}

// StandardLength returns the next standard bolt length.
func StandardLength(t thread.Thread, least unit.Length) unit.Length {
	step := unit.Length(strength.Inch / 4.) // ASME B18.2.1, quarters of an inch
	if !t.Unified() {
		switch { // ISO 888
		case least <= 70:
			step = 5
		case least <= 160:
			step = 10
		default:
			step = 20
		}
	}
	const dust = 1e-9
	return unit.Length(math.Ceil(float64(least/step)-dust)) * step
}

// nutHeight is that of a hexagon nut, style 1, in diameters (ISO 4032: 0.84 for
// M8 and M10, 0.9 for M12 and M16), plus two protruding turns.
func nutHeight(t thread.Thread) unit.Length { return unit.Length(0.9*t.MajorMm + 2*t.PitchMm) }

// usualEngagement is that of a tapped hole in diameters (common practice, no
// source: 1 in steel, 1.5 to 2 in light alloys).
const usualEngagement = 1.25

func (r *completedGrip) settleShank(s screw.Completed, g Grip) error {
	if len(g.Shank) > 0 {
		return r.statedShank(s, g)
	}
	if g.FullThread && s.Shank > 0 {
		return finding.Failed(ShankOnFullThread, finding.Values{"shank": s.Shank})
	}
	if g.FullThread {
		r.freeThread = r.thickness
		return nil
	}
	length, err := r.boltLength(s, g)
	if err != nil {
		return err
	}
	threaded := min(cmp.Or(g.Thread, ThreadLength(s.Thread, length)), length)
	plain := length - threaded
	switch {
	case s.Shank > 0 && g.Thread == 0: // the stated shank is there, whatever a standard bolt has
		plain = max(min(plain, r.thickness-unit.Length(s.Thread.PitchMm)), r.thickness/2)
		threaded = length - plain
	case s.Shank > 0 && plain <= 0:
		return finding.Failed(ShankOnFullThread, finding.Values{"shank": s.Shank})
	case g.BoltLength == 0:
		plain = min(plain, r.thickness-unit.Length(s.Thread.PitchMm)) // a longer bolt would not be used
	case plain <= r.thickness:
	case g.Thread > 0:
		return finding.Failed(ThreadFromTooFar, finding.Values{"length": length, "from": plain, "grip": r.thickness})
	default: // a standard bolt could not clamp: this one has more thread
		r.freeThread = r.thickness
		r.assume(FullThreadAssumed, finding.Values{"length": length, "from": plain})
		return nil
	}
	if plain > 0 {
		r.shank = []Section{{plain, cmp.Or(s.Shank, unit.Length(s.Thread.MajorMm))}}
	}
	r.freeThread = r.thickness - max(plain, 0)
	if g.Thread > 0 && g.BoltLength > 0 {
		return nil // nothing is assumed
	}
	r.assume(BoltAssumed, finding.Values{"length": length, "threaded": threaded, "free": r.freeThread, "standard": lengthStandard(s.Thread)})
	return nil
}

func lengthStandard(t thread.Thread) string {
	if t.Unified() {
		return "ASME B18.2.1"
	}
	return head.HexagonStandard(t)
}

func (r *completedGrip) boltLength(s screw.Completed, g Grip) (unit.Length, error) {
	switch {
	case g.BoltLength == 0 && r.tappedIn == nil:
		return StandardLength(s.Thread, r.thickness+nutHeight(s.Thread)), nil
	case g.BoltLength == 0:
		engaged := cmp.Or(g.Engagement, unit.Length(usualEngagement*s.Thread.MajorMm))
		return StandardLength(s.Thread, r.thickness+engaged), nil
	case !(g.BoltLength > r.thickness && !math.IsInf(float64(g.BoltLength), 1)):
		return 0, finding.Failed(BoltTooShort, finding.Values{"length": g.BoltLength, "grip": r.thickness})
	}
	return g.BoltLength, nil
}

// statedShank uses the stated sections, within limits.
func (r *completedGrip) statedShank(s screw.Completed, g Grip) error {
	var sum unit.Length
	for i, part := range g.Shank {
		least, most := unit.Length(s.Thread.MajorMm)/2, unit.Length(s.Thread.MajorMm)*2
		if !(part.Diameter >= least && part.Diameter <= most) {
			return finding.Failed(ShankDiameter, finding.Values{"section": i + 1, "diameter": part.Diameter, "thread": s.Thread.Name, "least": least, "most": most})
		}
		if !(part.Length > 0) {
			return finding.Failed(ShankLength, finding.Values{"section": i + 1, "length": part.Length})
		}
		sum += part.Length
	}
	if !(sum <= r.thickness) {
		return finding.Failed(ShankTooLong, finding.Values{"shank": sum, "grip": r.thickness})
	}
	r.shank, r.freeThread = g.Shank, r.thickness-sum
	return nil
}
