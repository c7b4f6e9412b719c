package screw

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
)

func TestSpreadErrorsSayWhatIsAllowed(t *testing.T) {
	for says, try := range map[string]func() (Spread, error){
		`tightening by "guess" is not known; allowed: elongation, yield, angle`: func() (Spread, error) { return ScatterOf(1, "guess") },
		`tightening by "guess" is not known; allowed: feel, impact wrench`:      func() (Spread, error) { return FlangeScatter(1, "guess", 0.1) },
		"preload 0 N; allowed: above 0":                                         func() (Spread, error) { return ScatterOf(0, "torque") },
		"preload NaN N":                                                         func() (Spread, error) { return FlangeScatter(unit.Force(math.NaN()), "feel", 0.1) },
		"friction 3 (thread)":                                                   func() (Spread, error) { return FlangeScatter(1, "feel", 3) },
	} {
		s, err := try()
		if err == nil || !strings.Contains(err.Error(), says) || s != (Spread{}) {
			t.Errorf("%+v, %v; want it to say %q", s, err, says)
		}
	}
}
