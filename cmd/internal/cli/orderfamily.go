package cli

import (
	"fmt"
	"strings"

	"drawdown/geometry/family"
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

// familyWords says the same in a line.
func familyWords(s family.Seen) string {
	words := []string{map[family.Family]string{
		family.Row: "a row", family.Grid: "filled rows", family.Perimeter: "a perimeter", family.Curve: "a closed curve",
		family.Circle: "one circle", family.Circles: "circles inside each other", family.Flanges: "separate flanges",
		family.Free: "places of no known layout",
	}[s.Family]}
	say := func(is bool, format string, args ...any) {
		if is {
			words = append(words, fmt.Sprintf(format, args...))
		}
	}
	say(s.Named, "named by the file")
	say(s.Family == family.Grid, "%d columns and %d rows", s.Layout.Columns, s.Layout.Rows)
	say(len(s.Rings) > 1, "of %s", strings.Join(counts(s.Rings), ", "))
	say(len(s.Edge) > 0, "%d along the edge", len(s.Edge))
	say(len(s.Corners) > 0, "%d of them in corners", len(s.Corners))
	say(len(s.Inner) > 0, "%d inside", len(s.Inner))
	say(len(s.Parts) > 0, "of %s", strings.Join(counts(s.Parts), ", "))
	say(s.Missing > 0, "%d missing", s.Missing)
	say(s.OffMm >= 0.05, "at most %.1f mm off", s.OffMm)
	return strings.Join(words, ", ")
}

func counts(lists [][]int) []string {
	words := make([]string, len(lists))
	for k, list := range lists {
		words[k] = fmt.Sprint(len(list))
	}
	return words
}
