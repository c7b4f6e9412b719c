package contact

import (
	"slices"

	"gonum.org/v1/gonum/floats"
)

// energyNmm returns the stored elastic energy, ½·F·M·F.
func (j *Joint) energyNmm(forces []float64) float64 {
	return floats.Dot(forces, j.TravelMm(forces)) / 2
}

// tightened performs passes of torque and returns the elastic work of the
// wrench. It applies as long as no bolt goes slack.
func (s *Nuts) tightened(passes []Pass) (workNmm float64, err error) {
	for _, step := range slices.Concat(passes...) {
		i := step.Fastener
		before, start := s.force[i], s.start(i)
		if err := s.Do(step); err != nil {
			return 0, err
		}
		workNmm += (before + s.force[i]) / 2 * (s.travel[i] - start)
	}
	return workNmm, nil
}

// travelsMm returns the travel of each nut from contact with an unloaded joint.
func (s *Nuts) travelsMm() []float64 { return slices.Clone(s.travel) }

// onePass returns the forces after each bolt was tightened to its target once,
// in the order, from a loose joint: F = L⁻ᵀ·T. holds is false if a bolt goes
// slack during the pass: then the closed form does not apply, and Nuts must be
// used step by step. Forces and targets are by fastener.
func (j *Joint) onePass(order []int, targets []float64) (forces []float64, holds bool, err error) {
	if err := j.CheckTargets(targets); err != nil {
		return nil, false, err
	}
	if err := j.checkOrder(order); err != nil {
		return nil, false, err
	}
	p := NewPasser(j)
	holds = p.first(order, targets)
	return p.force, holds, nil
}

// onePassTargets returns the targets that give the wanted forces after one pass
// from a loose joint, T = Lᵀ·F. They apply if no bolt goes slack.
func (j *Joint) onePassTargets(order []int, wanted []float64) ([]float64, error) {
	if err := j.CheckTargets(wanted); err != nil {
		return nil, err
	}
	if err := j.checkOrder(order); err != nil {
		return nil, err
	}
	f := j.factorIn(order)
	targets := make([]float64, j.Len())
	for i, place := range order {
		targets[place] += wanted[place]
		for k, v := range f.row(i) {
			targets[order[k]] += v * wanted[place]
		}
	}
	return targets, nil
}
