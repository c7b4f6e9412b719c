package plan

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/sequence"
)

// castGroups returns the groups of a part on which all fasteners have unique
// cast numbers: the kinds in the order of their numbers, or a single group if
// the numbers of two kinds mix. It returns nil for other parts, and if the user
// asks for a way.
func castGroups(in Input) []sequence.Group {
	byNumber := slices.Clone(in.Joint.Fasteners)
	slices.SortFunc(byNumber, func(a, b geometry.Fastener) int { return cmp.Compare(a.Cast, b.Cast) })
	var kinds []string
	mixed := false
	for i, f := range byNumber {
		if in.Way != "" || f.Cast == 0 || i > 0 && f.Cast == byNumber[i-1].Cast {
			return nil
		}
		if i > 0 && f.Kind == byNumber[i-1].Kind {
			continue
		}
		if slices.Contains(kinds, f.Kind) {
			mixed = true
			continue
		}
		kinds = append(kinds, f.Kind)
	}
	if mixed {
		return []sequence.Group{{Kinds: kinds, Way: sequence.Cast}}
	}
	return geometry.Mapped(kinds, func(kind string) sequence.Group {
		return sequence.Group{Kinds: []string{kind}, Way: sequence.Cast}
	})
}
