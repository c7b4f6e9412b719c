package contact

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"drawdown/geometry/finding"
)

// none stands for no bolt whose force is prescribed.
const none = -1

const (
	forceShare = 1e-9  // of the largest force: a pull below it is round-off
	gapShare   = 1e-12 // of the largest travel
	// patience is the count of rounds without fewer faults after which one bolt
	// a round is changed, which always ends.
	patience = 4
)

// contactSolver finds which bolts touch and their forces: the linear
// complementarity problem F ≥ 0, M·F − u ≥ 0, F·(M·F − u) = 0.
type contactSolver struct {
	members []int
	x       []float64
	factor  factor
	faults  []int
}

// settle finds the forces that belong to the travels. The force of one bolt may
// be prescribed: its travel then is free. Contacts are changed all at once
// while that helps, else one by one, the first that is wrong (Júdice and Pires,
// block principal pivoting; Murty, least index: it ends, since M is positive
// definite).
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

// forcesOfContacts solves for the bolts that touch, as if they could pull.
func (s *Nuts) forcesOfContacts(prescribed int) {
	v := &s.solver
	v.members, v.x = v.members[:0], v.x[:0]
	for i, run := range s.runUp {
		if i == prescribed {
			continue
		}
		s.force[i] = 0
		if run && s.touch[i] {
			v.members = append(v.members, i)
		}
	}
	v.factor.reset()
	for _, i := range v.members {
		v.factor.grow(s.joint.whole[i], v.members, i)
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

// findFaults lists bolts that touch but pull the wrong way, and bolts that do
// not touch but would stand inside the part.
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

// dropRoundOff gives exactly 0 to bolts that just touch.
func (s *Nuts) dropRoundOff(prescribed int) {
	for i, f := range s.force {
		if f < 0 && i != prescribed {
			s.force[i] = 0
		}
	}
}

func largest(list []float64) float64 { return floats.Norm(list, math.Inf(1)) }
