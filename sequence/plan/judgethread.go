package plan

import (
	"fmt"
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// judgeLength doubts a bolt that ends before its grip and its engagement do. A
// longer one may stand out of a through hole, or be a stud with a nut.
func (j *judge) judgeLength() {
	k := j.kind
	if k.Length == 0 || k.Grip == 0 {
		return
	}
	const rounding unit.Length = 0.5 // of the figures, which are given in whole millimetres
	switch {
	case k.Length <= k.Grip:
		j.doubt(0, AboutLength, fmt.Sprintf("a length of %v", k.Length), fmt.Sprintf("does not reach through the grip of %v", k.Grip), "length and grip")
	case k.Length+rounding < k.Grip+k.Engagement:
		j.doubt(0, AboutLength, fmt.Sprintf("a length of %v", k.Length), fmt.Sprintf("leaves %v beyond the grip of %v, less than the engagement of %v", k.Length-k.Grip, k.Grip, k.Engagement),
			"length, grip and engagement")
	}
}

// judgeEngagement doubts an engagement that does not hold the preload which the
// figures lead to.
func (j *judge) judgeEngagement() {
	k := j.kind
	if k.Into == "" || k.Engagement == 0 || j.preload == 0 {
		return
	}
	material, err := strength.ParseMaterial(k.Into)
	if err != nil {
		return
	}
	r, err := strength.Strip(strength.Engagement{Thread: *k.Thread, Class: j.strength, Length: k.Engagement, Material: k.Into, Preload: j.preload})
	if err != nil || r.Margin >= 1 {
		return
	}
	holds := min(r.BoltStrips, r.PartStrips)
	j.doubt(0, AboutEngagement, fmt.Sprintf("an engagement of %v in %s", k.Engagement, k.Into),
		fmt.Sprintf("holds about %.0f kN, and the figures lead to about %.0f kN (worked out for %s): the thread tears out; about %.0f mm would hold",
			float64(holds)/1000, float64(j.preload)/1000, material.Name, math.Ceil(float64(r.ForPreload))),
		"engagement, into and the figures")
}
