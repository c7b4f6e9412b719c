package bounds

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Spread has statistics of a set of bolts, in any unit.
type Spread struct{ Min, Mean, Max, SD float64 } // SD of the whole set (divisor n)

// SpreadOf returns the statistics of a list; all 0 for an empty one.
func SpreadOf(list []float64) Spread {
	if len(list) == 0 {
		return Spread{}
	}
	mean, variance := stat.PopMeanVariance(list, nil)
	return Spread{Min: floats.Min(list), Mean: mean, Max: floats.Max(list), SD: math.Sqrt(variance)}
}

// Spreads has the statistics of a set of bolts, each known within bounds.
type Spreads struct{ Min, Mean, Max, SD Band }

// SpreadsOf returns the bounds of three sets of statistics.
func SpreadsOf(soft, nominal, stiff Spread) Spreads {
	return Spreads{
		Of(soft.Min, nominal.Min, stiff.Min), Of(soft.Mean, nominal.Mean, stiff.Mean),
		Of(soft.Max, nominal.Max, stiff.Max), Of(soft.SD, nominal.SD, stiff.SD),
	}
}

// Percent returns forces in percent of their targets.
func Percent(forces, targets []float64) []float64 {
	list := make([]float64, len(forces))
	for i, f := range forces {
		list[i] = 100 * f / targets[i]
	}
	return list
}
