package contact

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"drawdown/geometry"
)

// Passer works passes by closed forms on a joint whose bolts all stay in
// contact, without an allocation a pass: for comparing many orders.
type Passer struct {
	joint  *Joint
	factor factor
	step   []float64 // forces in tightening order
	column []float64
	force  []float64 // by fastener

	order    []int
	targets  []float64
	watch    bool      // keeps unevenMm
	closure  []float64 // by fastener
	unevenMm float64   // the largest at any step
}

func NewPasser(j *Joint) *Passer {
	n := j.Len()
	return &Passer{joint: j, step: make([]float64, n), column: make([]float64, n), force: make([]float64, n), targets: make([]float64, n), closure: make([]float64, n)}
}

// first works the first pass and says whether every bolt kept a force at every
// step: F = L⁻ᵀ·T. Where the bounds of the forces on the way tell that, the
// steps need not be worked one by one.
func (p *Passer) first(order []int, targets []float64) (holds bool) {
	p.joint.factorInto(&p.factor, order)
	if p.watch || !p.staysAbove(order, targets) {
		return p.stepByStep(order, targets)
	}
	for s, i := range order {
		p.step[s] = targets[i]
	}
	p.factor.backward(p.step)
	for s, i := range order {
		p.force[i] = p.step[s]
	}
	return true
}

// staysAbove bounds what each bolt has at any step from its own on, from the
// last back: F = T − Σ L·F over those tightened later, of which each has between
// nothing and its most. It says whether the least is above 0 for all of them;
// false says nothing.
func (p *Passer) staysAbove(order []int, targets []float64) bool {
	least, most := p.step, p.column
	for s, i := range order {
		least[s], most[s] = targets[i], targets[i]
	}
	for later := len(order) - 1; later >= 0; later-- {
		if least[later] <= 0 {
			return false
		}
		for s, share := range p.factor.row(later) {
			if share > 0 {
				least[s] -= share * most[later]
			} else {
				most[s] -= share * most[later]
			}
		}
	}
	return true
}

// stepByStep works the first pass by its steps.
func (p *Passer) stepByStep(order []int, targets []float64) (holds bool) {
	clear(p.step)
	holds = true
	for s, i := range order {
		// What the step adds: column s of L⁻ᵀ, times the target.
		column := p.column[:s+1]
		clear(column)
		column[s] = targets[i]
		p.factor.backward(column)
		for k, v := range column {
			p.step[k] += v
			if p.step[k] < 0 {
				holds = false
			}
		}
		if p.watch {
			p.closeUp(order[:s+1], p.step)
		}
	}
	for s, i := range order {
		p.force[i] = p.step[s]
	}
	return holds
}

// again works a further pass from the forces that stand, a Gauss–Seidel sweep
// on K·u = T, and says whether every bolt kept a force at every step. A bolt at
// its target or above is left alone.
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
		if p.watch {
			p.closeUp(nil, p.force)
		}
	}
	return true
}

// closeUp measures how uneven the part lies under forces: of the fasteners
// named, or of all.
func (p *Passer) closeUp(of []int, forces []float64) {
	clear(p.closure)
	for k, f := range forces {
		i := k
		if of != nil {
			if k == len(of) {
				break
			}
			i = of[k]
		}
		floats.AddScaled(p.closure, f, p.joint.part[i]) // C is symmetric: a row is a column
	}
	p.unevenMm = math.Max(p.unevenMm, Unevenness(p.closure))
}

// passes works torques over all fasteners, pass after pass, and says whether the
// closed forms are for them and hold.
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

// Outcome gives the forces at the end of the work and the largest unevenness on
// the way, by closed forms where they hold. It says false where the work cannot
// be done.
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
