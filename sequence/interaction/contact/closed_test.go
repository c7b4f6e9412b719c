package contact

import (
	"slices"

	"gonum.org/v1/gonum/floats"
)

// energyNmm gives the elastic energy stored, ½·F·M·F.
func (j *Joint) energyNmm(forces []float64) float64 {
	return floats.Dot(forces, j.TravelMm(forces)) / 2
}

// travelsMm gives how far each nut has come from touching a joint without
// load.
func (s *Nuts) travelsMm() []float64 { return slices.Clone(s.travel) }

// workNmm gives the elastic work of the wrench so far, which the joint has
// stored. It holds while no bolt goes slack.
func (s *Nuts) workNmm() float64 { return s.work }

// onePass gives the forces after each bolt was brought to its target once, in
// the order, from a loose joint: F = L⁻ᵀ·T. It says false where some bolt goes
// slack on the way: then this closed form does not hold, and Nuts must be
// worked step by step. Forces and targets are by fastener.
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

// onePassTargets gives the targets that end at the wanted forces after one
// pass from a loose joint, T = Lᵀ·F. They hold where no bolt goes slack.
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
