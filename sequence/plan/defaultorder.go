package plan

import (
	"cmp"
	"maps"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// defaultGroups stands in where the file gives no order: one group a kind, the
// largest thread first, since the small outer bolts go on last and come off
// first (common practice, no source). Kinds of one size go by their distance
// from the middle of the joint, then by name, so that the listing of the file
// has no say. Where the thread is not stated, the hole stands in for it. The way
// within a group is settled by how its places lie.
func defaultGroups(in Input) []sequence.Group {
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
		return sequence.Group{Kinds: []string{k.Name}, Way: sequence.Auto}
	})
}

// SizeByHole says that the groups follow each other by the sizes of their holes,
// for want of threads. It is of a file without an order.
func (in Input) SizeByHole() (f finding.Finding, found bool) {
	var kinds []Kind
	for _, k := range in.Kinds {
		if in.has(k.Name) && k.SizeMm() > 0 {
			kinds = append(kinds, k)
		}
	}
	slices.SortStableFunc(kinds, func(a, b Kind) int { return cmp.Compare(b.SizeMm(), a.SizeMm()) })
	var names []string
	var holes []unit.Length
	for _, k := range kinds {
		if k.Thread == nil {
			names, holes = append(names, k.Name), append(holes, k.Hole)
		}
	}
	if len(in.Groups) > 0 || len(holes) == 0 || len(kinds) < 2 || kinds[0].SizeMm() == kinds[len(kinds)-1].SizeMm() {
		return f, false
	}
	return finding.Warned(SizeByHole, finding.Values{"kinds": names, "holes": holes}).From(finding.CommonPractice), true
}

// basis settles what the order and the rounds rest on.
func (p *Plan) basis(in Input) {
	if f, found := in.SizeByHole(); found && in.Way == "" {
		p.Tighten.Basis = append(p.Tighten.Basis, f)
		f.Values = maps.Clone(f.Values)
		f.Values["side"] = string(CautionLoosen)
		p.Loosen.Basis = append(p.Loosen.Basis, f)
	}
	p.spring()
}

// meanDistance is rounded to a tenth of a millimetre, so that two kinds in
// mirror image places tie.
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

// UsualWay gives the way that the trade has for the layout of a group, whatever
// the way that the file names.
func (p Plan) UsualWay(g Group) sequence.Way {
	return sequence.SettledGroup(p.Joint, g.Members, sequence.Group{Way: sequence.Auto})
}
