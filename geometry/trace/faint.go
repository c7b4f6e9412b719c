package trace

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

const (
	faintOverMm    = 1.0 // of the edge that a step of brightness is judged over
	leastFaintMm   = 4.0
	mostFaint      = 5
	crackToPixel   = math.Pi / 4 // the border of pixels is longer than the line by that
	faintEdgeShare = 0.65        // of the usual step
)

// faintStretches doubts the stretches of the outline where the step of brightness is
// much smaller than elsewhere: oil on the paper passes for part there.
func (t *tracer) faintStretches(outer edge) (doubts []finding.Finding) {
	n := len(outer.steps)
	half := max(1, int(faintOverMm/outer.side/crackToPixel)/2)
	if n < 8*half {
		return nil
	}
	at := func(i int) float64 { return outer.steps[(i+n)%n] }
	sum, limit := 0.0, faintEdgeShare*outer.contrast*float64(2*half+1)
	faint := make([]bool, n)
	for i := -half; i < half; i++ {
		sum += at(i)
	}
	first := -1 // that is not faint
	for i := range n {
		sum += at(i + half)
		if faint[i] = sum < limit; !faint[i] && first < 0 {
			first = i
		}
		sum -= at(i - half)
	}
	from := first
	for i := first; i <= first+n && first >= 0; i++ {
		if i < first+n && faint[i%n] {
			continue
		}
		if mm := float64(i-from-1) * outer.side * crackToPixel; mm >= leastFaintMm && len(doubts) < mostFaint {
			p := t.frame.Pixel(outer.mm[(from+i)/2%n])
			doubts = append(doubts, finding.Warned(FaintOutline, finding.Values{"length": unit.Length(mm), "x": p.X, "y": p.Y}))
		}
		from = i
	}
	return doubts
}
