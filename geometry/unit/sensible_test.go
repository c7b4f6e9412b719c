package unit_test

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"drawdown/geometry/unit"
)

// First principles: the limits themselves are allowed, and are printed
// correctly.
func TestEndsOfEachQuantity(t *testing.T) {
	t.Parallel()
	table := reflect.ValueOf(unit.Sensible)
	for i := range table.NumField() {
		name, l := table.Type().Field(i).Name, table.Field(i).Interface().(unit.Limits)
		if !(l.Least < l.Most) || l.From == "" || l.To == "" {
			t.Errorf("%s: %+v", name, l)
		}
		for _, inside := range []float64{l.Least, l.Most, (l.Least + l.Most) / 2} {
			if err := l.Check("it", inside); err != nil {
				t.Errorf("%s: %v is refused: %v", name, inside, err)
			}
		}
		beyond := (l.Most - l.Least) / 1e9
		for end, outside := range map[string]float64{"small": l.Least - beyond, "large": l.Most + beyond} {
			err := l.Check("it", outside)
			if !errors.Is(err, unit.NotSensible) || !strings.Contains(said(err), "too "+end) || !strings.HasSuffix(said(err), string(l.From+" to "+l.To)) {
				t.Errorf("%s: %v gets %q", name, outside, said(err))
			}
		}
	}
}

// Common practice, no source: real work, small and large, is allowed.
func TestRealWorkIsSensible(t *testing.T) {
	t.Parallel()
	for what, is := range map[string]struct {
		within unit.Limits
		inside float64
	}{
		"a watch screw S0.5":                 {unit.Sensible.Torque, 0.002},
		"an M1.6 of a camera":                {unit.Sensible.Torque, 0.05},
		"a stud M100":                        {unit.Sensible.Torque, 50_000},
		"the circle of a wind turbine":       {unit.Sensible.Distance, 8_000},
		"a manhole":                          {unit.Sensible.Bore, 600},
		"a ship's cylinder":                  {unit.Sensible.Bore, 960},
		"a press's tie rod":                  {unit.Sensible.BoltLength, 12_000},
		"a check after two weeks":            {unit.Sensible.Wait, 14 * 24 * 60},
		"PTFE":                               {unit.Sensible.Friction, 0.04},
		"the first turn of a short bolt":     {unit.Sensible.Turn, 10},
		"a turn and a half":                  {unit.Sensible.Turn, 540},
		"a stud of a reactor, 10 MN":         {unit.Sensible.Force, 10e6},
		"the preload of a watch screw, 20 N": {unit.Sensible.Force, 20},
	} {
		if err := is.within.Check(what, is.inside); err != nil {
			t.Error(said(err))
		}
	}
}
