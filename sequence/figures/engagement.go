package figures

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// clamped returns the thickness of all clamped parts.
func clamped(g stiffness.Grip) (sum unit.Length) {
	for _, l := range g.Layers {
		sum += l.Thickness
	}
	return sum
}

// judgeLength reports a bolt that ends before its grip plus its engagement or
// nut, or far beyond them. A stud continues into its nut.
func (j *judge) judgeLength() {
	length, grip, engagement := j.Grip.BoltLength, clamped(j.Grip), j.Grip.Engagement
	plain := length - j.Grip.Thread
	if j.Stud { // its other end has a thread too
		plain -= max(engagement, j.Grip.Thread)
	}
	switch {
	case length == 0 || grip == 0:
	case length <= grip:
		j.warn(0, LengthShort, finding.Values{"length": length, "grip": grip})
	case length+lengthRounding < grip+engagement:
		j.warn(0, LengthLeaves, finding.Values{"length": length, "left": length - grip, "grip": grip, "engagement": engagement})
	default:
		j.judgeEnd(length-grip, engagement)
	}
	if j.Grip.Thread > 0 && grip > 0 && length > grip && plain > grip {
		j.warn(0, LengthPlain, finding.Values{"length": length, "threaded": j.Grip.Thread, "plain": plain, "grip": grip})
	}
}

// judgeEnd judges the length of a bolt beyond its grip.
func (j *judge) judgeEnd(left, engagement unit.Length) {
	d := unit.Length(j.Bolt.Bolt.Thread.MajorMm)
	tapped, nutted, nuts := engagement > 0 && j.NutAcross == 0, j.through(), 1
	if nutted && j.Stud {
		nuts = 2
	}
	height := unit.Length(nuts) * leastNut * d
	if j.NutAcross > 0 && !nutted && engagement > 0 { // a stud: its nut is on the protruding end
		nutted, left = true, left-engagement
	}
	values := finding.Values{"length": j.Grip.BoltLength, "left": left, "engagement": engagement, "needed": height, "nuts": nuts}
	switch {
	case d == 0:
	case tapped && left > engagement+mostBeyondThread*d+lengthRounding:
		j.warn(0, LengthBeyond, values)
	case nutted && left+lengthRounding < height:
		j.warn(0, LengthNut, values)
	case nutted && left > height+unit.Length(nuts)*mostBeyondNut*d+lengthRounding:
		j.warn(0, LengthBeyondNut, values)
	}
}

// engaged describes the bolt in a tapped part for the strength of its threads.
func (b Bolt) engaged(class strength.Class, material string, length unit.Length, preload unit.Force) strength.Engagement {
	return strength.Engagement{
		Thread: b.Bolt.Thread, Class: class, Length: length, Material: material, Boss: b.Boss, Insert: b.Insert,
		Least: screw.LeastDiameter(b.Bolt.Thread, b.Bolt.Shank), Preload: preload,
	}
}

// steelUnnamed reports that the thread is in unspecified steel and would hold
// in a heat-treated one, as used for shafts and hubs.
func (j *judge) steelUnnamed() bool {
	const unnamed, treated = "steel", "C45"
	if j.Grip.TappedIn != unnamed {
		return false
	}
	r, err := strength.Strip(j.engaged(j.class, treated, j.Grip.Engagement, j.preload))
	return err == nil && r.Holds
}

// judgeEngagement judges whether the engaged threads hold the preload that
// results from the figures.
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
	r, err := strength.Strip(j.engaged(j.class, j.Grip.TappedIn, j.Grip.Engagement, j.preload))
	if err != nil {
		return
	}
	if r.First != strength.BoltBreaks {
		j.note(0, EngagementFirst, finding.Values{"first": finding.Term(r.First), "needed": strength.UpTo(r.ForBolt), "material": material.Term()})
	}
	if !r.Holds {
		tell := j.warn
		if j.steelUnnamed() {
			tell = j.note
		}
		tell(0, EngagementFails, finding.Values{
			"engagement": j.Grip.Engagement, "material": material.Term(), "holds": min(r.BoltStrips, r.PartStrips), "preload": j.preload,
			"needed": unit.Length(math.Ceil(float64(r.ForPreload))),
		})
	}
}
