package plan

import (
	"cmp"
	"maps"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// SizeByHole reports that the groups are ordered by the sizes of their holes,
// because threads are not stated. It applies to files without an order.
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
	if len(in.Groups) > 0 || castGroups(in) != nil || len(holes) == 0 || len(kinds) < 2 || kinds[0].SizeMm() == kinds[len(kinds)-1].SizeMm() {
		return f, false
	}
	return finding.Warned(SizeByHole, finding.Values{"kinds": names, "holes": holes}).From(finding.CommonPractice), true
}

// basis adds the grounds of the order and the rounds.
func (p *Plan) basis(in Input) {
	if f, found := in.SizeByHole(); found {
		p.Tighten.Basis = append(p.Tighten.Basis, f)
		f.Values = maps.Clone(f.Values)
		f.Values["side"] = string(CautionLoosen)
		p.Loosen.Basis = append(p.Loosen.Basis, f)
	}
	p.spring()
}
