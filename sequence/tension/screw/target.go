package screw

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/strength"
)

// Result is a torque and its effect over the range of friction.
type Result struct {
	Torque  unit.Torque // to set on the wrench
	Preload unit.Force  // aimed at; for a share of yield, at the low friction: the greatest that Torque gives

	Low, Nominal, High AtFriction // with Torque set

	YieldShare float64 // allowed share, by tension and torsion together
	Strength   strength.Class
	ProofLoad  unit.Force
	Friction   Friction
	HeadForm   head.Form
	OnWasher   bool        // the head turns on a washer
	Face, Hole unit.Length // of the bearing ring under the head
	PartFace   unit.Length // outer diameter of the face of the head, or its washer, on the part
	PartHole   unit.Length // of the part
	Effective  unit.Length // diameter at which friction under the head acts
	Equation   Equation

	StressAreaMm2   float64     // As, of the thread
	LeastSectionMm2 float64     // that rules: As, or of the shank if it is slimmer
	Least           unit.Length // diameter of that section

	Assumptions []finding.Finding // what was not stated
	Sources     []string          // of the formulas and figures
}

// AtFriction is the effect of the set torque at one friction of the range.
type AtFriction struct {
	Thread, Head float64     // coefficients
	Preload      unit.Force  // proportional to the torque, as if the bolt never broke
	YieldShare   float64     // used, by tension and torsion together; above 1 the bolt hardens, as in stiffness.TurnOn
	Borne        unit.Force  // the real preload: Preload, limited to Greatest
	Greatest     unit.Force  // that the bolt bears while it is turned
	YieldTorque  unit.Torque // from which the bolt stretches permanently
	BreakTorque  unit.Torque // that breaks the bolt
	FullTorque   unit.Torque // that uses the full share allowed
	Split        TorqueSplit
	NutFactor    float64 // K of the short equation
}

// ShankRules reports whether the shank is slimmer than the thread.
func (r Result) ShankRules() bool { return r.LeastSectionMm2 < r.StressAreaMm2 }

// Yields reports whether the torque stretches the bolt permanently.
func (f AtFriction) Yields() bool { return f.YieldShare > 1 }

// Breaks reports whether the torque breaks the bolt.
func (f AtFriction) Breaks() bool { return f.Preload > f.Greatest }

// Target calculates the torque to set for a bolt.
//
// By a share of the yield stress (VDI 2230 Part 1, section 5.4.3; 0.9 if the
// bolt does not state it): preload and torsion together may use it. The torque
// is safe at the lowest friction of the range, where a torque gives the most
// preload: nowhere in the range is the share exceeded. At higher friction the
// same torque gives less preload; see Nominal and High. FullTorque at these is
// higher than Torque; setting it would overload a bolt that turns easily.
//
// By a stated preload or a share of the proof load: the torque reaches it at
// nominal friction; Low and High show what it may become, and the notes say
// where that is too much.
//
// The error says what is missing or does not fit, and what is allowed.
func Target(b Bolt) (Result, error) {
	s, err := Complete(b)
	if err != nil {
		return Result{}, err
	}
	if s.aim == 0 {
		r := s.result(s.safeTorque())
		return r.aimedAt(r.Low.Preload, s), nil
	}
	if err := s.CheckAim(); err != nil {
		return Result{}, err
	}
	r := s.result(Torque(s.aim, s.Thread, s.Bearing.Effective(), s.Friction.Thread.Nominal, s.Friction.Head.Nominal, s.Equation))
	return r.aimedAt(r.Nominal.Preload, s), nil
}

// AtTorque calculates the effect of a given torque on a bolt, over the range of
// friction, also past yield: AtFriction says whether the bolt yields or breaks,
// and what it then bears. Preload is the one at nominal friction. The aim of
// the bolt is ignored, except for the share of yield that FullTorque is for.
func AtTorque(b Bolt, torque unit.Torque) (Result, error) {
	b.ProofShare, b.Preload = 0, 0
	b.YieldShare = cmp.Or(b.YieldShare, UsualYieldShare)
	s, err := Complete(b)
	if err != nil {
		return Result{}, err
	}
	if !(torque > 0 && !math.IsInf(float64(torque), 1)) {
		return Result{}, finding.Failed(NoTorque, finding.Values{"torque": torque})
	}
	r := s.result(torque)
	return r.aimedAt(r.Nominal.Preload, s), nil
}

