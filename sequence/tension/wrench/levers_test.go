package wrench

import (
	"errors"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// The force at the grip is torque divided by length, by first principles; the
// limits are common practice, no source.
func TestLengthsThatCannotBe(t *testing.T) {
	t.Parallel()
	for what, c := range map[string]struct {
		length unit.Length
		end    unit.GivenTorque
		want   finding.Code
	}{
		"none stated":          {0, unit.GivenTorque{Value: 100}, ""},
		"a usual one":          {380, unit.GivenTorque{Value: 100}, ""},
		"for two hands":        {1800, unit.GivenTorque{Value: 1500}, ""},
		"1000 N, no more":      {1000, unit.GivenTorque{Value: 1000}, ""},
		"1001 N":               {1000, unit.GivenTorque{Value: 1001}, PullTooGreat},
		"a point slipped":      {38, unit.GivenTorque{Value: 100}, PullTooGreat},
		"no room for a hand":   {59, unit.GivenTorque{Value: 5}, LengthShort},
		"room for three":       {60, unit.GivenTorque{Value: 5}, ""},
		"short for 25 N·m":     {99, unit.GivenTorque{Value: 25}, LengthShort},
		"a point slipped up":   {3800, unit.GivenTorque{Value: 100}, LengthLong},
		"inches, and 340 N·m":  {635, unit.GivenTorque{Value: 250, Unit: unit.PoundForceFoot}, ""},
		"250 lbf·ft, 10 times": {63.5, unit.GivenTorque{Value: 250, Unit: unit.PoundForceFoot}, PullTooGreat},
	} {
		found, doubted := Wrench{Max: c.end.Value, Unit: c.end.Unit, Length: c.length}.DoubtLength()
		if doubted != (c.want != "") || doubted && !errors.Is(found, c.want) {
			t.Errorf("%s: %v %v; want %q", what, found, doubted, c.want)
		}
	}
}

// The answer includes the doubt, whether the length was stated or is from the
// list.
func TestADoubtfulLengthIsSaidWithTheAnswer(t *testing.T) {
	t.Parallel()
	for what, w := range map[string]Work{
		"stated":  {Torque: 80, Adapter: 60, Length: 38},
		"of list": {Torque: 80, Adapter: 60, Wrenches: []Wrench{{Name: "odd", Max: 100, Length: 38}}},
	} {
		r, err := Set(w)
		if err != nil || !finding.Has(r.Notes, PullTooGreat) && !finding.Has(r.Notes, LengthShort) {
			t.Errorf("%s: %v, %v", what, r.Notes, err)
		}
	}
	r, err := Set(Work{Torque: 30, Adapter: 60, Length: 1250})
	if err != nil || len(r.Notes) != 1 {
		t.Errorf("a long wrench low on its scale: %v, %v", r.Notes, err)
	}
}
