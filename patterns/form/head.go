package form

import (
	"cmp"
	"slices"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// Date reads the date of a file.
func (f Fields) Date() string { return f.Day("date") }

// Day reads a calendar date of ISO 8601.
func (f Fields) Day(key string) string {
	return Opt(f, key, func(n *nodes.Node) string {
		if _, err := time.Parse(time.DateOnly, n.Text); err != nil || n.Shape != nodes.Scalar {
			f.Fail(n, NoDate, finding.Values{"key": key, "found": n.Called()})
			return ""
		}
		if n.Text < unit.EarliestDate || n.Text > unit.LatestDate {
			f.Fail(n, FarDate, finding.Values{"key": key, "found": n.Called(), "earliest": unit.EarliestDate, "latest": unit.LatestDate})
			return ""
		}
		return n.Text
	})
}

// Caution reads a text for both sides of the work, or {tighten: text} or
// {loosen: text} for one of them.
func (r *Reader) Caution(n *nodes.Node) (plan.Caution, bool) {
	return r.sided(n, finding.Term("a caution"), CautionForm)
}

// NoteText reads a note of a machine file in the same way.
func (r *Reader) NoteText(n *nodes.Node) (plan.Caution, bool) {
	return r.sided(n, finding.Term("a note"), NoteForm)
}

func (r *Reader) sided(n *nodes.Node, called finding.Term, form finding.Code) (c plan.Caution, ok bool) {
	sides := []string{string(plan.CautionTighten), string(plan.CautionLoosen)}
	if n.Shape == nodes.Map && len(n.Entries) == 1 && !slices.Contains(sides, n.Entries[0].Key.Text) {
		key := n.Entries[0].Key
		if meant := r.Meant(key.Text, sides); key.Text == "both" || meant != "" {
			r.Fail(key, CautionSide, finding.Values{"key": problem.Quoted(key.Text), "meant": meant, "allowed": []string{"tighten: …", "loosen: …"}})
			return c, false
		}
	}
	if n.Shape == nodes.Map && n.WithColon() == "" {
		if len(n.Entries) == 2 && n.Get(sides[0]) != nil && n.Get(sides[1]) != nil {
			r.Fail(n, CautionOfBoth, finding.Values{"loosen": "{loosen: text}", "tighten": "{tighten: text}"})
			return c, false
		}
		if len(n.Entries) != 1 || !slices.Contains(sides, n.Entries[0].Key.Text) {
			r.Fail(n, form, finding.Values{"tighten": "{tighten: text}", "loosen": "{loosen: text}", "braces": "{ }"})
			return c, false
		}
		c.Side, n = plan.CautionSide(n.Entries[0].Key.Text), n.Entries[0].Value
	}
	c.Text, ok = r.Text(n, called)
	if last := c.CutOff(); ok && last != "" {
		r.Warn(n, CautionCut, finding.Values{"last": problem.Quoted(last)})
	}
	return c, ok
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

// Units reads the unit of bare lengths; the default is mm.
func (f Fields) Units() {
	f.BareUnit = cmp.Or(Word(f, "units", "mm", "in"), "mm")
}

// Versioned checks that a file states the version of the format.
func (f Fields) Versioned() {
	if !f.Has("drawdown") && !f.Mistyped("drawdown") {
		f.Fail(f.Node, NoVersion, nil)
	}
}

// Version checks every file in a chain; the merged file shows only the top one.
func (r *Reader) Version(layer *nodes.Node) {
	n := layer.Get("drawdown")
	if n == nil || n.Shape == nodes.Scalar && n.Text == "1" {
		return
	}
	r.Fail(n, OtherVersion, finding.Values{"found": n.Called()})
}
