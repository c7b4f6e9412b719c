package judge

import (
	"slices"

	"drawdown/geometry"
)

// groupOrder finds fasteners that come before an earlier group is finished.
// Groups of one thread size may be mixed; that is a remark.
func groupOrder(j geometry.Joint, groups []Group, order []int) []Finding {
	groupOf := func(i int) int {
		return slices.IndexFunc(groups, func(g Group) bool { return slices.Contains(g.Kinds, j.Fasteners[i].Kind) })
	}
	var findings []Finding
	for g := 1; g < len(groups); g++ {
		f := Finding{Rule: GroupOrder, Severity: Remark, Kinds: groups[g].Kinds}
		last := 0 // step at which the earlier groups are finished
		for k, i := range order {
			if groupOf(i) < g {
				last = k + 1
			}
		}
		for k, i := range order[:last] {
			if groupOf(i) == g {
				f.Steps, f.IDs = append(f.Steps, k+1), append(f.IDs, j.Fasteners[i].ID)
			}
		}
		if len(f.Steps) == 0 {
			continue
		}
		for k, i := range order[f.Steps[0]:] {
			earlier := groupOf(i)
			if earlier >= g {
				continue
			}
			f.Against = append(f.Against, j.Fasteners[i].ID)
			f.AgainstSteps = append(f.AgainstSteps, f.Steps[0]+k+1)
			if groups[earlier].MajorMm != groups[g].MajorMm || groups[g].MajorMm == 0 {
				f.Severity = Departure
			}
		}
		f.Figure = float64(len(f.Steps))
		findings = append(findings, f)
	}
	return findings
}
