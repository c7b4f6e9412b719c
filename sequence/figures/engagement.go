package figures

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// clamped gives the length of what the bolt clamps.
func clamped(g stiffness.Grip) (sum unit.Length) {
	for _, l := range g.Layers {
		sum += l.Thickness
	}
	return sum
}

// judgeLength judges a bolt that ends before its grip and its engagement do. A
// longer one may stand out of a through hole, or be a stud with a nut.
func (j *judge) judgeLength() {
	length, grip, engagement := j.Grip.BoltLength, clamped(j.Grip), j.Grip.Engagement
	plain := length - j.Grip.Thread
	switch {
	case length == 0 || grip == 0:
	case length <= grip:
		j.warn(0, LengthShort, finding.Values{"length": length, "grip": grip})
	case length+lengthRounding < grip+engagement:
		j.warn(0, LengthLeaves, finding.Values{"length": length, "left": length - grip, "grip": grip, "engagement": engagement})
	}
	if j.Grip.Thread > 0 && grip > 0 && length > grip && plain > grip {
		j.warn(0, LengthPlain, finding.Values{"length": length, "threaded": j.Grip.Thread, "plain": plain, "grip": grip})
	}
}

// judgeEngagement judges whether the engaged threads hold the preload that the
// figures lead to.
func (j *judge) judgeEngagement() {
	material, err := strength.ParseMaterial(j.Grip.TappedIn)
	if err != nil || !j.hasThread() {
		return
	}
	if j.Grip.Engagement == 0 {
		j.note(0, EngagementOpen, finding.Values{"material": material.Term()})
		return
	}
	if j.preload == 0 {
		return
	}
	r, err := strength.Strip(strength.Engagement{
		Thread: j.Bolt.Bolt.Thread, Class: j.class, Length: j.Grip.Engagement, Material: j.Grip.TappedIn, Insert: j.Insert, Preload: j.preload,
	})
	if err != nil {
		return
	}
	if r.First != strength.BoltBreaks {
		j.note(0, EngagementFirst, finding.Values{"first": finding.Term(r.First), "needed": strength.UpTo(r.ForBolt), "material": material.Term()})
	}
	if !r.Holds {
		j.warn(0, EngagementFails, finding.Values{
			"engagement": j.Grip.Engagement, "material": material.Term(), "holds": min(r.BoltStrips, r.PartStrips), "preload": j.preload,
			"needed": unit.Length(math.Ceil(float64(r.ForPreload))),
		})
	}
}
