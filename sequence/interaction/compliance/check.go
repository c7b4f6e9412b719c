package compliance

import (
	"errors"
	"fmt"
	"math"
)

var ErrNoFasteners = errors.New("the joint has no fasteners; allowed: one or more")

// quantity is a figure of the model with its name for an error.
type quantity struct {
	name  string
	value float64
	unit  string
}

func foundation(mpaPerMm float64) quantity {
	return quantity{"foundation stiffness", mpaPerMm, "MPa/mm"}
}

// positive refuses what is not a finite figure above 0.
func positive(list ...quantity) error {
	for _, q := range list {
		if !(q.value > 0) || math.IsInf(q.value, 1) {
			return fmt.Errorf("%s %g %s; allowed: above 0", q.name, q.value, q.unit)
		}
	}
	return nil
}

// notNegative refuses what is not a finite figure from 0 up.
func notNegative(list ...quantity) error {
	for _, q := range list {
		if !(q.value >= 0) || math.IsInf(q.value, 1) {
			return fmt.Errorf("%s %g %s; allowed: 0 or more", q.name, q.value, q.unit)
		}
	}
	return nil
}

// checkPoisson keeps to what an isotropic, compressible part can have.
func checkPoisson(poisson float64) error {
	if !(poisson >= 0 && poisson < 0.5) {
		return fmt.Errorf("a Poisson's ratio of %g; allowed: 0 up to below 0.5, such as 0.3", poisson)
	}
	return nil
}
