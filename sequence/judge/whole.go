package judge

import "slices"

// whole reads the ids of the order. It returns their indices if every fastener
// is there once, otherwise the faults.
func (in Input) whole() (order []int, faults []Finding) {
	index, ids := map[string]int{}, make([]string, len(in.Joint.Fasteners))
	for i, f := range in.Joint.Fasteners {
		index[f.ID], ids[i] = i, f.ID
	}
	firstStep := map[string]int{}
	var unknown []Finding
	for k, id := range in.Order {
		i, known := index[id]
		switch first := firstStep[id]; {
		case !known:
			unknown = append(unknown, Finding{Rule: Unknown, Steps: []int{k + 1}, IDs: []string{id}})
		case first > 0:
			faults = append(faults, Finding{Rule: Twice, Steps: []int{first, k + 1}, IDs: []string{id, id}})
		default:
			firstStep[id] = k + 1
			order = append(order, i)
		}
	}
	missing := slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return firstStep[id] > 0 })
	for k := range unknown {
		unknown[k].Against = in.guess(unknown[k].IDs[0], missing, ids)
	}
	faults = append(folded(unknown), faults...)
	if len(missing) > 0 {
		faults = append(faults, Finding{Rule: Missing, IDs: missing, Figure: float64(len(missing))})
	}
	for k := range faults {
		faults[k].Severity = Fault
	}
	return order, faults
}

// folded merges the unknown names that resemble no id into one finding.
func folded(unknown []Finding) []Finding {
	var all []Finding
	first := -1
	for _, f := range unknown {
		switch {
		case len(f.Against) > 0:
			all = append(all, f)
		case first < 0:
			first = len(all)
			all = append(all, f)
		default:
			all[first].Steps, all[first].IDs = append(all[first].Steps, f.Steps...), append(all[first].IDs, f.IDs...)
		}
	}
	return all
}

// guess returns the id that an unknown name may mean, preferably one that is
// left out.
func (in Input) guess(name string, missing, ids []string) []string {
	if in.Nearest == nil {
		return nil
	}
	for _, among := range [][]string{missing, ids} {
		if near := in.Nearest(name, among); near != "" {
			return []string{near}
		}
	}
	return nil
}
