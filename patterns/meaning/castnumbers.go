package meaning

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/sequence"
)

// checkCasts checks the numbers on the part where a group goes by them.
func (r *reader) checkCasts() {
	for i, g := range r.input.Groups {
		if g.Way == sequence.Cast {
			r.checkCast(r.groups[i], g.Kinds)
		}
	}
}

// checkCast checks that every fastener of the group has its own number.
func (r *reader) checkCast(at *nodes.Node, kinds []string) bool {
	if r.fasteners.broken {
		return true
	}
	var without []string
	var twice []finding.Finding
	first := map[int]string{}
	for _, f := range r.of(kinds) {
		switch earlier, taken := first[f.Cast]; {
		case f.Cast == 0:
			without = append(without, f.ID)
		case taken:
			twice = append(twice, finding.Failed(CastShared, finding.Values{"first": earlier, "second": f.ID, "cast": f.Cast}))
		default:
			first[f.Cast] = f.ID
		}
	}
	if len(without) > 0 {
		r.Fail(at, NoCast, finding.Values{"ids": without})
	}
	if len(twice) > 0 {
		r.Fail(at, CastTwice, finding.Values{"twice": twice})
	}
	return len(without)+len(twice) == 0
}

// of gives the fasteners of the kinds; all of them where there are no kinds.
func (r *reader) of(kinds []string) []geometry.Fastener {
	return slices.DeleteFunc(slices.Clone(r.input.Joint.Fasteners), func(f geometry.Fastener) bool {
		return len(kinds) > 0 && !slices.Contains(kinds, f.Kind)
	})
}
