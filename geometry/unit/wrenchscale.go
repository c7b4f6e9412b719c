package unit

import (
	"math"
	"strconv"
)

// Other is the same torque in the unit of the other kind of wrench (metric for
// pound-force, pound-force for metric), rounded to the divisions of that
// wrench's scale.
func (g GivenTorque) Other() GivenTorque {
	if g.Unit != NewtonMetre {
		return g.Nm().OnScale(NewtonMetre)
	}
	if feet := math.Abs(g.Nm().In(PoundForceFoot)); feet < smallestFootReading {
		return g.Nm().OnScale(PoundForceInch)
	}
	return g.Nm().OnScale(PoundForceFoot)
}

// OtherBeside is Other in the unit that suits the highest torque of one
// fastener: two units on one bolt are easily confused.
func (g GivenTorque) OtherBeside(all []GivenTorque) GivenTorque {
	most := g
	for _, t := range all {
		if t.Unit == g.Unit && t.Value > most.Value {
			most = t
		}
	}
	return g.Nm().OnScale(most.Other().Unit)
}

// smallestFootReading is where a scale in whole lbf·ft becomes too coarse (a
// division is over 7 % of the reading) and a small wrench in lbf·in is used.
const smallestFootReading = 14

// OnScale rounds the torque to the divisions of a wrench in unit u, so that a
// conversion never shows false precision. From 0.0015 of the unit upwards,
// rounding changes the torque by at most 3.4 %.
func (t Torque) OnScale(u TorqueUnit) GivenTorque {
	v := t.In(u)
	step := division(math.Abs(v), u)
	// Steps are decimal: formatting and parsing removes binary rounding noise.
	tidy, _ := strconv.ParseFloat(strconv.FormatFloat(math.Round(v/step)*step, 'f', 4, 64), 64)
	return GivenTorque{tidy, u}
}

// divisions are the steps of wrench scales, each for readings below a limit.
// Every limit is a multiple of the steps on both its sides, so that a higher
// torque never gets a lower figure. Common practice, no source: torque
// screwdrivers are marked in hundredths or finer, small wrenches in tenths,
// bench wrenches in halves up to 15 and in ones above, long wrenches in fives.
var divisions = []struct{ below, step float64 }{
	{0.02, 0.0001}, {0.2, 0.001}, {1, 0.01}, {2, 0.05}, {10, 0.1}, {15, 0.5}, {500, 1}, {math.Inf(1), 5},
}

// division is the step of a wrench scale near value v. A scale in kgf·m, a unit
// of about ten newton metres, has steps a tenth as large.
func division(v float64, u TorqueUnit) float64 {
	scale := 1.0
	if u == KilogramForceMetre {
		scale = 10
	}
	step := 0.0
	for _, d := range divisions {
		step = d.step / scale
		if v*scale < d.below {
			break
		}
	}
	return step
}
