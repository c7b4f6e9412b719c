package contact

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"drawdown/geometry/finding"
)

// none means that no bolt has a prescribed force.
const none = -1

const (
	forceShare = 1e-9  // of the largest force: a smaller pull is rounding
	gapShare   = 1e-12 // of the largest travel
	// patience is the number of rounds without fewer faults after which one
	// bolt per round is changed, which always terminates.
	patience = 4
)

// contactSolver finds which bolts touch and their forces: the linear
// complementarity problem F ≥ 0, M·F − u ≥ 0, F·(M·F − u) = 0.
//
// The factor is kept between calls. Its members are in the order in which they
// came into contact, so that one more bolt is one more row. From the first
// member without contact on, the rows are calculated again.
type contactSolver struct {
	members []int
	member  []bool // by fastener
	x       []float64
	factor  factor
	faults  []int
}

// hold makes the factor that of the bolts in contact.
func (v *contactSolver) hold(whole [][]float64, touches func(i int) bool) {
	if v.member == nil {
		v.member = make([]bool, len(whole))
	}
	same := 0
	for same < len(v.members) && touches(v.members[same]) {
		same++
	}
	for _, i := range v.members[same:] {
		v.member[i] = false
	}
	v.members = v.members[:same]
	v.factor.cut(same)
	for i := range whole {
		if touches(i) && !v.member[i] {
			v.members, v.member[i] = append(v.members, i), true
			v.factor.grow(whole[i], v.members, i)
		}
	}
}

// settle finds the forces for the travels. The force of one bolt may be
// prescribed; its travel is then free. Contacts are changed all at once as long
// as that helps, then one by one, the first wrong one first (Júdice and Pires,
// block principal pivoting; Murty, least index: it terminates because M is
// positive definite).
func (s *Nuts) settle(prescribed int) error {
	fewest, patient := math.MaxInt, patience
	for range 100 * (s.joint.Len() + 10) {
		s.forcesOfContacts(prescribed)
		s.findFaults(prescribed)
		faults := s.solver.faults
		if len(faults) == 0 {
			s.dropRoundOff(prescribed)
			return nil
		}
		switch {
		case len(faults) < fewest:
			fewest, patient = len(faults), patience
		case patient > 0:
			patient--
		default:
			faults = faults[:1]
		}
		for _, i := range faults {
			s.touch[i] = !s.touch[i]
		}
	}
	return finding.Failed(NoRest, nil)
}

// forcesOfContacts solves for the bolts in contact, as if they could pull.
func (s *Nuts) forcesOfContacts(prescribed int) {
	v := &s.solver
	for i := range s.force {
		if i != prescribed {
			s.force[i] = 0
		}
	}
	v.hold(s.joint.whole, func(i int) bool { return i != prescribed && s.runUp[i] && s.touch[i] })
	v.x = v.x[:0]
	for _, i := range v.members {
		closed := s.travel[i]
		if prescribed != none {
			closed -= s.joint.whole[i][prescribed] * s.force[prescribed]
		}
		v.x = append(v.x, closed)
	}
	v.factor.solve(v.x)
	for k, i := range v.members {
		s.force[i] = v.x[k]
	}
}

// findFaults lists bolts in contact that pull the wrong way, and bolts without
// contact that would be inside the part.
func (s *Nuts) findFaults(prescribed int) {
	leastForce := -forceShare * largest(s.force)
	leastGap := -gapShare * largest(s.travel)
	s.solver.faults = s.solver.faults[:0]
	for i, run := range s.runUp {
		if !run || i == prescribed {
			continue
		}
		wrong := s.touch[i] && s.force[i] < leastForce ||
			!s.touch[i] && floats.Dot(s.joint.whole[i], s.force)-s.travel[i] < leastGap
		if wrong {
			s.solver.faults = append(s.solver.faults, i)
		}
	}
}

// dropRoundOff sets bolts that just touch to exactly 0.
func (s *Nuts) dropRoundOff(prescribed int) {
	for i, f := range s.force {
		if f < 0 && i != prescribed {
			s.force[i] = 0
		}
	}
}

// largest is the largest absolute value in a list; 0 for an empty one.
func largest(list []float64) (most float64) {
	for _, v := range list {
		most = max(most, math.Abs(v))
	}
	return most
}
