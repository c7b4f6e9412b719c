package report

import (
	"drawdown/geometry/family"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// seenAs gives the values of the line that says the same.
func seenAs(s family.Seen) finding.Values {
	v := finding.Values{
		"family": string(s.Family), "named": s.Named, "edge": len(s.Edge), "corners": len(s.Corners), "inner": len(s.Inner),
		"parts": counts(s.Parts), "missing": s.Missing,
	}
	if s.Family == family.Grid {
		v["columns"], v["rows"] = s.Layout.Columns, s.Layout.Rows
	}
	if len(s.Rings) > 1 {
		v["rings"] = counts(s.Rings)
	}
	if s.OffMm >= 0.05 { // else it is on the shape
		v["off"] = unit.Length(s.OffMm)
	}
	return v
}

func counts(lists [][]int) []int {
	var n []int
	for _, list := range lists {
		n = append(n, len(list))
	}
	return n
}
