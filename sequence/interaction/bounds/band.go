// Package bounds has figures with a low, a nominal and a high value, and
// statistics of many of them. It decides nothing.
package bounds

import "math"

// Band is a figure that is known only within bounds.
type Band struct{ Low, Nominal, High float64 }

// Of returns the bounds of three figures, with the middle one as nominal.
func Of(soft, nominal, stiff float64) Band {
	return Band{math.Min(nominal, math.Min(soft, stiff)), nominal, math.Max(nominal, math.Max(soft, stiff))}
}

// Ends returns the three figures, as render/words needs them.
func (b Band) Ends() (low, nominal, high float64) { return b.Low, b.Nominal, b.High }

// Rough rounds each figure to two digits, which is all that is known.
func (b Band) Rough() Band { return Band{Rough(b.Low), Rough(b.Nominal), Rough(b.High)} }

// Rough rounds to two significant digits.
func Rough(v float64) float64 {
	if v == 0 {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
	return math.Round(v/step) * step
}
