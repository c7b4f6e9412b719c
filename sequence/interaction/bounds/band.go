// Package bounds has figures with a low, a nominal and a high value, and sums
// of many of them. It decides nothing.
package bounds

import "math"

// Band is a figure that is known within bounds only.
type Band struct{ Low, Nominal, High float64 }

// Of takes the bounds of three figures and keeps the middle one as nominal.
func Of(soft, nominal, stiff float64) Band {
	return Band{math.Min(nominal, math.Min(soft, stiff)), nominal, math.Max(nominal, math.Max(soft, stiff))}
}

// Ends returns the figures one by one, as render/words asks for them.
func (b Band) Ends() (low, nominal, high float64) { return b.Low, b.Nominal, b.High }

// Rough keeps two figures of each, since nobody knows better.
func (b Band) Rough() Band { return Band{Rough(b.Low), Rough(b.Nominal), Rough(b.High)} }

// Rough keeps two figures.
func Rough(v float64) float64 {
	if v == 0 {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
	return math.Round(v/step) * step
}
