package contact

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"drawdown/sequence/interaction/compliance"
)

// Nuts is the state of the work on a joint: the travel of each nut and the
// force in its bolt. It is not safe for concurrent use.
type Nuts struct {
	joint  *Joint
	travel []float64 // u, mm; for a nut that is run up
	force  []float64 // F, N
	runUp  []bool
	touch  []bool // in contact; a nut that is run up can lose contact if the part is pulled away
	solver contactSolver

	// Stick is the share of its target that a bolt may lack without the wrench
	// turning it, because it breaks loose harder than it turns: 0 to below 1.
	Stick float64
}

// Loose returns a joint with no nut run up.
func (j *Joint) Loose() *Nuts {
	n := j.Len()
	return &Nuts{joint: j, travel: make([]float64, n), force: make([]float64, n), runUp: make([]bool, n), touch: make([]bool, n)}
}

// Clone returns an independent copy of the state.
func (s *Nuts) Clone() *Nuts {
	return &Nuts{
		joint: s.joint, travel: slices.Clone(s.travel), force: slices.Clone(s.force),
		runUp: slices.Clone(s.runUp), touch: slices.Clone(s.touch), Stick: s.Stick,
	}
}

// Forces returns the force in each bolt, in N.
func (s *Nuts) Forces() []float64 { return slices.Clone(s.force) }

// closureMm returns how much the clamped parts are compressed at each fastener.
// If a bolt touches, the travel of its nut minus its own elongation gives this
// without summing all forces.
func (s *Nuts) closureMm() []float64 {
	closure := make([]float64, len(s.force))
	for i, whole := range s.joint.whole {
		part := s.joint.part[i]
		if s.touch[i] {
			closure[i] = s.travel[i] - (whole[i]-part[i])*s.force[i]
		} else {
			closure[i] = floats.Dot(part, s.force)
		}
	}
	return closure
}

// Tighten brings a bolt to a force, like a torque wrench. A bolt that has it
// already, or lacks less than Stick, is not moved.
func (s *Nuts) Tighten(i int, target float64) error {
	if err := s.check(i); err != nil {
		return err
	}
	if !(target > 0) || math.IsInf(target, 1) {
		return compliance.Misuse("target", target, "> 0")
	}
	if s.runUp[i] && s.force[i] > 0 && s.force[i] >= target*(1-s.Stick) {
		return nil
	}
	if s.allTouch() && s.turnAllKeeps(i, s.turnFor(i, target)) {
		s.turnAll(i, s.turnFor(i, target))
		s.force[i] = target // exact except for rounding
	} else {
		s.runUp[i], s.touch[i] = true, true
		s.force[i] = target
		if err := s.settle(i); err != nil {
			return err
		}
		s.travel[i] = floats.Dot(s.joint.whole[i], s.force)
	}
	return nil
}

// Advance turns a nut by a travel, back if negative. A nut that is not run up
// is first run up to contact.
func (s *Nuts) Advance(i int, travelMm float64) error {
	if err := s.check(i); err != nil {
		return err
	}
	if math.IsNaN(travelMm) || math.IsInf(travelMm, 0) {
		return compliance.Misuse("travel", travelMm, "number")
	}
	return s.turnTo(i, s.start(i)+travelMm)
}

// turnTo turns a nut to a travel.
func (s *Nuts) turnTo(i int, travelMm float64) error {
	if s.allTouch() && s.turnAllKeeps(i, travelMm-s.travel[i]) {
		s.turnAll(i, travelMm-s.travel[i])
	} else {
		s.runUp[i], s.touch[i] = true, true
		s.travel[i] = travelMm
		if err := s.settle(none); err != nil {
			return err
		}
	}
	return nil
}

// Remove takes out a bolt.
func (s *Nuts) Remove(i int) error {
	if err := s.check(i); err != nil {
		return err
	}
	s.runUp[i], s.touch[i], s.travel[i], s.force[i] = false, false, 0, 0
	return s.settle(none)
}

func (s *Nuts) check(i int) error {
	if i < 0 || i >= s.joint.Len() {
		return compliance.Misuse("fastener", i, s.joint.Len())
	}
	return nil
}

// start is the travel of a nut; one that is not run up is run up to contact.
func (s *Nuts) start(i int) float64 {
	if s.runUp[i] {
		return s.travel[i]
	}
	return floats.Dot(s.joint.whole[i], s.force)
}

// allTouch reports whether all bolts are in contact: then every step is linear.
func (s *Nuts) allTouch() bool {
	for i, run := range s.runUp {
		if !run || !s.touch[i] {
			return false
		}
	}
	return true
}

// turnAllKeeps reports whether every bolt keeps a force after a turn.
func (s *Nuts) turnAllKeeps(i int, travelMm float64) bool {
	for k, v := range s.joint.inverse()[i] {
		if s.force[k]+v*travelMm < 0 {
			return false
		}
	}
	return true
}

// turnFor returns the turn that brings a bolt to a force while all stay in contact.
func (s *Nuts) turnFor(i int, target float64) float64 {
	return (target - s.force[i]) / s.joint.inverse()[i][i]
}

// turnAll turns a nut while all bolts stay in contact: ΔF = K·Δu.
func (s *Nuts) turnAll(i int, travelMm float64) {
	floats.AddScaled(s.force, travelMm, s.joint.inverse()[i])
	s.travel[i] += travelMm
}
