package meaning

import (
	"reflect"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// checkKindsBeside compares kinds with each other, to find lines that were
// copied and not changed everywhere.
func (r *reader) checkKindsBeside() {
	if r.fasteners.broken || r.kinds.broken || r.kinds.unsure {
		return
	}
	var kinds []plan.Kind
	for _, k := range r.input.Kinds {
		if r.kinds.used[k.Name] && !r.kinds.faulty[k.Name] && k.Thread != nil {
			kinds = append(kinds, k)
		}
	}
	r.checkIntoDiffers(kinds)
	r.checkKindsAlike(kinds)
}

// fewestAlike is the number of kinds of one thread and class that shows what is
// usual in a part.
const fewestAlike = 3

// checkIntoDiffers warns of the only one of several kinds of one thread and
// class that screws into another material.
func (r *reader) checkIntoDiffers(kinds []plan.Kind) {
	for i, k := range kinds {
		var others []string
		alike := 0
		for n, other := range kinds {
			if n == i || other.ThreadName() != k.ThreadName() || other.Class != k.Class || other.NutAcross != k.NutAcross {
				continue
			}
			alike++
			if other.Into != "" && !slices.Contains(others, other.Into) {
				others = append(others, other.Into)
			}
		}
		if alike+1 >= fewestAlike && len(others) == 1 && k.Into != "" && k.Into != others[0] {
			r.Warn(r.kinds.at[k.Name], IntoDiffers, finding.Values{"kind": k.Name, "into": finding.Term(k.Into), "others": finding.Term(others[0])})
		}
	}
}

// checkKindsAlike warns of two kinds that agree in all that the file states and
// in their treatment: one was probably copied and not changed.
func (r *reader) checkKindsAlike(kinds []plan.Kind) {
	for i, k := range kinds {
		for _, other := range kinds[:i] {
			named := other
			named.Name = k.Name
			if k.Length > 0 && reflect.DeepEqual(named, k) && r.treatedAlike(k.Name, other.Name) {
				r.Warn(r.kinds.at[k.Name], KindsAlike, finding.Values{"kind": k.Name, "other": other.Name})
				break
			}
		}
	}
}

// treatedAlike reports whether every stage and every group of the order names
// both kinds or neither.
func (r *reader) treatedAlike(a, b string) bool {
	apart := func(s plan.StageInput) bool { return s.Covers(a) != s.Covers(b) }
	return !slices.ContainsFunc(r.input.Tighten, apart) && !slices.ContainsFunc(r.input.Loosen, apart) &&
		!slices.ContainsFunc(r.input.Groups, func(g sequence.Group) bool {
			return len(g.Kinds) > 0 && slices.Contains(g.Kinds, a) != slices.Contains(g.Kinds, b)
		})
}
