package survey

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Limits for a stated accuracy that does not match the readings. Common
// practice, no source: a misplaced decimal point or digit is at least a factor
// of ten.
const (
	farOff        = 10.0
	farFromDigit  = 100.0 // for a caliper that shows more digits than it can measure
	enoughChecked = 3     // spare readings; with fewer, a small scatter may be luck
)

// DoubtAccuracy reports that the stated accuracy of a reading does not match
// the scatter of the readings, or their last digit. It returns nil if it does,
// or if none is stated.
func (r Report) DoubtAccuracy() []finding.Finding {
	if r.AccuracyMm == 0 {
		return nil
	}
	doubt := func(code finding.Code) []finding.Finding {
		return []finding.Finding{finding.Warned(code, finding.Values{
			"stated": unit.Length(r.AccuracyMm), "rms": unit.Length(r.RMSMm), "digit": unit.Length(r.RoundedToMm),
		}).From(finding.CommonPractice)}
	}
	checked := r.spare() >= enoughChecked
	switch {
	case checked && r.AccuracyMm >= farOff*math.Max(r.RMSMm, r.RoundedToMm):
		return doubt(AccuracyCoarse)
	case checked && r.RMSMm >= farOff*r.AccuracyMm:
		return doubt(AccuracyFine)
	case r.RoundedToMm > 0 && r.AccuracyMm >= farFromDigit*r.RoundedToMm, r.RoundedToMm >= farOff*r.AccuracyMm:
		return doubt(AccuracyOfDigit)
	}
	return nil
}

// spare is the number of readings beyond those needed to fix the places.
func (r Report) spare() int {
	unknown := 2*r.Holes - 3
	if r.Straight {
		unknown = r.Holes - 1
	}
	used := 0
	for _, out := range r.Out {
		if !out {
			used++
		}
	}
	return used - unknown
}
