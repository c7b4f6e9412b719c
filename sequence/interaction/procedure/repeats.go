package procedure

import (
	"math"

	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
)

// Repeats returns how often the last pass must be repeated until the elastic
// scatter is a third of that of friction, or 1 %, and no bolt is below 95 % of
// its target. Use it at the soft end of the gasket's range. stick is that of
// Nuts. It returns false if fifty are not enough.
func Repeats(j *contact.Joint, passes []contact.Pass, targets []float64, frictionSDPercent, stick float64) (count int, enough bool, err error) {
	nuts := j.Loose()
	nuts.Stick = stick
	if _, err := nuts.Work(passes, nil); err != nil {
		return 0, false, err
	}
	last := passes[len(passes)-1:]
	for ; count <= limits.MostRepeats; count++ {
		spread := bounds.SpreadOf(bounds.Percent(nuts.Forces(), targets))
		if spread.Min >= limits.EvenMinPercent && spread.SD <= math.Max(limits.EvenSDPercent, frictionSDPercent/3) {
			return count, true, nil
		}
		if _, err := nuts.Work(last, nil); err != nil {
			return count, false, err
		}
	}
	return limits.MostRepeats, false, nil
}
