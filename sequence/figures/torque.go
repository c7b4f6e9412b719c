package figures

import (
	"math"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// judgeTorques judges torques against yield. A torque that several stages
// repeat is judged once.
func (j *judge) judgeTorques() {
	if j.Bolt.Bolt.FrictionOpen() && j.hasStage(Tighten) {
		j.openFriction()
	}
	var judged []unit.Torque
	for i, s := range j.Stages {
		if s.Do != Tighten || slices.Contains(judged, s.Torque.Nm()) {
			continue
		}
		judged = append(judged, s.Torque.Nm())
		r, err := screw.AtTorque(j.Bolt.Bolt, s.Torque.Nm())
		if err != nil {
			continue
		}
		least, most := shares(r)
		switch {
		case least > 1:
			j.overYield(s, r, least)
			j.over = append(j.over, s.Torque.Nm())
		case most > 1 && !j.strongest:
			j.pastYield(s, r)
		case most < leastShare && j.isFinal(i) && !j.strongest:
			j.warn(s.Number, TorqueHardlyAny, j.yields(s, r, finding.Values{"share": leastShare}))
		case !j.strongest:
			j.atAnotherFriction(s, r)
		}
		j.reaches(max(r.Low.Borne, r.Nominal.Borne, r.High.Borne))
	}
	if len(judged) > 0 && slices.Max(judged) > byHand {
		j.note(0, TorqueByTool, finding.Values{"torque": slices.Max(judged), "most": byHand})
	}
}

// judgeUsedOnce warns of bolts that are used once and never come near yield:
// makers require new ones if an angle has stretched them, and that angle is
// probably missing. A bolt with thread locker is replaced for another reason.
func (j *judge) judgeUsedOnce() {
	if j.Reuse != "once" || j.strongest || j.hasStage(Advance) || screw.Sets(j.Bolt.Bolt.Lubricant) {
		return
	}
	for i, s := range j.Stages {
		if s.Do != Tighten || !j.isFinal(i) {
			continue
		}
		r, err := screw.AtTorque(j.Bolt.Bolt, s.Torque.Nm())
		if err != nil {
			return
		}
		if _, most := shares(r); most < shareOfUsedOnce {
			j.warn(s.Number, TorqueUsedOnce, finding.Values{"torque": written(s.Torque), "share": most})
			return
		}
	}
}

// openFriction reports which range of friction the torques are judged by if
// none is stated.
func (j *judge) openFriction() {
	if s, err := screw.Complete(j.Bolt.Bolt); err == nil {
		j.note(0, LubricantOpen, finding.Values{"low": s.Friction.Thread.Low, "high": s.Friction.Thread.High})
	}
}

// shares returns the least and the greatest share of the yield stress over the
// range of friction.
func shares(r screw.Result) (least, most float64) {
	least = min(r.Low.YieldShare, r.Nominal.YieldShare, r.High.YieldShare)
	most = max(r.Low.YieldShare, r.Nominal.YieldShare, r.High.YieldShare)
	return least, most
}

// isFinal reports whether this torque alone finally tightens the bolt. After a
// slackening a small torque may be intended, as for setting bearings.
func (j *judge) isFinal(stage int) bool {
	torque := j.Stages[stage].Torque.Nm()
	return !j.hasStage(BackOff) &&
		!slices.ContainsFunc(j.Stages[stage+1:], func(s Stage) bool { return s.Do == Advance || s.Torque.Nm() > torque })
}

// overYield warns of a torque that is too high at every friction of the range.
func (j *judge) overYield(s Stage, r screw.Result, least float64) {
	fails := least > j.breakingShare()
	if fails {
		j.breaking = append(j.breaking, s.Torque.Nm())
	}
	values := j.yields(s, r, finding.Values{"fails": fails, "times": 0., "some": false})
	switch ratio := float64(s.Torque.Nm() / r.Nominal.FullTorque); {
	case ratio >= 9.5:
		values["times"], values["some"] = math.Round(ratio), true
	case ratio >= 1.5:
		values["times"] = math.Round(ratio*2) / 2
	}
	j.warn(s.Number, TorqueOver, values)
}

// pastYield reports a torque that takes the bolt past yield somewhere in the
// range of friction. It is a warning if that happens at the middle of the
// range, or if the bolt breaks anywhere in it. For a paste with a solid
// lubricant only the middle counts: the word covers pastes from 0.04 on, and
// the tables of makers use the upper ones (common practice, no source).
func (j *judge) pastYield(s Stage, r screw.Result) {
	ends := []screw.AtFriction{r.High, r.Nominal, r.Low}
	breaks, yields := slices.IndexFunc(ends, screw.AtFriction.Breaks), slices.IndexFunc(ends, screw.AtFriction.Yields)
	switch {
	case r.Nominal.Yields():
		j.warn(s.Number, TorquePastYield, pastYield(s, ends[yields]))
	case breaks >= 0 && !screw.HoldsSolid(j.Bolt.Bolt.Lubricant):
		j.warn(s.Number, TorquePastYield, pastYield(s, ends[breaks]))
	case breaks >= 0:
		j.note(s.Number, TorquePastYield, pastYield(s, ends[breaks]))
	default:
		j.note(s.Number, TorquePastYield, pastYield(s, ends[yields]))
	}
}

func pastYield(s Stage, at screw.AtFriction) finding.Values {
	return finding.Values{
		"torque": written(s.Torque), "thread": at.Thread, "head": at.Head, "yield": at.YieldTorque, "break": at.BreakTorque, "breaks": at.Breaks(), "borne": at.Borne,
	}
}

// atAnotherFriction reports a torque that the bolt bears at the single stated
// friction, but not over the class of that figure.
func (j *judge) atAnotherFriction(s Stage, r screw.Result) {
	spread := r.Friction.Spread()
	if spread == r.Friction {
		return
	}
	bolt := j.Bolt.Bolt
	bolt.Friction, bolt.NutFactor, bolt.Lubricant = &spread, 0, ""
	over, err := screw.AtTorque(bolt, s.Torque.Nm())
	if err != nil {
		return
	}
	at, tell := over.Low, j.note
	if !at.Yields() {
		return
	}
	if at.Breaks() {
		tell = j.warn
	}
	letter, class := screw.ClassOf(r.Friction.Thread.Nominal)
	values := pastYield(s, at)
	values["stated"], values["class"], values["low"], values["high"] = r.Friction.Thread.Nominal, letter, class.Low, class.High
	tell(s.Number, TorqueOneFriction, values)
}

// breakingShare is the breaking stress divided by the yield stress.
func (j *judge) breakingShare() float64 {
	if j.class.Tensile <= j.class.Yield {
		return breakingWhereUnknown
	}
	return float64(j.class.Tensile / j.class.Yield)
}

// yields adds the torque, and the range of torques that bring the bolt to
// yield, in the unit of the stage.
func (j *judge) yields(s Stage, r screw.Result, values finding.Values) finding.Values {
	low := min(r.Low.FullTorque, r.Nominal.FullTorque, r.High.FullTorque).OnScale(s.Torque.Unit)
	high := max(r.Low.FullTorque, r.Nominal.FullTorque, r.High.FullTorque).OnScale(s.Torque.Unit)
	span := finding.Values{"least": 0., "most": high, "rests": restsOnNothing, "lubricant": j.Bolt.Bolt.Lubricant}
	if low != high {
		span["least"] = low.Value
	}
	switch {
	case j.Bolt.Bolt.Friction != nil:
		span["rests"] = restsOnFriction
	case j.Bolt.Bolt.Lubricant != "":
		span["rests"] = restsOnLubricant
	}
	values["torque"], values["bolt"], values["yields"] = written(s.Torque), j.named(), finding.Noted(YieldTorques, span)
	return values
}

// written returns a torque as a person would write it: a calculated one has at
// most four figures.
func written(t unit.GivenTorque) unit.GivenTorque {
	v, err := strconv.ParseFloat(strconv.FormatFloat(t.Value, 'g', 4, 64), 64)
	if err != nil {
		return t
	}
	return unit.GivenTorque{Value: v, Unit: t.Unit}
}
