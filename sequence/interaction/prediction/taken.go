package prediction

import "drawdown/sequence/interaction/limits"

// Taken is the load that the tightening of others has taken from a bolt since
// it was last turned, at the soft end of the gasket.
type Taken struct {
	From, By int     // fasteners; By took the most
	Points   float64 // percent of the target, taken by By
	All      float64 // the same, taken by all
}

// taken returns which fastener took load from a bolt; nil if the loss is
// negligible.
func (w *forecaster) taken(from int) *Taken {
	run := w.p.Soft
	target := run.TargetsN[from]
	by := make([]float64, len(w.model.At))
	before := 0.0
	for n, pass := range w.work.Passes {
		for s, step := range pass {
			now := 100 * run.Passes[n].StepForcesN[s][from] / target
			switch {
			case step.Fastener != from:
				by[step.Fastener] += before - now
			case now > before: // otherwise the wrench clicks and nothing is compensated
				clear(by)
			}
			before = now
		}
	}
	t := &Taken{From: from, By: -1}
	for i, points := range by {
		t.All += points
		if points > t.Points {
			t.By, t.Points = i, points
		}
	}
	if t.Points < limits.LeastTaken {
		return nil
	}
	return t
}
