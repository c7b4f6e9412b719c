package figures

import (
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// turn is a series of angles that add up, and the torque before them.
type turn struct {
	snug  unit.GivenTorque // 0 if the bolt was slackened or never torqued
	angle unit.Angle       // total
	last  int              // number of the last angle stage
}

// turns adds up the angles. Each torque and each slackening starts a new turn.
func (j *judge) turns() []turn {
	var runs []turn
	var now turn
	for _, s := range j.Stages {
		switch s.Do {
		case Tighten:
			runs, now = append(runs, now), turn{snug: s.Torque}
		case BackOff:
			runs, now = append(runs, now), turn{}
		case Advance:
			now.angle += s.Angle
			now.last = s.Number
		}
	}
	return slices.DeleteFunc(append(runs, now), func(t turn) bool { return t.last == 0 })
}

// judgeTurns reports angles that break the bolt, use up most of its stretch, or
// take it past yield although it is used again, and angles of more than one
// turn.
func (j *judge) judgeTurns() {
	for _, s := range j.Stages {
		if s.Do == Advance && s.Angle < leastTurn && s.Angle > 0 {
			j.warn(s.Number, TurnHardlyAny, finding.Values{"angle": s.Angle, "least": leastTurn})
		}
	}
	for _, t := range j.turns() {
		if slices.Contains(j.breaking, t.snug.Nm()) {
			j.note(t.last, SnugBreaks, finding.Values{"snug": written(t.snug), "thread": 0., "head": 0.})
		}
		if j.canTurn(t) {
			j.judgeTurn(t)
		} else if t.angle > wholeTurn {
			j.wholeTurn(t)
		}
	}
}

func (j *judge) wholeTurn(t turn) {
	j.warn(t.last, TurnWhole, finding.Values{
		"angle": t.angle, "snug": written(t.snug), "turn": wholeTurn,
		"lacks": !j.hasThread() || j.strongest || len(j.Grip.Layers) == 0,
	})
}

// canTurn reports whether the bolt states everything needed to calculate an
// angle.
func (j *judge) canTurn(t turn) bool {
	return j.hasThread() && !j.strongest && len(j.Grip.Layers) > 0 && t.snug.Value != 0 && !slices.Contains(j.over, t.snug.Nm())
}

// judgeTurn calculates the turn for the most lenient case of what is open, and
// for a bolt as its standard makes it.
func (j *judge) judgeTurn(t turn) {
	grip, open := j.lenient()
	bolt := j.Bolt.Bolt
	bolt.YieldShare, bolt.ProofShare, bolt.Preload = j.asked.YieldShare, j.asked.ProofShare, j.asked.Preload
	ask := stiffness.TorqueAngle{Bolt: bolt, Grip: grip, Snug: t.snug.Nm(), Angle: min(t.angle, mostTurns)}
	r, err := stiffness.TurnOn(ask)
	if err != nil {
		if !finding.Has(j.found, LengthShort) && !finding.Has(j.found, LengthPlain) { // otherwise it has been reported
			j.warn(0, GripUnfit, finding.Values{"why": err})
		}
		return
	}
	ask.Grip = j.Grip
	made, err := stiffness.TurnOn(ask)
	if err != nil {
		made = r // such a bolt is not made
	}
	if j.snug(t, made) {
		return
	}
	warned := j.fails(t, r, open, j.warn)
	if !warned {
		warned = j.failsAsMade(t, made, ofMade(open))
	}
	switch at := r.Nominal; {
	case warned:
	case t.angle > wholeTurn && !at.Reusable:
		j.wholeTurn(t)
	case t.angle > 0 && j.outlasts(at):
		j.warn(t.last, TurnUsedAgain, j.turned(t, r, open, angleToYield, finding.Values{"reuse": j.Reuse}))
	case t.angle > 0 && j.ofStandard(ofMade(open)) && j.outlasts(made.Nominal):
		j.warn(t.last, TurnUsedAgain, j.turned(t, made, asMade, angleToYield, finding.Values{"reuse": j.Reuse}))
	}
	if !warned && (j.Reuse == "" || !j.outlasts(r.Nominal) && !j.outlasts(made.Nominal)) {
		j.lasts(t, made.Worst())
	}
	j.reaches(max(made.Low.Peak, made.Nominal.Peak, made.High.Peak))
}

// snug judges the torque before the angle, and reports whether it breaks the
// bolt.
func (j *judge) snug(t turn, r stiffness.Turned) bool {
	worst := r.Worst()
	if worst.BreaksBySnug() {
		values := finding.Values{"snug": written(t.snug), "thread": worst.Thread, "head": worst.Head}
		if r.Low.BreaksBySnug() && r.Nominal.BreaksBySnug() && r.High.BreaksBySnug() {
			values["thread"], values["head"] = 0., 0.
		}
		j.warn(t.last, SnugBreaks, values)
		return true
	}
	if r.Nominal.Snug > r.Aim {
		j.note(t.last, SnugOverAim, finding.Values{"snug": written(t.snug), "preload": r.Nominal.Snug, "aim": r.Aim})
	}
	return false
}

// fails reports a turn that breaks the bolt, or that uses up most of it.
func (j *judge) fails(t turn, r stiffness.Turned, open string, tell func(int, finding.Code, finding.Values)) bool {
	switch at := r.Worst(); {
	case at.Breaks:
		tell(t.last, TurnBreaks, j.turned(t, r, open, angleToBreak, finding.Values{}))
	case at.Necks:
		tell(t.last, TurnNecks, j.turned(t, r, open, angleToGreatest, finding.Values{}))
	case at.LastingStrain > mostOfStretch*r.Strength.UniformStrain():
		tell(t.last, TurnUsesUp, j.turned(t, r, open, angleToGreatest, finding.Values{"share": at.LastingStrain / r.Strength.UniformStrain()}))
	default:
		return false
	}
	return true
}

// failsAsMade reports a turn that fails in a bolt as its standard makes it. If
// the length is stated, that is the likely bolt: it gets a warning if it
// breaks. Whether it necks depends on the length of its thread, which is not
// stated.
func (j *judge) failsAsMade(t turn, made stiffness.Turned, open string) (warned bool) {
	if worst := made.Worst(); j.ofStandard(open) && (worst.Breaks) {
		return j.fails(t, made, open, j.warn)
	}
	j.fails(t, made, open, j.note)
	return false
}

// ofStandard reports whether the bolt is assumed to be the standard one of the
// stated length.
func (j *judge) ofStandard(open string) bool { return open == asMade && j.Grip.BoltLength > 0 }

// ofMade returns what a bolt as made leaves open, given what the lenient case
// does.
func ofMade(lenient string) string {
	if lenient == openParts || lenient == asStated {
		return ofSteel
	}
	return asMade
}

// lenient returns the most yielding case of what the bolt leaves open: thread
// over the whole grip, which stretches most, and clamped parts of aluminium.
func (j *judge) lenient() (grip stiffness.Grip, open string) {
	grip = j.Grip
	grip.Layers = slices.Clone(grip.Layers)
	shank, parts := !grip.FullThread && grip.Thread == 0 && len(grip.Shank) == 0, false
	waisted := false
	if shank {
		grip.FullThread, grip.BoltLength = true, 0
		grip, waisted = j.waisted(grip)
	}
	for i := range grip.Layers {
		if grip.Layers[i].Material == "" {
			grip.Layers[i].Material, parts = softestUsual, true
		}
	}
	switch {
	case waisted:
		open = openWaist
	case shank && parts:
		open = openAll
	case shank:
		open = openShank
	case parts:
		open = openParts
	default:
		open = asStated
	}
	if _, err := strength.ParseMaterial(grip.TappedIn); err != nil {
		grip.TappedIn, grip.Engagement = "", 0
	}
	return grip, open
}

// outlasts reports whether a bolt that is used again stays longer. One that is
// measured before it goes back may stay slightly longer.
func (j *judge) outlasts(at stiffness.AfterAngle) bool {
	switch {
	case j.Reuse == "once":
		return false
	case j.Reuse == "inspect":
		return !at.Reusable
	}
	return at.Lasting > 0
}

// lasts notes that the bolt stays longer.
func (j *judge) lasts(t turn, worst stiffness.AfterAngle) {
	switch {
	case t.angle == 0 || worst.Necks || worst.Breaks || worst.Lasting == 0:
	case !worst.Reusable, j.Reuse == "once":
		j.note(t.last, TurnUsedOnce, finding.Values{"lasting": worst.Lasting, "strain": worst.LastingStrain})
	default:
		j.note(t.last, TurnMeasured, finding.Values{"lasting": worst.Lasting})
	}
}

func angleToBreak(at stiffness.AfterAngle) unit.Angle    { return at.AngleToBreak }
func angleToGreatest(at stiffness.AfterAngle) unit.Angle { return at.AngleToGreatest }
func angleToYield(at stiffness.AfterAngle) unit.Angle    { return at.AngleToYield }

// turned adds the turn and the range of an angle over the range of friction, in
// steps of 5°: the figures are no more exact than that.
func (j *judge) turned(t turn, r stiffness.Turned, open string, of func(stiffness.AfterAngle) unit.Angle, values finding.Values) finding.Values {
	round := func(a unit.Angle) unit.Angle { return unit.Angle(math.Round(float64(a)/5) * 5) }
	least := round(min(of(r.Low), of(r.Nominal), of(r.High)))
	most := round(max(of(r.Low), of(r.Nominal), of(r.High)))
	if least == most {
		least = 0
	}
	values["angle"], values["snug"], values["bolt"] = t.angle, written(t.snug), j.named()
	values["grip"], values["least"], values["most"] = r.Joint.Grip, least, most
	values["rests"] = finding.Noted(TurnRests, finding.Values{"open": open})
	return values
}
