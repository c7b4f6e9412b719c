package stiffness

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// Joint is the stiffness of a bolt and its members.
type Joint struct {
	Bolt, Members Stiffness
	Elongation    Resilience  // of the bolt between its ends, as a gauge measures it
	LoadShare     float64     // share of a working load that the bolt carries (C of Shigley)
	Grip          unit.Length // clamped length
	FreeThread    unit.Length // length of thread in the grip
	ConeAngle     unit.Angle  // of the clamped parts, from the axis
	ConeReach     unit.Length // D′A of VDI 2230, used for the angle

	Assumptions []finding.Finding
	Sources     []string
}

// Of calculates the stiffness of a bolt and of what it clamps. The error says
// what is missing or does not fit, and what is allowed.
func Of(b screw.Bolt, g Grip) (Joint, error) {
	s, err := screw.Complete(b)
	if err != nil {
		return Joint{}, err
	}
	held, err := completeGrip(s, g)
	if err != nil {
		return Joint{}, err
	}
	return held.stiffness(s), nil
}

func (r completedGrip) stiffness(s screw.Completed) Joint {
	j := Joint{
		Grip: r.thickness, FreeThread: r.freeThread, Assumptions: r.assumed,
		Bolt: r.boltResilience(s.Thread, s.HeadForm).Stiffness(), Members: r.membersResilience(s.Bearing).Stiffness(),
		Elongation: r.elongation(s.Thread, s.HeadForm),
		ConeReach:  max(min(r.reach, widestReach*s.Bearing.Face), s.Bearing.Face), // as in ConeTangent
		ConeAngle:  unit.Angle(math.Atan(ConeTangent(r.thickness, s.Bearing.Face, r.reach, r.tappedIn != nil)) * 180 / math.Pi),
		Sources:    []string{"VDI 2230 Part 1, section 5.1 (stiffness)"},
	}
	j.LoadShare = LoadShare(j.Bolt, j.Members)
	return j
}

// HeadResilience returns the resilience of a head.
func HeadResilience(t thread.Thread, form head.Form, elastic unit.Stress) Resilience {
	length := 0.5 * t.MajorMm // VDI 2230-1, section 5.1.1.1, table 2: lSK = 0.5 d, hexagon head, with flange too
	if form == head.Socket {
		length = 0.4 * t.MajorMm // the same: lSK = 0.4 d, socket head
	}
	return RodResilience(unit.Length(length), unit.Length(t.MajorMm), elastic)
}

// EngagedResilience returns what the engaged thread of the bolt gives way.
func EngagedResilience(t thread.Thread, elastic unit.Stress) Resilience {
	return RodResilience(unit.Length(0.5*t.MajorMm), unit.Length(t.MinorDiameterMm()), elastic) // VDI 2230-1, section 5.1.1.1: δG, lG = 0.5 d on Ad3
}

// ShiftResilience returns what the thread of the nut or of the tapped part gives
// way. The bolt moves in it, but does not become longer.
func ShiftResilience(t thread.Thread, tapped bool, nutElastic unit.Stress) Resilience {
	d := unit.Length(t.MajorMm)
	shift := 0.4 * d // VDI 2230-1, section 5.1.1.1: lM = 0.4 d for a nut
	if tapped {
		shift = 0.33 * d // the same: lM = 0.33 d for a tapped hole
	}
	return RodResilience(shift, d, nutElastic) // the same: δM on the nominal area
}

// boltResilience adds up the elongation of the bolt and the shift in the other
// thread.
func (r completedGrip) boltResilience(t thread.Thread, form head.Form) Resilience {
	nut := r.elastic
	if r.tappedIn != nil {
		nut = r.tappedIn.Elastic
	}
	return r.elongation(t, form) + ShiftResilience(t, r.tappedIn != nil, nut)
}

// elongation adds up head, shank, free thread and engaged thread.
func (r completedGrip) elongation(t thread.Thread, form head.Form) Resilience {
	return r.ends(t, form) + r.between(t)
}

func (r completedGrip) ends(t thread.Thread, form head.Form) Resilience {
	return HeadResilience(t, form, r.elastic) + EngagedResilience(t, r.elastic)
}

func (r completedGrip) between(t thread.Thread) (sum Resilience) {
	for _, part := range r.shank {
		sum += RodResilience(part.Length, part.Diameter, r.elastic)
	}
	return sum + RodResilience(r.freeThread, unit.Length(t.MinorDiameterMm()), r.elastic) // VDI 2230-1, section 5.1.1.1: δGew on Ad3
}

func (r completedGrip) membersResilience(b head.Bearing) Resilience {
	tapped := r.tappedIn != nil
	return pressedBody{
		face: b.Face, hole: b.Part.Hole, outer: r.reach, oneCone: tapped, // from the head through its washer
		tangent: ConeTangent(r.thickness, b.Face, r.reach, tapped),
	}.resilience(r.layers)
}
