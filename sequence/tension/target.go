package tension

import (
	"math"

	"drawdown/geometry/unit"
)

// Result is the torque to set and what it does over the span of friction.
type Result struct {
	Torque  unit.Torque // to be set
	Preload unit.Force  // at the low friction: the most that Torque gives

	Low, Nominal, High AtFriction // with Torque set

	YieldShare float64 // that was allowed, by tension and torsion together
	Strength   Strength
	Friction   Friction
	Face, Hole unit.Length // of the bearing ring under the head
	Effective  unit.Length // diameter at which friction under the head acts
	Equation   Equation

	Assumptions []string // in plain words, what was not stated
	Sources     []string // of the formulas and figures
}

// AtFriction is what the set torque does at one friction of the span.
type AtFriction struct {
	Thread, Head float64 // coefficients
	Preload      unit.Force
	YieldShare   float64     // used, by tension and torsion together
	FullTorque   unit.Torque // the torque that would use the whole share allowed
}

// Target works out the torque to set for a bolt, by VDI 2230 Part 1, section
// 5.4.3: preload and torsion together may use a share of the yield stress (0.9
// where the bolt does not say otherwise).
//
// The torque is the one that is safe at the lowest friction of the span, where
// a torque gives the most preload: nowhere in the span is the share exceeded.
// At higher friction the same torque gives less preload, which Nominal and
// High tell. FullTorque at these is higher than Torque; setting it would
// overload a bolt that turns easily.
//
// The error says what is missing or does not fit, and what is allowed.
func Target(b Bolt) (Result, error) {
	s, err := settle(b)
	if err != nil {
		return Result{}, err
	}
	torque := s.safeTorque()
	r := Result{
		Torque:      torque,
		Low:         s.at(torque, s.friction.Thread.Low, s.friction.Head.Low),
		Nominal:     s.at(torque, s.friction.Thread.Nominal, s.friction.Head.Nominal),
		High:        s.at(torque, s.friction.Thread.High, s.friction.Head.High),
		YieldShare:  s.yieldShare,
		Strength:    s.strength,
		Friction:    s.friction,
		Face:        s.bearing.face,
		Hole:        s.bearing.hole,
		Effective:   s.bearing.effective(),
		Equation:    s.equation,
		Assumptions: s.assumed,
		Sources:     s.sources(),
	}
	r.Preload = r.Low.Preload
	return r, nil
}

// safeTorque gives the highest torque that exceeds the share nowhere in the
// span. Friction under the head only takes away, so its low end is the worst.
// Friction in the thread lowers the tension and raises the torsion: at a given
// torque the stress falls with it, and from some (very high) friction on rises
// again, so one of the ends is the worst. Almost always it is the low end.
func (s settled) safeTorque() unit.Torque {
	head := s.friction.Head.Low
	low, high := s.fullTorque(s.friction.Thread.Low, head), s.fullTorque(s.friction.Thread.High, head)
	return unit.Torque(math.Min(float64(low), float64(high)))
}

// fullTorque gives the torque that uses the whole share allowed.
func (s settled) fullTorque(threadFriction, headFriction float64) unit.Torque {
	preload := PreloadAtYieldShare(s.yieldShare, s.strength.Yield, s.thread, threadFriction, s.equation)
	return Torque(preload, s.thread, s.bearing.effective(), threadFriction, headFriction, s.equation)
}

func (s settled) at(torque unit.Torque, threadFriction, headFriction float64) AtFriction {
	preload := Preload(torque, s.thread, s.bearing.effective(), threadFriction, headFriction, s.equation)
	return AtFriction{
		Thread:     threadFriction,
		Head:       headFriction,
		Preload:    preload,
		YieldShare: YieldShare(preload, s.strength.Yield, s.thread, threadFriction, s.equation),
		FullTorque: s.fullTorque(threadFriction, headFriction),
	}
}

func (s settled) sources() []string {
	list := []string{"VDI 2230 Part 1 (torque and preload)"}
	if s.thread.Unified() {
		list = append(list, "ASME B1.1 (thread)")
	} else {
		list = append(list, "ISO 724, ISO 898-1 (thread)")
	}
	if s.strength.Standard != "" {
		list = append(list, s.strength.Standard+" (strength)")
	}
	return list
}
