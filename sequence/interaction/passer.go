package interaction

// passer works passes by closed forms on a joint whose bolts all stay in
// contact, without an allocation a pass: for comparing many orders.
type passer struct {
	joint         *Joint
	factor        factor
	step          []float64 // forces in tightening order
	column        []float64
	force, travel []float64 // by fastener
}

func newPasser(j *Joint) *passer {
	n := j.Len()
	return &passer{joint: j, step: make([]float64, n), column: make([]float64, n), force: make([]float64, n), travel: make([]float64, n)}
}

// first works the first pass and says whether every bolt kept a force at every
// step.
func (p *passer) first(order []int, targets []float64) (holds bool) {
	p.joint.factorInto(&p.factor, order)
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
	}
	for s, i := range order {
		p.force[i] = p.step[s]
	}
	return holds
}

// again works a further pass from the forces that stand, a Gauss–Seidel sweep
// on K·u = T, and says whether every bolt kept a force at every step. A bolt at
// its target or above is left alone.
func (p *passer) again(order []int, targets []float64) (holds bool) {
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
	}
	return true
}
