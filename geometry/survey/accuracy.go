package survey

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// How far the stated accuracy may be from what the readings show. Common practice,
// no source: a point or a digit that slipped is a factor of ten at least.
const (
	farOff        = 10.0
	farFromDigit  = 100.0 // of a caliper that shows more digits than its use is good for
	enoughChecked = 3     // spare readings, below which a small scatter may be luck
)

// DoubtAccuracy says that the stated accuracy of a reading is far from how the
// readings agree, or from their last digit. Nil where it is not, or is not stated.
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

// spare is how many readings there are over those that fix the places.
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
