package judge

import (
	"slices"

	"drawdown/geometry"
)

// Side is the kind of work that an order is for.
type Side string

const (
	Tighten Side = "tighten"
	Loosen  Side = "loosen"
)

// Sides lists both sides, tightening first.
var Sides = []Side{Tighten, Loosen}

// Group is a set of fastener kinds that are tightened together.
type Group struct {
	Kinds []string
	// MajorMm is the thread's major diameter; 0 if unknown. Small ones go last;
	// groups of one size may be mixed.
	MajorMm float64
}

// Input is an order with what is needed to judge it.
type Input struct {
	Joint  geometry.Joint
	Groups []Group  // in tightening order; nil means all in one
	Order  []string // ids as given: some may be unknown, missing or repeated
	Side   Side     // "" means Tighten
	Makers bool     // the maker's own order: described, not judged
	// Nearest guesses which id an unknown name means, or returns "". If nil,
	// nothing is guessed.
	Nearest func(name string, ids []string) string
}

// groups returns the groups, with a last one for kinds that none names.
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

// kindsOf lists the kinds of a joint's fasteners except those given.
func kindsOf(j geometry.Joint, without []string) []string {
	var kinds []string
	for _, f := range j.Fasteners {
		if !slices.Contains(kinds, f.Kind) && !slices.Contains(without, f.Kind) {
			kinds = append(kinds, f.Kind)
		}
	}
	return kinds
}
