// Package drafts makes edits of a pattern for the page, and what the page shows
// of the text after each: the part, the problems, the forms. It knows no request
// and no store; the edits themselves are those of patterns/edit.
package drafts

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawdown/cmd/internal/job"
	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/edit"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/render/page"
	"drawdown/render/page/editpage"
	"drawdown/sequence"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Ask is an edit: operations, a change made before or taken back, or the text as
// typed or as a whole. Without any of them the text is only drawn.
type Ask struct {
	Text       *string          `json:"text"` // before the edit; without one, that of the file
	Operations []edit.Operation `json:"operations"`
	Change     edit.Change      `json:"change"`
	Typed      *string          `json:"typed"` // in a field that knows only line feeds
	Whole      *string          `json:"whole"`
}

// Made returns the change that an edit makes.
func Made(from source.Source, ask Ask) (edit.Change, error) {
	switch {
	case ask.Change != nil:
		return ask.Change, nil
	case ask.Typed != nil:
		return edit.Typed(from.Data, *ask.Typed), nil
	case ask.Whole != nil:
		return edit.Between(from.Data, []byte(*ask.Whole)), nil
	}
	var all edit.Change
	for _, op := range ask.Operations {
		change, err := edit.Apply(from, op)
		if err != nil {
			return nil, err
		}
		if from.Data, err = change.Apply(from.Data); err != nil {
			return nil, err
		}
		all = append(all, change...)
	}
	return all, nil
}

// IsText reports whether a file can be shown in a field and come back as it was.
func IsText(data []byte) bool { return utf8.Valid(data) && !slices.Contains(data, 0) }

// Of returns what the page shows of a text.
func Of(from source.Source, name string, f page.Frame) (editpage.Draft, error) {
	made := job.Draft(from, name)
	input, _ := patterns.Read(from)
	content, _ := edit.Contents(from.Data) // without a content there are no forms
	d := editpage.Draft{Frame: f, Title: input.Title, Turn: "1 1", Unit: unitOf(content), Sections: sections(content)}
	switch input.Mirror {
	case geometry.AxisX:
		d.Turn = "-1 1"
	case geometry.AxisY:
		d.Turn = "1 -1"
	}
	for _, one := range made.Problems {
		d.Problems = append(d.Problems, problemOf(one, from.File, f))
	}
	d.Kinds = kindsOf(input)
	if !made.Sound() {
		return d, nil
	}
	_, open := made.Plan.Covered()
	for _, says := range f.Words.SayAll(open) {
		d.Problems = append(d.Problems, editpage.Problem{Says: says})
	}
	for _, one := range input.Joint.Fasteners {
		d.Fasteners = append(d.Fasteners, fastenerOf(one, d.Unit))
	}
	d.Ways = waysOf(input)
	var err error
	d.Joint, err = page.JointOf(made.Plan, run.Tighten, f.Words)
	return d, err
}

func unitOf(content edit.Value) string {
	if units := content.At(edit.Path{"units"}); units != nil && units.Text == "in" {
		return "in"
	}
	return "mm"
}

// problemOf words a problem. One in another file has no line here.
func problemOf(one problem.Problem, file string, f page.Frame) editpage.Problem {
	worded := one.Worded(f.Words.What, f.Words.Allowed)
	says := worded.What
	if worded.Allowed != "" {
		says += " · " + worded.Allowed
	}
	out := editpage.Problem{Says: says, Error: one.Severity == problem.Error}
	if one.File == file {
		out.Line, out.Column = one.Line, one.Column
	} else {
		out.Says = one.File + ": " + says
	}
	if one.Found != nil {
		out.IDs = append(out.IDs, one.Found.At.IDs...)
		for _, key := range []string{"id", "other"} {
			if id, is := one.Found.Values[key].(string); is && !slices.Contains(out.IDs, id) {
				out.IDs = append(out.IDs, id)
			}
		}
	}
	return out
}

func kindsOf(input plan.Input) (names []string) {
	for _, k := range input.Kinds {
		names = append(names, k.Name)
	}
	return names
}

func fastenerOf(f geometry.Fastener, unit string) editpage.Fastener {
	const mmPerInch = 25.4
	per, digits := 1.0, 3
	if unit == "in" {
		per, digits = mmPerInch, 5
	}
	number := func(mm float64) string {
		s := strconv.FormatFloat(mm/per, 'f', digits, 64)
		if s = strings.TrimRight(strings.TrimRight(s, "0"), "."); s == "-0" {
			return "0"
		}
		return s
	}
	one := editpage.Fastener{ID: f.ID, X: number(f.At.X), Y: number(f.At.Y), Kind: f.Kind}
	if f.Cast > 0 {
		one.Cast = strconv.Itoa(f.Cast)
	}
	return one
}

// waysOf returns the order that each way gives.
func waysOf(input plan.Input) (all []editpage.Way) {
	for _, way := range sequence.Ways {
		input.Way = way
		p, err := plan.Build(input)
		if err == nil {
			all = append(all, editpage.Way{Name: string(way), Order: strings.Join(p.IDs(p.Tighten.Order), " ")})
		}
	}
	return all
}
