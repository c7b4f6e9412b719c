package plan

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/sequence"
)

// defaultGroups is used if the file gives no order: one group per kind, the
// largest thread first, since small outer bolts go on last and come off first
// (common practice, no source). Kinds of one size are sorted by their distance
// from the middle of the joint, then by name, so that the listing order of the
// file does not matter. If the thread is not stated, the hole is used. The way
// within a group depends on its layout, or on the numbers on the part if all of
// the group have one.
func defaultGroups(in Input) []sequence.Group {
	if groups := castGroups(in); groups != nil {
		return groups
	}
	centre := geometry.Enclose(in.Joint.Points()).Centre
	kinds := slices.Clone(in.Kinds)
	slices.SortFunc(kinds, func(a, b Kind) int {
		return cmp.Or(
			cmp.Compare(b.SizeMm(), a.SizeMm()),
			cmp.Compare(meanDistance(in.Joint, a.Name, centre), meanDistance(in.Joint, b.Name, centre)),
			cmp.Compare(a.Name, b.Name),
		)
	})
	return geometry.Mapped(kinds, func(k Kind) sequence.Group {
		return sequence.Group{Kinds: []string{k.Name}, Way: in.usualWay(k.Name)}
	})
}

// usualWay is Cast if all fasteners of a kind have cast numbers.
func (in Input) usualWay(kind string) sequence.Way {
	if sequence.Numbered(in.Joint, sequence.Group{Kinds: []string{kind}}.Members(in.Joint)) {
		return sequence.Cast
	}
	return sequence.Auto
}

// meanDistance is rounded to a tenth of a millimetre, so that two kinds in
// mirrored places tie.
func meanDistance(j geometry.Joint, kind string, centre geometry.Point) int {
	sum, n := 0.0, 0
	for _, f := range j.Fasteners {
		if f.Kind == kind {
			sum, n = sum+f.At.Distance(centre), n+1
		}
	}
	if n == 0 {
		return 0
	}
	return int(sum/float64(n)*10 + 0.5)
}

// UsualWay returns the usual way of the trade for the layout of a group,
// whatever the file names.
func (p Plan) UsualWay(g Group) sequence.Way {
	return sequence.SettledGroup(p.Joint, g.Members, sequence.Group{Way: sequence.Auto})
}
