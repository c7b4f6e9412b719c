package stiffness

import (
	"math"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// JointStiffness is how far a bolt stretches and its members give way.
type Joint struct {
	Bolt, Members Stiffness
	LoadShare     float64     // of a working load that the bolt takes on (C of Shigley)
	Check         Stiffness   // members by Wileman, Choudhury and Green; 0 where a material was not fitted
	Grip          unit.Length // clamped length
	FreeThread    unit.Length // of it, in thread
	Method        Method
	ConeAngle     unit.Angle  // of the clamped parts, from the axis
	ConeReach     unit.Length // D′A of VDI 2230 that the angle was worked out with; 0 where the method has none

	Assumptions []string
	Sources     []string
}

// thirtyDegrees is half the angle of the cones of Shigley 9th ed., section 8-5.
const thirtyDegrees = 30

// StiffnessOf works out the stiffness of a bolt and of what it clamps. The
// error says what is missing or does not fit, and what is allowed.
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
	j := Joint{Grip: r.thickness, FreeThread: r.freeThread, Method: r.method, Assumptions: r.assumed}
	switch r.method {
	case ThirtyDegrees:
		j.Bolt, j.Members = r.shigleyBolt(s.Thread).Stiffness(), r.shigleyMembers(s.Thread).Stiffness()
		j.ConeAngle = thirtyDegrees
		j.Sources = []string{"Shigley 9th ed., sections 8-4 and 8-5 (stiffness)"}
	default:
		j.Bolt, j.Members = r.vdiBolt(s.Thread, s.HeadForm).Stiffness(), r.vdiMembers(s.Bearing).Stiffness()
		j.ConeReach = max(min(r.reach, widestReach*s.Bearing.Face), s.Bearing.Face) // as ConeTangent counts it
		j.ConeAngle = unit.Angle(math.Atan(ConeTangent(r.thickness, s.Bearing.Face, r.reach, r.tappedIn != nil)) * 180 / math.Pi)
		j.Sources = []string{"VDI 2230 Part 1, section 5.1 (stiffness)"}
	}
	if r.tappedIn == nil {
		j.Check = exponentialOfLayers(r.layers, unit.Length(s.Thread.MajorMm))
	}
	j.LoadShare = LoadShare(j.Bolt, j.Members)
	return j
}

// HeadResilience gives what a head gives way.
func HeadResilience(t thread.Thread, form head.Form, elastic unit.Stress) Resilience {
	length := 0.5 * t.MajorMm // VDI 2230-1, section 5.1.1.1, table 2: lSK = 0.5 d, hexagon head, with flange too
	if form == head.Socket {
		length = 0.4 * t.MajorMm // the same: lSK = 0.4 d, socket head
	}
	return RodResilience(unit.Length(length), unit.Length(t.MajorMm), elastic)
}

// EngagedResilience gives what the engaged thread of the bolt gives way, and
// the thread of the nut or of the tapped part it shifts in.
func EngagedResilience(t thread.Thread, tapped bool, boltElastic, nutElastic unit.Stress) Resilience {
	d := unit.Length(t.MajorMm)
	core := RodResilience(0.5*d, unit.Length(t.MinorDiameterMm()), boltElastic) // VDI 2230-1, section 5.1.1.1: δG, lG = 0.5 d on Ad3
	shift := 0.4 * d                                                            // the same: lM = 0.4 d for a nut
	if tapped {
		shift = 0.33 * d // the same: lM = 0.33 d for a tapped hole
	}
	return core + RodResilience(shift, d, nutElastic) // the same: δM on the nominal area
}

// vdiBolt sums head, shank, free thread and engaged thread.
func (r completedGrip) vdiBolt(t thread.Thread, form head.Form) Resilience {
	nut := r.elastic
	if r.tappedIn != nil {
		nut = r.tappedIn.Elastic
	}
	sum := HeadResilience(t, form, r.elastic) + EngagedResilience(t, r.tappedIn != nil, r.elastic, nut)
	for _, part := range r.shank {
		sum += RodResilience(part.Length, part.Diameter, r.elastic)
	}
	return sum + RodResilience(r.freeThread, unit.Length(t.MinorDiameterMm()), r.elastic) // VDI 2230-1, section 5.1.1.1: δGew on Ad3
}

func (r completedGrip) vdiMembers(b head.Bearing) Resilience {
	tapped := r.tappedIn != nil
	return pressedBody{
		face: b.Face, hole: b.Part.Hole, outer: r.reach, oneCone: tapped, // from the head through its washer
		tangent: ConeTangent(r.thickness, b.Face, r.reach, tapped),
	}.resilience(r.layers)
}

// shigleyBolt sums shank and thread within the grip; the thread stretches on
// its stress area.
func (r completedGrip) shigleyBolt(t thread.Thread) Resilience {
	var sum Resilience
	for _, part := range r.shank {
		sum += RodResilience(part.Length, part.Diameter, r.elastic)
	}
	threaded := r.freeThread
	if r.tappedIn != nil {
		threaded += unit.Length(t.MajorMm) / 2 // Shigley 9th ed., table 8-7: effective grip h + d/2
	}
	return sum + RodResilience(threaded, unit.Length(t.StressDiameterMm()), r.elastic) // Shigley 9th ed., Eq. (8-16)
}

func (r completedGrip) shigleyMembers(t thread.Thread) Resilience {
	d := unit.Length(t.MajorMm)
	layers := r.layers
	if r.tappedIn != nil {
		layers = append(layers[:len(layers):len(layers)], layer{d / 2, *r.tappedIn}) // Shigley 9th ed., table 8-7: effective grip h + d/2
	}
	return pressedBody{
		face: 1.5 * d, hole: d, outer: r.reach, // Shigley 9th ed., section 8-5: washer face 1.5 d, hole d
		tangent: math.Tan(thirtyDegrees * math.Pi / 180),
	}.resilience(layers)
}

// ShankAndThreadStiffness gives the stiffness of a bolt from its two areas
// within the grip.
func ShankAndThreadStiffness(shankMm2, threadMm2 float64, shank, threaded unit.Length, elastic unit.Stress) Stiffness {
	// Shigley 9th ed., Eq. (8-17): kb = Ad At E/(Ad lt + At ld)
	return Stiffness(shankMm2 * threadMm2 * float64(elastic) / (shankMm2*float64(threaded) + threadMm2*float64(shank)))
}
