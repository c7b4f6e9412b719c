package overhaul

import (
	"fmt"
	"slices"
	"strconv"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
)

var cylinder = expression.Lazily(`(?i)^(?:cyl|zyl|cil)\pL*\.?\s*(\d{1,3})$`)

// MeasureDoubts compares the cylinders at which values of the whole machine are taken with
// the bores of its joints; the result has the same order as the values.
func (o Overhaul) MeasureDoubts() []*finding.Finding {
	bores := map[int]bool{}
	most := 0
	for _, j := range o.Joints() {
		for _, b := range j.Joint.Bores {
			if m := cylinder.FindStringSubmatch(b.Label); m != nil {
				n, _ := strconv.Atoi(m[1])
				bores[n], most = true, max(most, n)
			}
		}
	}
	found := make([]*finding.Finding, len(o.Measures))
	if len(bores) < 2 {
		return found
	}
	for i, v := range o.Measures {
		listed := map[int]bool{}
		var unknown []string
		for _, p := range v.At {
			m := cylinder.FindStringSubmatch(p.Label)
			if m == nil {
				continue
			}
			n, _ := strconv.Atoi(m[1])
			if listed[n] = true; !bores[n] {
				unknown = append(unknown, fmt.Sprintf("%q", p.Label))
			}
		}
		var missing []int
		for n := range bores {
			if !listed[n] {
				missing = append(missing, n)
			}
		}
		slices.Sort(missing)
		switch {
		case len(listed) == 0:
		case len(unknown) > 0 && len(missing) == 0:
			found[i] = warned(CylinderNowhere, finding.Values{"what": v.What, "labels": unknown, "most": most})
		case len(unknown) == 0 && len(missing) > 0 && len(missing) < len(bores)/2+len(bores)%2:
			found[i] = warned(CylinderLeftOut, finding.Values{"what": v.What, "missing": missing[0]})
		}
	}
	return found
}
