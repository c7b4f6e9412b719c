package judge

import (
	"slices"

	"drawdown/sequence"
)

// clusterFindings says which clusters are parted, and which go too late though
// nothing presses on them.
func (w *work) clusterFindings(free [][]int) []Finding {
	var findings []Finding
	position := map[int]int{} // in the group's order
	for k, i := range w.members {
		position[i] = k
	}
	all := slices.Concat(free, w.units)
	slices.SortStableFunc(all, func(a, b []int) int { return w.step[w.byStep(a)[0]] - w.step[w.byStep(b)[0]] })
	for _, u := range all {
		u = w.byStep(u)
		if position[u[len(u)-1]]-position[u[0]] >= len(u) {
			findings = append(findings, Finding{
				Rule: Together, Severity: Departure, Steps: w.steps(u), IDs: ids(w.joint, u),
				Figure: float64(len(u)),
			})
		}
	}
	if len(w.units) == 0 {
		return findings
	}
	firstLoaded := w.order[0]
	for _, u := range free {
		u = w.byStep(u)
		if w.step[u[0]] > w.firstStep(firstLoaded) {
			findings = append(findings, Finding{
				Rule: Unloaded, Severity: Departure, Steps: w.steps(u), IDs: ids(w.joint, u),
				Against: ids(w.joint, w.byStep(w.units[firstLoaded])[:1]), AgainstSteps: []int{w.firstStep(firstLoaded)},
			})
		}
	}
	return findings
}

// byStep sorts the fasteners of a unit as they are worked.
func (w *work) byStep(unit []int) []int {
	return slices.SortedFunc(slices.Values(unit), func(a, b int) int { return w.step[a] - w.step[b] })
}

func (w *work) steps(fasteners []int) []int {
	steps := make([]int, len(fasteners))
	for k, i := range fasteners {
		steps[k] = w.step[i]
	}
	return steps
}

// unitsOf parts the members of a group, as drawdown's own orders do. The
// listing of the order must not decide anything, so they are sorted first.
func unitsOf(w *work) (free, loaded [][]int) {
	return sequence.Units(w.joint, slices.Sorted(slices.Values(w.members)))
}
