package screw

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// proofLoad returns the load that a bolt bears without permanent stretch.
func (s Completed) proofLoad() unit.Force {
	return unit.Force(float64(s.Strength.Proof) * areaMm2(s.Least())) // ISO 898-1, table 5: Fp = As Sp
}

// settleAim sets the preload aimed at, unless it is a share of the yield
// stress.
func (s *Completed) settleAim(b Bolt) error {
	stated := 0
	for _, given := range []bool{b.YieldShare != 0, b.ProofShare != 0, b.Preload != 0} {
		if given {
			stated++
		}
	}
	if stated > 1 {
		return finding.Failed(SeveralAims, nil)
	}
	if b.ProofShare != 0 {
		if !(b.ProofShare > 0 && b.ProofShare <= 1) {
			return finding.Failed(ProofShareRange, finding.Values{"share": b.ProofShare})
		}
		s.aim = unit.Force(b.ProofShare) * s.proofLoad() // Shigley 9th ed., Eq. (8-31): Fi = 0.75 Fp reused, 0.90 Fp permanent
	}
	if b.Preload != 0 {
		if !(b.Preload > 0 && !math.IsInf(float64(b.Preload), 1)) {
			return finding.Failed(NoAim, finding.Values{"preload": b.Preload})
		}
		s.aim = b.Preload
	}
	return nil
}

// CheckAim rejects a preload at which the bolt has already yielded.
func (s Completed) CheckAim() error {
	most := s.preloadAt(1, s.Strength.Yield, s.Friction.Thread.Nominal)
	if s.aim > most {
		return finding.Failed(AimTooHigh, finding.Values{
			"preload": s.aim, "thread": s.Thread.Name, "class": s.Strength.Named(), "most": unit.Force(math.Floor(float64(most)/100) * 100), "friction": s.Friction.Thread.Nominal,
		})
	}
	return nil
}

// TorqueSplit is the use of the torque, in shares that add up to 1.
type TorqueSplit struct {
	Stretch float64 // moves the load up the thread: the part that tightens
	Thread  float64 // lost to friction in the thread
	Head    float64 // lost to friction under the head
}

// SplitTorque returns the shares for given coefficients of friction.
func SplitTorque(t thread.Thread, effective unit.Length, threadFriction, headFriction float64, e Equation) TorqueSplit {
	stretch := ThreadArmMm(t, 0, e) // ISO 16047, clause 3: P/2π is the part without friction
	inThread, underHead := ThreadArmMm(t, threadFriction, e)-stretch, HeadArmMm(effective, headFriction)
	whole := stretch + inThread + underHead
	return TorqueSplit{stretch / whole, inThread / whole, underHead / whole}
}

// AimAt returns the preload aimed at.
func (s Completed) AimAt(threadFriction float64) unit.Force {
	if s.aim != 0 {
		return s.aim
	}
	return s.preloadAt(s.yieldShare, s.Strength.Yield, threadFriction)
}
