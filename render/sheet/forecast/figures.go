package forecast

import (
	"fmt"
	"math"

	"drawdown/sequence/interaction/bounds"
)

// span prints a band of percentages: 86–94–98, or one figure where all are the
// same.
func (l *layout) span(b bounds.Band) string { return l.banded(b, "%.0f") }

// millimetres prints a band of lengths to a hundredth, as a feeler gauge tells.
func (l *layout) millimetres(b bounds.Band) string { return l.banded(b, "%.2f") }

// rough prints a band to two significant figures, since nobody knows better.
func (l *layout) rough(b bounds.Band) string {
	rounded := func(v float64) float64 {
		if v == 0 {
			return 0
		}
		scale := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
		return math.Round(v/scale) * scale
	}
	return l.banded(bounds.Band{Low: rounded(b.Low), Nominal: rounded(b.Nominal), High: rounded(b.High)}, "%g")
}

func (l *layout) banded(b bounds.Band, format string) string {
	low, nominal, high := l.figure(format, b.Low), l.figure(format, b.Nominal), l.figure(format, b.High)
	if low == high {
		return nominal
	}
	return low + "–" + nominal + "–" + high
}

// ends prints the ends of a band alone, where the middle has no room.
func (l *layout) ends(b bounds.Band, format string) string {
	low, high := l.figure(format, b.Low), l.figure(format, b.High)
	if low == high {
		return low
	}
	return low + "–" + high
}

// figure prints a number as the language writes it.
func (l *layout) figure(format string, v float64) string {
	return l.ask.Words.Figure(fmt.Sprintf(format, v+0))
}
