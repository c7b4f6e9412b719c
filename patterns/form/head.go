package form

import (
	"cmp"
	"slices"
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
)

// Date reads a calendar date of ISO 8601.
func (f Fields) Date() string {
	return Opt(f, "date", func(n *nodes.Node) string {
		if _, err := time.Parse(time.DateOnly, n.Text); err != nil || n.Shape != nodes.Scalar {
			f.Fail(n, NoDate, finding.Values{"found": n.Called()})
			return ""
		}
		return n.Text
	})
}

// Caution reads a text for both sides of the work, or {tighten: text} or
// {loosen: text} for one of them.
func (r *Reader) Caution(item *nodes.Node) (plan.Caution, bool) {
	if item.Shape != nodes.Map {
		text, ok := r.Text(item, finding.Term("a caution"))
		return plan.Caution{Text: text}, ok
	}
	sides := []string{string(plan.CautionTighten), string(plan.CautionLoosen)}
	if len(item.Entries) != 1 || !slices.Contains(sides, item.Entries[0].Key.Text) {
		r.Fail(item, CautionForm, finding.Values{"tighten": "{tighten: text}", "loosen": "{loosen: text}", "braces": "{ }"})
		return plan.Caution{}, false
	}
	side := item.Entries[0].Key.Text
	text, ok := r.Text(item.Entries[0].Value, finding.Term("a caution"))
	return plan.Caution{Text: text, Side: plan.CautionSide(side)}, ok
}

// Cautions reads the list of cautions.
func (f Fields) Cautions() (list []plan.Caution) {
	if n := f.Get("cautions"); n != nil {
		for _, item := range f.TrueList(n, "cautions", "[Fit a new gasket]") {
			if c, ok := f.Caution(item); ok {
				list = append(list, c)
			}
		}
	}
	return list
}

// Units reads the unit of bare lengths: mm where the file says nothing.
func (f Fields) Units() {
	f.BareUnit = cmp.Or(Word(f, "units", "mm", "in"), "mm")
}

// Versioned makes sure that a file says in which version of the format it is.
func (f Fields) Versioned() {
	if !f.Has("drawdown") && !f.Mistyped("drawdown") {
		f.Fail(f.Node, NoVersion, nil)
	}
}

// Version checks every file of a chain; the joined file only shows the top one.
func (r *Reader) Version(layer *nodes.Node) {
	n := layer.Get("drawdown")
	if n == nil || n.Shape == nodes.Scalar && n.Text == "1" {
		return
	}
	r.Fail(n, OtherVersion, finding.Values{"found": n.Called()})
}
