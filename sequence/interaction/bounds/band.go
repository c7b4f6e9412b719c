// Package bounds has figures that are known within bounds only, and sums of many
// of them. It decides nothing.
package bounds

import "math"

// Spreads sums up fasteners in percent of their targets, over the gasket's
// band.
type Spreads struct{ Min, Mean, Max, SD Band }

func Of3(v [3]float64) Band { return Of(v[0], v[1], v[2]) }

// Band is a figure that is known within bounds only.
type Band struct{ Low, Nominal, High float64 }

// Of takes the bounds of three figures and keeps the middle one as nominal.
func Of(soft, nominal, stiff float64) Band {
	return Band{math.Min(nominal, math.Min(soft, stiff)), nominal, math.Max(nominal, math.Max(soft, stiff))}
}
