package plan

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// wholeTurn is the angle past which one is asked for (common practice, no
// source: head bolts take half a turn, the longest bolts of structures two
// thirds). Long tie rods that stay below yield take more.
const wholeTurn unit.Angle = 360

// mostOfStretch is the share of its even stretch that a bolt may use up (common
// practice, no source: the nut rotations of RCSC, table 8.2, use up to a sixth
// of it in short bolts; what is left covers the scatter of torque and angle).
const mostOfStretch = 0.5

// judgeAngles doubts angles that break the bolt, use up most of its stretch, or
// take it past yield although it is used again; and more than one turn.
func (j *judge) judgeAngles() {
	for _, t := range j.turns() {
		if j.canTurn(t) {
			j.judgeTurn(t)
		} else if t.angle > wholeTurn {
			j.wholeTurns(t)
		}
	}
}

func (j *judge) wholeTurns(t turn) {
	look := "the angle"
	if j.kind.Thread == nil || j.strong || j.kind.Grip == 0 {
		look += "; with thread, class and grip in the file it is worked out"
	}
	j.doubt(t.last, AboutAngle, t.String(), fmt.Sprintf("is more than one turn (%v), which only a very long bolt bears", wholeTurn), look)
}

// canTurn says whether the file states what the mechanics of an angle need.
func (j *judge) canTurn(t turn) bool {
	return j.kind.Thread != nil && !j.strong && j.kind.Grip != 0 && t.snug.Value != 0 && !slices.Contains(j.tooMuch, t.snug.Nm())
}

func (j *judge) judgeTurn(t turn) {
	r, err := stiffness.TurnOn(stiffness.TorqueAngle{Bolt: j.bolt, Grip: j.grip(), Snug: t.snug.Nm(), Angle: min(t.angle, mostTurns)})
	if err != nil {
		j.doubt(0, AboutGrip, "the grip does not fit:", err.Error(), "the grip and its unit")
		return
	}
	switch at := r.Nominal; {
	case at.Breaks:
		j.breaks(t, r)
	case at.Necks || at.LastingStrain > mostOfStretch*r.Strength.UniformStrain():
		j.wearsOut(t, r)
	case t.angle > wholeTurn && !at.Reusable:
		j.wholeTurns(t)
	case j.outlasts(at):
		j.usedAgain(t, r)
	}
	j.bears(r.Nominal.Preload)
}

// mostTurns is more than any bolt bears, and within what the mechanics take.
const mostTurns = 10 * wholeTurn

// grip gives the most yielding case that the file leaves open: the whole grip
// in thread, which stretches most, and clamped parts of aluminium.
func (j *judge) grip() stiffness.Grip {
	g := stiffness.Grip{Layers: []stiffness.Layer{{Thickness: j.kind.Grip, Material: "cast aluminium"}}, FullThread: true}
	if _, err := strength.ParseMaterial(j.kind.Into); err == nil {
		g.TappedIn, g.Engagement = j.kind.Into, j.kind.Engagement
	}
	return g
}

// mostYielding names the case that grip takes.
const mostYielding = "worked out for thread over the whole grip and clamped parts of aluminium; a plain shank or steel bears less"

func (j *judge) breaks(t turn, r stiffness.Turned) {
	span := angles(r, func(at stiffness.AfterAngle) unit.Angle { return at.AngleToBreak })
	j.doubt(t.last, AboutAngle, t.String(), fmt.Sprintf("breaks %s with a grip of %v: it bears %s (%s)", j.name(), j.kind.Grip, span, mostYielding),
		"the angle, the grip and the torque before it")
}

func (j *judge) wearsOut(t turn, r stiffness.Turned) {
	says := "is too much for"
	if !r.Nominal.Necks {
		says = fmt.Sprintf("uses up about %.0f %% of the stretch of", r.Nominal.LastingStrain/r.Strength.UniformStrain()*100)
	}
	span := angles(r, func(at stiffness.AfterAngle) unit.Angle { return at.AngleToGreatest })
	j.doubt(t.last, AboutAngle, t.String(), fmt.Sprintf("%s %s with a grip of %v: from %s on it draws in at one place (%s)", says, j.name(), j.kind.Grip, span, mostYielding),
		"the angle, the grip and the torque before it")
}

// outlasts says whether a bolt that is not used once stays longer. One that is
// measured before it goes back may stay a little longer.
func (j *judge) outlasts(at stiffness.AfterAngle) bool {
	switch j.kind.Reuse {
	case ReuseOnce:
		return false
	case ReuseInspect:
		return !at.Reusable
	}
	return at.Lasting > 0
}

func (j *judge) usedAgain(t turn, r stiffness.Turned) {
	span := angles(r, func(at stiffness.AfterAngle) unit.Angle { return at.AngleToYield })
	reuse := "the file does not say that the bolt is used once"
	if j.kind.Reuse != ReuseUnknown {
		reuse = "reuse is " + string(j.kind.Reuse)
	}
	j.doubt(t.last, AboutReuse, t.String(), fmt.Sprintf("takes %s with a grip of %v past yield, which begins at %s (%s), and %s", j.name(), j.kind.Grip, span, mostYielding, reuse),
		"reuse: a bolt that is stretched past yield is used once")
}

// angles gives the span of an angle over the span of friction, in fives of
// degrees: the figures are no nearer than that.
func angles(r stiffness.Turned, of func(stiffness.AfterAngle) unit.Angle) string {
	round := func(a unit.Angle) unit.Angle { return unit.Angle(math.Round(float64(a)/5) * 5) }
	low := round(min(of(r.Low), of(r.Nominal), of(r.High)))
	high := round(max(of(r.Low), of(r.Nominal), of(r.High)))
	if low == high {
		return fmt.Sprintf("about %v", low)
	}
	return fmt.Sprintf("about %v to %v", low, high)
}
