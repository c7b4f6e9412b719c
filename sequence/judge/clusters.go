package judge

import (
	"cmp"
	"drawdown/geometry"
	"slices"
)

// clusterFindings says which clusters are parted, and which go too late though
// nothing presses on them.
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
	if len(w.units) == 0 {
		return findings
	}
	firstLoaded := w.order[0]
	for _, u := range w.free {
		if w.step[u[0]] > w.firstStep(firstLoaded) {
			findings = append(findings, Finding{
				Rule: Unloaded, Severity: Departure, Steps: w.steps(u), IDs: w.joint.IDs(u),
				Against: []string{w.name(firstLoaded)}, AgainstSteps: []int{w.firstStep(firstLoaded)},
			})
		}
	}
	return findings
}

func (w *work) steps(fasteners []int) []int {
	return geometry.Picked(w.step, fasteners)
}