// result holds everything that does not depend on the friction chosen for the
// aim.
func (s Completed) result(torque unit.Torque) Result {
	return Result{
		Torque:          torque,
		Low:             s.At(torque, s.Friction.Thread.Low, s.Friction.Head.Low),
		Nominal:         s.At(torque, s.Friction.Thread.Nominal, s.Friction.Head.Nominal),
		High:            s.At(torque, s.Friction.Thread.High, s.Friction.Head.High),
		YieldShare:      s.yieldShare,
		Strength:        s.Strength,
		Friction:        s.Friction,
		HeadForm:        s.HeadForm,
		OnWasher:        s.Bearing.Washer != nil,
		PartFace:        s.Bearing.Part.Face,
		PartHole:        s.Bearing.Part.Hole,
		Face:            s.Bearing.Face,
		Hole:            s.Bearing.Hole,
		Effective:       s.Bearing.Effective(),
		Equation:        s.Equation,
		StressAreaMm2:   s.Thread.StressAreaMm2(),
		LeastSectionMm2: areaMm2(s.Least()), Least: s.Least(),
		ProofLoad:   s.proofLoad(),
		Assumptions: slices.Clip(s.Assumed),
		Sources:     s.Sources(),
	}
}

func (r Result) aimedAt(preload unit.Force, s Completed) Result {
	r.Preload = preload
	if r.Low.Yields() || r.Nominal.Yields() || r.High.Yields() {
		r.Assumptions = append(r.Assumptions, s.AssumedTensile()...)
	}
	return r
}

// safeTorque returns the highest torque that exceeds the share nowhere in the
// range. Friction under the head only reduces the preload, so its low end is
// the worst. Friction in the thread lowers the tension and raises the torsion:
// at a given torque the stress first decreases with it and, from some (very
// high) friction on, increases again, so one of the ends is the worst. Almost
// always it is the low end.
func (s Completed) safeTorque() unit.Torque {
	head := s.Friction.Head.Low
	low, high := s.fullTorque(s.Friction.Thread.Low, head), s.fullTorque(s.Friction.Thread.High, head)
	return unit.Torque(math.Min(float64(low), float64(high)))
}

// fullTorque returns the torque that uses the full share allowed.
func (s Completed) fullTorque(threadFriction, headFriction float64) unit.Torque {
	preload := s.preloadAt(s.yieldShare, s.Strength.Yield, threadFriction)
	return Torque(preload, s.Thread, s.Bearing.Effective(), threadFriction, headFriction, s.Equation)
}

func (s Completed) At(torque unit.Torque, threadFriction, headFriction float64) AtFriction {
	preload := Preload(torque, s.Thread, s.Bearing.Effective(), threadFriction, headFriction, s.Equation)
	yields := s.preloadAt(1, s.Strength.Yield, threadFriction)
	greatest := s.preloadAt(1, s.Strength.Hardened(), threadFriction) // like plasticBolt.reaches
	at := AtFriction{Thread: threadFriction, Head: headFriction}
	return AtFriction{
		Thread:      threadFriction,
		Head:        headFriction,
		Preload:     preload,
		YieldShare:  float64(preload / yields),
		Borne:       min(preload, greatest),
		Greatest:    greatest,
		YieldTorque: s.TorqueAt(yields, at),
		BreakTorque: s.TorqueAt(greatest, at),
		FullTorque:  s.fullTorque(threadFriction, headFriction),
		Split:       SplitTorque(s.Thread, s.Bearing.Effective(), threadFriction, headFriction, s.Equation),
		NutFactor:   NutFactor(s.Thread, s.Bearing.Effective(), threadFriction, headFriction, s.Equation),
	}
}

func (s Completed) Sources() []string {
	list := []string{"VDI 2230 Part 1 (torque and preload)"}
	if s.Thread.Unified() {
		list = append(list, "ASME B1.1 (thread)")
	} else {
		list = append(list, "ISO 724, ISO 898-1 (thread)")
	}
	if s.Equation == Linear {
		list = append(list, "ISO 16047 (linear equation)")
	}
	if s.byNutFactor {
		list = append(list, "Shigley 9th ed., Eq. (8-27) (nut factor)")
	}
	if s.Strength.Standard != "" {
		list = append(list, s.Strength.Standard+" (strength)")
	}
	return list
}

// AssumedTensile reports the assumed tensile strength if only one stress is
// stated.
func (s Completed) AssumedTensile() []finding.Finding {
	if s.Strength.Tensile > s.Strength.Yield {
		return nil
	}
	return []finding.Finding{strength.AssumedTensile(s.Strength)}
}

// TorqueAt returns the torque that turns the bolt further at a preload.
func (s Completed) TorqueAt(force unit.Force, at AtFriction) unit.Torque {
	return Torque(force, s.Thread, s.Bearing.Effective(), at.Thread, at.Head, s.Equation)
}
