package compliance

import (
	"math"

	"drawdown/geometry/finding"
)

var errNoFasteners = finding.Failed(NoFasteners, nil)

// quantity is a figure of the model, with its name for an error.
type quantity struct {
	name  finding.Term
	value float64
	unit  string
}

func foundation(mpaPerMm float64) quantity {
	return quantity{"foundation stiffness", mpaPerMm, "MPa/mm"}
}

// positive rejects what is not a finite figure above 0.
func positive(list ...quantity) error {
	for _, q := range list {
		if !(q.value > 0) || math.IsInf(q.value, 1) {
			return finding.Failed(NotPositive, finding.Values{"what": q.name, "value": q.value, "unit": q.unit})
		}
	}
	return nil
}

// checkPoisson accepts the range of an isotropic, compressible part.
func checkPoisson(poisson float64) error {
	if !(poisson >= 0 && poisson < 0.5) {
		return finding.Failed(NoPoisson, finding.Values{"value": poisson})
	}
	return nil
}
