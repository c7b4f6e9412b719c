package judge

import (
	"slices"

	"drawdown/geometry"
)

// Side is the work that an order is for.
type Side string

const (
	Tighten Side = "tighten"
	Loosen  Side = "loosen"
)

// Sides lists both, tightening first.
var Sides = []Side{Tighten, Loosen}

// Group is a set of fastener kinds that is worked together.
type Group struct {
	Kinds []string
	// MajorMm is the thread's major diameter, 0 where it is not known. Small
	// ones go last; groups of one size may be mixed.
	MajorMm float64
}

// Input is an order and what it is judged by.
type Input struct {
	Joint  geometry.Joint
	Groups []Group  // in the order in which they are tightened; none: all in one
	Order  []string // ids, as given: some may be unknown, missing or twice
	Side   Side     // empty: tighten
	Makers bool     // the maker's own order, which is described and not judged
	// Nearest guesses which of the ids an unknown name means, empty for none;
	// nil: nothing is guessed.
	Nearest func(name string, ids []string) string
}

// groups returns every fastener its group, the last for kinds that none names.
func (in Input) groups() []Group {
	if len(in.Groups) == 0 {
		return []Group{{Kinds: kindsOf(in.Joint, nil)}}
	}
	var named []string
	for _, g := range in.Groups {
		named = append(named, g.Kinds...)
	}
	if left := kindsOf(in.Joint, named); len(left) > 0 {
		return append(slices.Clone(in.Groups), Group{Kinds: left})
	}
	return in.Groups
}

// kindsOf lists the kinds of a joint's fasteners without those named.
func kindsOf(j geometry.Joint, without []string) []string {
	var kinds []string
	for _, f := range j.Fasteners {
		if !slices.Contains(kinds, f.Kind) && !slices.Contains(without, f.Kind) {
			kinds = append(kinds, f.Kind)
		}
	}
	return kinds
}
