package tension

import (
	"fmt"
	"math"

	"drawdown/geometry/unit"
)

// TorqueAngle is a tightening to a snug torque and on by an angle.
type TorqueAngle struct {
	Bolt  Bolt // its aim is the preload that AngleToAim leads to
	Grip  Grip
	Snug  unit.Torque
	Angle unit.Angle // 0: none, only the angle to the aim is asked
}

// TorqueAngleResult tells where the angle leads, over the span of friction in
// the snug torque.
type TorqueAngleResult struct {
	Low, Nominal, High AfterAngle // at the friction of the span
	Aim                unit.Force

	Joint    JointStiffness
	Strength Strength

	Notes       []string // in plain words, what a technician must know
	Assumptions []string
	Sources     []string
}

// AfterAngle is the bolt at one friction of the span. All angles count from the
// snug torque.
type AfterAngle struct {
	Thread, Head float64 // coefficients

	Snug    unit.Force  // preload at the snug torque
	Preload unit.Force  // after the angle
	Peak    unit.Force  // that it passed on the way
	Torque  unit.Torque // that the wrench reads at the end

	AngleToAim      unit.Angle
	AngleToYield    unit.Angle
	AngleToGreatest unit.Angle // preload; from there on the bolt draws in at one place
	AngleToBreak    unit.Angle

	YieldUsed     float64     // while it is turned, by tension and torsion together; over 1 it hardens
	Lasting       unit.Length // stretch that stays when the bolt is taken out
	LastingStrain float64     // of its weakest part
	Stretch       unit.Length // in all, elastic and lasting, over the snug torque
	Reusable      bool
	Necks         bool // it is past its greatest preload
	Breaks        bool
}

// MostLastingStrain is the lasting stretch up to which a bolt may be used
// again, as a share of the stretched length: that by which ISO 898-1 defines
// the 0.2 % proof stress. As a rule for reuse: common practice, no source. A
// maker who says that bolts are used once goes before.
const MostLastingStrain = 0.002

// TurnOn works out the preload after a snug torque and an angle, and the angle
// to the aim of the bolt. The preload follows the straight line up to yield,
// and bends off as the bolt hardens towards its tensile strength.
//
// The error says what is missing or does not fit, and what is allowed.
func TurnOn(a TorqueAngle) (TorqueAngleResult, error) {
	s, err := settle(a.Bolt)
	if err != nil {
		return TorqueAngleResult{}, err
	}
	held, err := settleGrip(s, a.Grip)
	if err != nil {
		return TorqueAngleResult{}, err
	}
	if err := a.check(); err != nil {
		return TorqueAngleResult{}, err
	}
	if err := s.checkAim(); err != nil {
		return TorqueAngleResult{}, err
	}
	joint := held.stiffness(s)
	r := TorqueAngleResult{
		Low:         s.turned(a, held, joint, s.friction.Thread.Low, s.friction.Head.Low),
		Nominal:     s.turned(a, held, joint, s.friction.Thread.Nominal, s.friction.Head.Nominal),
		High:        s.turned(a, held, joint, s.friction.Thread.High, s.friction.Head.High),
		Aim:         s.aimAt(s.friction.Thread.Nominal),
		Joint:       joint,
		Strength:    s.strength,
		Assumptions: append(told(s.assumed), joint.Assumptions...),
		Sources:     append(s.sources(), joint.Sources...),
	}
	r.Assumptions = append(r.Assumptions, s.assumedBeyondYield(r)...)
	r.Notes = r.notes(a, held)
	return r, nil
}

func (a TorqueAngle) check() error {
	if !(a.Snug >= 0 && !math.IsInf(float64(a.Snug), 1)) {
		return fmt.Errorf("snug torque %.4g N·m; allowed: 0 or more", float64(a.Snug))
	}
	if !(a.Angle >= 0 && a.Angle <= mostAngle) {
		return fmt.Errorf("angle %.4g°; allowed: 0° to %d°", float64(a.Angle), mostAngle)
	}
	return nil
}

// mostAngle bounds the angle, to find slips of the unit (common practice, no
// source: long bolts take a turn and a half).
const mostAngle = 3600

// aimAt gives the preload that the bolt is tightened to.
func (s settled) aimAt(threadFriction float64) unit.Force {
	if s.aim != 0 {
		return s.aim
	}
	return PreloadAtYieldShare(s.yieldShare, s.strength.Yield, s.thread, threadFriction, s.equation)
}

func (s settled) turned(a TorqueAngle, held settledGrip, joint JointStiffness, threadFriction, headFriction float64) AfterAngle {
	at := s.at(a.Snug, threadFriction, headFriction) // its Preload tells whether the torque alone breaks the bolt
	t := turning{s.thread.PitchMm, float64(joint.Bolt.Resilience() + joint.Members.Resilience()), held.plastic(s, threadFriction)}
	yields, greatest := t.plastic.reaches(t.plastic.yield), t.plastic.reaches(t.plastic.tensile)
	end := t.turn(at.Preload, a.Angle)
	snug := min(at.Preload, greatest)
	lasting, peak := t.plastic.stretch(end.force), end.force
	toBreak := atLeast(t.angleToBreak(snug))
	if at.Preload > greatest {
		toBreak = 0 // the torque alone turns the bolt until it breaks
	}
	if end.neckingMm > 0 {
		lasting, peak = t.plastic.stretch(greatest)+end.neckingMm, greatest
	}
	r := AfterAngle{
		Thread: threadFriction, Head: headFriction,
		Snug: snug, Preload: end.force, Peak: peak, Torque: s.torqueAt(end.force, at),
		AngleToAim:      atLeast(t.angle(snug, min(s.aimAt(threadFriction), greatest))),
		AngleToYield:    atLeast(t.angle(snug, max(yields, snug))),
		AngleToGreatest: atLeast(t.angle(snug, greatest)),
		AngleToBreak:    toBreak,
		YieldUsed:       YieldShare(end.force, s.strength.Yield, s.thread, threadFriction, s.equation),
		Lasting:         unit.Length(lasting),
		LastingStrain:   t.plastic.strain(t.plastic.weakest(), end.force),
		Stretch:         unit.Length(float64(end.force-snug)*float64(joint.Bolt.Resilience()) + lasting - t.plastic.stretch(snug)),
		Necks:           end.neckingMm > 0,
		Breaks:          end.breaks,
	}
	if r.Necks {
		r.LastingStrain = t.plastic.uniform + end.neckingMm/float64(t.plastic.weakest().Length)
	}
	r.Reusable = r.LastingStrain <= MostLastingStrain
	return r
}

// assumedBeyondYield names the figures of hardening, where they are used.
func (s settled) assumedBeyondYield(r TorqueAngleResult) []string {
	if r.worst().Lasting == 0 {
		return nil
	}
	lines := []string{fmt.Sprintf("bolt stretches evenly up to %.1f %%, half of its elongation after fracture, assumed", s.strength.UniformStrain()*100)}
	return append(lines, s.assumedTensile()...)
}

// assumedTensile names the tensile strength where only one stress is stated.
func (s settled) assumedTensile() []string {
	if s.strength.Tensile > s.strength.Yield {
		return nil
	}
	return []string{fmt.Sprintf("tensile strength %.0f MPa (%.1f times the yield stress), assumed", float64(s.strength.hardened()), hardeningWhereUnknown)}
}
