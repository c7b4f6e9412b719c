package forecast

import (
	"fmt"

	"drawdown/sequence/interaction/bounds"
)

// span prints a band of percentages.
func (l *layout) span(b bounds.Band) string { return l.ask.Words.Value(b, ".0") }

// ends prints the ends of a band alone, where the middle has no room.
func (l *layout) ends(b bounds.Band, format string) string {
	low, high := l.figure(format, b.Low), l.figure(format, b.High)
	if low == high {
		return low
	}
	return low + "–" + high
}

func (l *layout) figure(format string, v float64) string {
	return l.ask.Words.Figure(fmt.Sprintf(format, v+0))
}
