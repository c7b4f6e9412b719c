package survey_test

import (
	"errors"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
)

// The factors of ten and a hundred are common practice, no source. Each case is
// on one side of them.
func TestAccuracyIsHeldAgainstTheReadings(t *testing.T) {
	t.Parallel()
	for what, c := range map[string]struct {
		stated, rms, digit float64
		readings           int
		want               finding.Code
	}{
		"not stated":                   {0, 5, 0.01, 12, ""},
		"a caliper":                    {0.05, 0.02, 0.01, 12, ""},
		"a rough casting":              {0.09, 0.011, 0.01, 12, ""},
		"a slipped point":              {0.5, 0.02, 0.01, 12, survey.AccuracyCoarse},
		"close by luck, few readings":  {0.5, 0, 0.01, 9, ""},
		"few readings, far from digit": {1, 0, 0.01, 9, survey.AccuracyOfDigit},
		"a tape as a micrometer":       {0.001, 0, 1, 9, survey.AccuracyOfDigit},
		"worse than stated":            {0.01, 0.1, 0.01, 12, survey.AccuracyFine},
		"a little worse than stated":   {0.01, 0.09, 0.01, 12, ""},
	} {
		r := survey.Report{Network: survey.Network{Holes: 5, AccuracyMm: c.stated, RoundedToMm: c.digit}, Solution: survey.Solution{RMSMm: c.rms, Out: make([]bool, c.readings)}}
		switch found := r.DoubtAccuracy(); {
		case c.want == "" && found != nil:
			t.Errorf("%s: %v", what, found)
		case c.want != "" && (len(found) != 1 || !errors.Is(found[0], c.want)):
			t.Errorf("%s: %v; want %s", what, found, c.want)
		}
	}
}
