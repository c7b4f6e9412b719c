package report

import (
	"drawdown/geometry/family"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// familyOut says as what a layout was seen and what decided. What a family does
// not have is left out.
type familyOut struct {
	Name      string     `json:"name"`
	Named     bool       `json:"named,omitempty"` // by the file
	SpacingMm float64    `json:"spacing_mm"`
	OffMm     float64    `json:"off_mm"` // how far places lie off the shape at the most
	Columns   int        `json:"columns,omitempty"`
	Rows      int        `json:"rows,omitempty"`
	Missing   int        `json:"missing,omitempty"`
	Circles   [][]string `json:"circles,omitempty"`
	Edge      []string   `json:"edge,omitempty"`
	Corners   []string   `json:"corners,omitempty"`
	Inside    []string   `json:"inside,omitempty"`
	Flanges   [][]string `json:"flanges,omitempty"`
}

func familyJSON(p plan.Plan, s family.Seen) familyOut {
	out := familyOut{
		Name: string(s.Family), Named: s.Named, SpacingMm: s.SpacingMm, OffMm: s.OffMm, Missing: s.Missing,
		Edge: p.IDs(s.Edge), Corners: p.IDs(s.Corners), Inside: p.IDs(s.Inner),
	}
	if s.Family == family.Grid {
		out.Columns, out.Rows = s.Layout.Columns, s.Layout.Rows
	}
	for _, ring := range s.Rings {
		out.Circles = append(out.Circles, p.IDs(ring))
	}
	for _, part := range s.Parts {
		out.Flanges = append(out.Flanges, p.IDs(part))
	}
	return out
}

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
