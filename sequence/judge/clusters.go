package judge

import (
	"cmp"
	"drawdown/geometry"
	"slices"
)

// clusterFindings reports clusters that are separated, and unloaded clusters
// that do not come before all others (or after them, if the maker says so).
func (w *work) clusterFindings() []Finding {
	var findings []Finding
	position := map[int]int{} // in the group's order
	for k, i := range w.members {
		position[i] = k
	}
	all := slices.Concat(w.free, w.units)
	slices.SortStableFunc(all, func(a, b []int) int { return cmp.Compare(w.step[a[0]], w.step[b[0]]) })
	for _, u := range all {
		if position[u[len(u)-1]]-position[u[0]] >= len(u) {
			findings = append(findings, Finding{
				Rule: Together, Severity: Departure, Steps: w.steps(u), IDs: w.joint.IDs(u), Figure: float64(len(u)),
			})
		}
	}
	against := w.order[0]
	if w.joint.UnloadedFirstOff {
		against = w.order[len(w.order)-1]
	}
	for _, u := range w.free {
		if late := w.step[u[0]] > w.firstStep(against); late != w.joint.UnloadedFirstOff {
			findings = append(findings, Finding{
				Rule: Unloaded, Severity: Departure, Steps: w.steps(u), IDs: w.joint.IDs(u),
				Against: []string{w.name(against)}, AgainstSteps: []int{w.firstStep(against)},
			})
		}
	}
	return findings
}

func (w *work) steps(fasteners []int) []int {
	return geometry.Picked(w.step, fasteners)
}
