package teardown

import (
	"slices"
	"strings"
)

// Readings are the readings of one value at one place, by the time at which they were
// entered.
type Readings struct {
	Joint string // empty: of the whole machine
	What  string
	Place string
	Taken []Measured
}

// Last is the last of them.
func (r Readings) Last() Measured { return r.Taken[len(r.Taken)-1] }

// Readings groups what was measured by value and place, as first met.
func (v View) Readings() []Readings {
	var all []Readings
	for _, m := range v.Measured {
		joint, place := v.JointOf(m.Entry), m.Place.Measured().Name()
		i := slices.IndexFunc(all, func(r Readings) bool {
			return r.Joint == joint && strings.EqualFold(r.What, m.Measure) && r.Place == place
		})
		if i < 0 {
			i, all = len(all), append(all, Readings{Joint: joint, What: m.Measure, Place: place})
		}
		all[i].Taken = append(all[i].Taken, m)
	}
	for _, r := range all {
		slices.SortStableFunc(r.Taken, func(a, b Measured) int { return a.Time.Compare(b.Time) })
	}
	return all
}
