package stiffness

import (
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// TorqueAngle is tightening to a snug torque and then by an angle.
type TorqueAngle struct {
	Bolt  screw.Bolt // its aim is the preload for AngleToAim
	Grip  Grip
	Snug  unit.Torque
	Angle unit.Angle // 0: none, only the angle to the aim is calculated
}

// Turned is the result of the angle, over the range of friction in the snug
// torque.
type Turned struct {
	Low, Nominal, High AfterAngle // at the frictions of the range
	Aim                unit.Force

	Joint    Joint
	Strength strength.Class

	Assumptions []finding.Finding
	Sources     []string
}

// AfterAngle is the bolt at one friction of the range. All angles start from
// the snug torque.
type AfterAngle struct {
	Thread, Head float64 // coefficients

	Snug    unit.Force  // preload at the snug torque
	Preload unit.Force  // after the angle
	Peak    unit.Force  // greatest during the turn
	Torque  unit.Torque // that the wrench shows at the end

	AngleToAim      unit.Angle
	AngleToYield    unit.Angle
	AngleToGreatest unit.Angle // greatest preload; from there on the bolt necks
	AngleToBreak    unit.Angle

	YieldUsed     float64     // during the turn, by tension and torsion together; above 1 it hardens
	Lasting       unit.Length // stretch that remains when the bolt is removed
	LastingStrain float64     // of its weakest part
	Stretch       unit.Length // total, elastic and permanent, from the snug torque
	Reusable      bool
	Necks         bool // it is past its greatest preload
	Breaks        bool
}

// MostLastingStrain is the permanent stretch up to which a bolt may be used
// again, as a share of the stretched length: the one by which ISO 898-1 defines
// the 0.2 % proof stress. As a rule for reuse: common practice, no source. A
// maker's statement that bolts are single-use takes precedence.
const MostLastingStrain = 0.002

// TurnOn calculates the preload after a snug torque and an angle, and the angle
// to the aim of the bolt. The preload follows a straight line up to yield, and
// bends off as the bolt hardens towards its tensile strength.
//
// The error says what is missing or does not fit, and what is allowed.
func TurnOn(a TorqueAngle) (Turned, error) {
	s, err := screw.Complete(a.Bolt)
	if err != nil {
		return Turned{}, err
	}
	held, err := completeGrip(s, a.Grip)
	if err != nil {
		return Turned{}, err
	}
	if err := a.check(); err != nil {
		return Turned{}, err
	}
	if err := s.CheckAim(); err != nil {
		return Turned{}, err
	}
	joint := held.stiffness(s)
	r := Turned{
		Low:         turned(s, a, held, joint, s.Friction.Thread.Low, s.Friction.Head.Low),
		Nominal:     turned(s, a, held, joint, s.Friction.Thread.Nominal, s.Friction.Head.Nominal),
		High:        turned(s, a, held, joint, s.Friction.Thread.High, s.Friction.Head.High),
		Aim:         s.AimAt(s.Friction.Thread.Nominal),
		Joint:       joint,
		Strength:    s.Strength,
		Assumptions: slices.Concat(s.Assumed, joint.Assumptions),
		Sources:     append(s.Sources(), joint.Sources...),
	}
	r.Assumptions = append(r.Assumptions, assumedBeyondYield(s, r)...)
	return r, nil
}

func (a TorqueAngle) check() error {
	if !(a.Snug >= 0 && !math.IsInf(float64(a.Snug), 1)) {
		return finding.Failed(SnugRange, finding.Values{"snug": a.Snug})
	}
	if !(a.Angle >= 0 && a.Angle <= mostAngle) {
		return finding.Failed(AngleRange, finding.Values{"angle": a.Angle, "most": unit.Angle(mostAngle)})
	}
	return nil
}

// mostAngle limits the angle, to find wrong units (common practice, no source:
// long bolts take a turn and a half).
const mostAngle = 3600

// turned returns the bolt at one friction of the range.
func turned(s screw.Completed, a TorqueAngle, held completedGrip, joint Joint, threadFriction, headFriction float64) AfterAngle {
	at := s.At(a.Snug, threadFriction, headFriction) // its Preload shows whether the torque alone breaks the bolt
	t := turning{s.Thread.PitchMm, float64(joint.Bolt.Resilience() + joint.Members.Resilience()), held.plastic(s, threadFriction)}
	yields, greatest := t.plastic.reaches(t.plastic.yield), t.plastic.reaches(t.plastic.tensile)
	end := t.turn(at.Preload, a.Angle)
	snug := min(at.Preload, greatest)
	lasting, peak := t.plastic.stretch(end.force), end.force
	toBreak := atLeast(t.angleToBreak(snug))
	if at.Preload > greatest {
		toBreak = 0 // the torque alone breaks the bolt
	}
	if end.neckingMm > 0 {
		lasting, peak = t.plastic.stretch(greatest)+end.neckingMm, greatest
	}
	r := AfterAngle{
		Thread: threadFriction, Head: headFriction,
		Snug: snug, Preload: end.force, Peak: peak, Torque: s.TorqueAt(end.force, at),
		AngleToAim:      atLeast(t.angle(snug, min(s.AimAt(threadFriction), greatest))),
		AngleToYield:    atLeast(t.angle(snug, max(yields, snug))),
		AngleToGreatest: atLeast(t.angle(snug, greatest)),
		AngleToBreak:    toBreak,
		YieldUsed:       s.YieldShare(end.force, threadFriction),
		Lasting:         unit.Length(lasting),
		LastingStrain:   t.plastic.strain(t.plastic.weakest(), end.force),
		Stretch:         unit.Length(float64(end.force-snug)*float64(joint.Elongation) + lasting - t.plastic.stretch(snug)),
		Necks:           end.neckingMm > 0,
		Breaks:          end.breaks,
	}
	if r.Necks {
		r.LastingStrain = t.plastic.uniform + end.neckingMm/float64(t.plastic.weakest().Length)
	}
	r.Reusable = r.LastingStrain <= MostLastingStrain
	return r
}

// assumedBeyondYield lists the assumptions about hardening, if they are used.
func assumedBeyondYield(s screw.Completed, r Turned) []finding.Finding {
	if r.Worst().Lasting == 0 {
		return nil
	}
	even := finding.Noted(EvenStretchAssumed, finding.Values{"strain": s.Strength.UniformStrain()}).From(finding.CommonPractice)
	return append([]finding.Finding{even}, s.AssumedTensile()...)
}

// BreaksBySnug reports whether the snug torque alone breaks the bolt.
func (a AfterAngle) BreaksBySnug() bool { return a.Breaks && a.AngleToBreak == 0 }

// Worst returns the result at the friction that stretches the bolt most.
func (r Turned) Worst() AfterAngle {
	worst := r.Nominal
	for _, at := range []AfterAngle{r.Low, r.High} {
		if at.Breaks && !worst.Breaks || at.Breaks == worst.Breaks && at.Lasting > worst.Lasting {
			worst = at
		}
	}
	return worst
}
