package contact

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"drawdown/geometry"
)

// Passer calculates passes by closed forms on a joint whose bolts all stay in
// contact, without an allocation per pass: for comparing many orders.
type Passer struct {
	joint  *Joint
	factor factor
	column []float64 // in tightening order
	force  []float64 // by fastener

	order    []int
	targets  []float64
	watch    bool      // calculate unevenMm
	closure  []float64 // by fastener
	unevenMm float64   // the largest at any step
}

func NewPasser(j *Joint) *Passer {
	n := j.Len()
	return &Passer{joint: j, column: make([]float64, n), force: make([]float64, n), targets: make([]float64, n), closure: make([]float64, n)}
}

// first performs the first pass, F = L⁻ᵀ·T, and reports whether every bolt kept
// a force at every step.
func (p *Passer) first(order []int, targets []float64) (holds bool) {
	p.joint.factorInto(&p.factor, order)
	clear(p.force)
	for s, i := range order {
		// Contribution of the step: column s of L⁻ᵀ, times the target.
		column := p.column[:s+1]
		clear(column)
		column[s] = targets[i]
		p.factor.backward(column)
		for k, v := range column {
			p.force[order[k]] += v
			if p.force[order[k]] < 0 {
				return false
			}
		}
		p.closeUp()
	}
	return true
}

// again performs a further pass from the current forces, a Gauss–Seidel sweep
// on K·u = T, and reports whether every bolt kept a force at every step. A bolt
// at or above its target is left alone.
func (p *Passer) again(order []int, targets []float64) (holds bool) {
	stiffness := p.joint.inverse()
	for _, i := range order {
		missing := targets[i] - p.force[i]
		if missing <= 0 {
			continue
		}
		row := stiffness[i]
		turned := missing / row[i]
		for k, v := range row {
			p.force[k] += v * turned
			if p.force[k] < 0 {
				return false
			}
		}
		p.closeUp()
	}
	return true
}

// closeUp measures the unevenness of the part, if requested.
func (p *Passer) closeUp() {
	if !p.watch {
		return
	}
	clear(p.closure)
	for i, f := range p.force {
		floats.AddScaled(p.closure, f, p.joint.part[i]) // C is symmetric: a row is a column
	}
	p.unevenMm = math.Max(p.unevenMm, Unevenness(p.closure))
}

// passes performs passes of torque over all fasteners, and reports whether the
// closed forms apply.
func (p *Passer) passes(passes []Pass) (holds bool) {
	p.unevenMm = 0
	for n, pass := range passes {
		if len(pass) != p.joint.Len() {
			return false
		}
		p.order = p.order[:0]
		for _, step := range pass {
			if step.Do != ToForce {
				return false
			}
			p.order = append(p.order, step.Fastener)
			p.targets[step.Fastener] = step.ForceN
		}
		if n == 0 {
			holds = p.first(p.order, p.targets)
		} else {
			holds = p.again(p.order, p.targets)
		}
		if !holds {
			return false
		}
	}
	return holds
}

// Outcome returns the final forces and the largest unevenness during the work,
// by closed forms if they apply. It returns false if the work cannot be done.
func (p *Passer) Outcome(passes []Pass, at []geometry.Point) (forces []float64, unevenMm float64, ok bool) {
	p.watch = at != nil
	if p.passes(passes) {
		return p.force, p.unevenMm, true
	}
	after, err := p.joint.Loose().Work(passes, at)
	if err != nil || len(after) == 0 {
		return nil, 0, false
	}
	for _, a := range after {
		unevenMm = math.Max(unevenMm, a.LargestUnevenMm)
	}
	return after[len(after)-1].ForcesN, unevenMm, true
}
