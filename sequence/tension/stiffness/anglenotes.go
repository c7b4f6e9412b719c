package stiffness

import (
	"fmt"
	"math"

	"drawdown/geometry/unit"
)

// notes says in plain words what the figures mean for the work.
func (r Turned) notes(a TorqueAngle, held completedGrip) []string {
	var lines []string
	switch aims := r.Nominal; {
	case r.worst().BreaksBySnug():
		return []string{fmt.Sprintf("the snug torque of %.1f N·m alone breaks the bolt%s", float64(a.Snug), r.breaksWhere())}
	case aims.Snug > r.Aim:
		lines = append(lines, fmt.Sprintf("the snug torque of %.1f N·m alone gives %.1f kN, more than the aim of %.1f kN: no angle is left", float64(a.Snug), float64(aims.Snug)/1000, float64(r.Aim)/1000))
	}
	if a.Angle == 0 {
		return lines
	}
	worst := r.worst()
	short := fmt.Sprintf("the grip of %v is too short for %v after %.1f N·m", held.thickness, a.Angle, float64(a.Snug))
	mend := "use a longer grip, more free thread or a smaller angle"
	switch {
	case worst.Breaks:
		lines = append(lines, fmt.Sprintf("%s: the bolt breaks at about %v; %s", short, roughly(worst.AngleToBreak), mend))
	case worst.Necks:
		lines = append(lines, fmt.Sprintf("%s: from about %v on the bolt draws in at one place and its preload falls; %s", short, roughly(worst.AngleToGreatest), mend))
	case worst.LastingStrain > nearGreatest*r.Strength.UniformStrain():
		lines = append(lines, fmt.Sprintf("%s: the bolt stays %v longer, %.0f %% of what it stretches evenly; %s", short, worst.Lasting, worst.LastingStrain/r.Strength.UniformStrain()*100, mend))
	case worst.Lasting > 0 && !worst.Reusable:
		lines = append(lines, fmt.Sprintf("the bolt is turned beyond yield and stays %v longer (%.1f %% of its weakest part): use it once", worst.Lasting, worst.LastingStrain*100))
	case worst.Lasting > 0:
		lines = append(lines, fmt.Sprintf("the bolt is turned just beyond yield and stays %v longer: measure its length before it is used again", worst.Lasting))
	}
	return lines
}

// roughly rounds an angle far past yield down to 5°: the curve there is no more
// certain than that.
func roughly(a unit.Angle) unit.Angle { return unit.Angle(math.Floor(float64(a)/5) * 5) }

// BreaksBySnug says that the snug torque alone breaks the bolt.
func (a AfterAngle) BreaksBySnug() bool { return a.Breaks && a.AngleToBreak == 0 }

// breaksWhere says at which friction, where it does not at all.
func (r Turned) breaksWhere() string {
	worst := r.worst()
	if r.Low.BreaksBySnug() && r.Nominal.BreaksBySnug() && r.High.BreaksBySnug() {
		return ""
	}
	return fmt.Sprintf(" at a friction of %.2f in the thread and %.2f under the head", worst.Thread, worst.Head)
}

// nearGreatest is the share of the even stretch from which on a grip is called
// too short (common practice, no source: what is left covers the scatter of
// the snug torque and of the angle).
const nearGreatest = 0.75

// worst gives the friction at which the bolt is stretched most.
func (r Turned) worst() AfterAngle {
	worst := r.Nominal
	for _, at := range []AfterAngle{r.Low, r.High} {
		if at.Breaks && !worst.Breaks || at.Breaks == worst.Breaks && at.Lasting > worst.Lasting {
			worst = at
		}
	}
	return worst
}
