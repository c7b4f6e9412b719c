package contact

import "slices"

// Compensated performs one pass with targets that end at the wanted forces, and
// returns these targets: each nut is turned to the travel that it has in the
// even joint. No target exceeds limit times the wanted force; where it would,
// the nut stops there and more passes are needed. The force of a bolt can still
// exceed the limit later, as others are turned. A limit of +Inf sets none.
//
// Such targets are only as good as the gasket's stiffness: use them only with
// measured elongation.
func (s *Nuts) Compensated(order []int, wanted []float64, limit float64) (targets []float64, err error) {
	if err := s.joint.CheckTargets(wanted); err != nil {
		return nil, err
	}
	if err := s.joint.checkOrder(order); err != nil {
		return nil, err
	}
	even := s.joint.TravelMm(wanted)
	targets = make([]float64, s.joint.Len())
	for _, i := range order {
		if err := s.toEven(i, even[i], limit*wanted[i]); err != nil {
			return nil, err
		}
		targets[i] = s.force[i]
	}
	return targets, nil
}

// toEven turns a nut to a travel, or until the force reaches most.
func (s *Nuts) toEven(i int, travelMm, most float64) error {
	if s.runUp[i] && travelMm <= s.travel[i] {
		return nil
	}
	travel, force := slices.Clone(s.travel), slices.Clone(s.force)
	runUp, touch := slices.Clone(s.runUp), slices.Clone(s.touch)
	if err := s.turnTo(i, travelMm); err != nil {
		return err
	}
	if s.force[i] > most {
		s.travel, s.force, s.runUp, s.touch = travel, force, runUp, touch // restore the state before
		return s.Tighten(i, most)
	}
	return nil
}
