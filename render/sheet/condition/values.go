package condition

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/measure"
)

// first returns the first value measured at such a place; nil if there is none.
func first(values []measure.Value, is func(measure.Place) bool) *measure.Value {
	i := slices.IndexFunc(values, func(v measure.Value) bool { return slices.ContainsFunc(v.At, is) })
	if i < 0 {
		return nil
	}
	return &values[i]
}

// values draws a row for each value that has none in the tables above, and the
// tables for choosing shims.
func (f *form) values() {
	w := f.words.Condition
	var rows []sheet.Row
	for _, v := range f.plan.Measures {
		for _, place := range f.placesOf(v) {
			rows = append(rows, sheet.Row{Words: []string{v.What, place, f.words.Figure(v.Limits()), "", ""}})
		}
	}
	if len(rows) > 0 {
		f.title(w.Values)
		sheet.Table{Ruled: true, Rows: rows, Columns: []sheet.Column{
			{Head: w.Value, Share: 5}, {Head: w.Station, Share: 2.2}, {Head: w.Limit, Share: 3}, {Head: w.Measured, Share: 3}, {Head: w.Remark, Share: 4},
		}}.Draw(f.run)
	}
	for _, v := range f.plan.Measures {
		f.shims(v)
	}
}

// placesOf names the places of a value without a column above; a single empty
// name means the whole part.
func (f *form) placesOf(v measure.Value) []string {
	if len(v.At) == 0 {
		return []string{""}
	}
	stations := first(f.plan.Measures, func(at measure.Place) bool { return at.Station != "" })
	var names []string
	for _, at := range v.At {
		switch {
		case at.Fastener != "" && f.inRows.What == v.What && f.inRows.Has(at):
		case at.Station != "" && stations.What == v.What:
		default:
			names = append(names, at.Name())
		}
	}
	return names
}

// title sets a heading and keeps it together with what follows.
func (f *form) title(text string) {
	bold := f.run.Pen.Paper.Bold()
	lines := bold.Lines(text, f.run.Pen.Paper.Content())
	f.run.Y += 3
	f.run.Room(float64(len(lines))*bold.Step + 4*writingLine)
	f.run.Y = bold.Set(f.run.Pen, f.run.Pen.Left(), f.run.Y+bold.Step-1, lines) - bold.Step + 2
}

const (
	thickerBy  = 7   // largest number of steps in the table of shims
	bandsAbove = 4   // pairs of columns side by side
	closeRow   = 1.2 // height of a row of such a table, beyond its type
)

// shims draws the table for choosing a new shim from a measured clearance. The
// instructions are above the first table.
func (f *form) shims(v measure.Value) {
	w, bands := f.words.Condition, v.Bands(thickerBy)
	if len(bands) == 0 {
		return
	}
	aim, _ := v.Aim()
	figures := []any{v.What}
	for _, d := range []string{v.Limits(), v.Read(aim).String(), v.Shims.From.String(), v.Read(v.Shims.Thickest()).String(), v.Read(v.Shims.Step).String()} {
		figures = append(figures, f.words.Figure(d))
	}
	paper := f.run.Pen.Paper
	bold := paper.Bold()
	heading := bold.Lines(words.Row(fmt.Sprintf(w.ShimsFor, figures...), placeNames(v)), paper.Content())
	across := bandsAbove
	if paper.Narrow() {
		across = 3
	}
	rows := (len(bands) + across - 1) / across
	height := float64(len(heading)+rows+1)*paper.Line + float64(rows+1)*closeRow + 2
	if !f.shimsSaid {
		f.shimsSaid = true
		f.run.Room(height + 4*paper.Line)
		f.title(w.Shims)
		f.run.Sentence(w.ShimsSay)
	}
	f.run.Room(height)
	f.run.Y = bold.Set(f.run.Pen, f.run.Pen.Left(), f.run.Y+bold.Step, heading) - bold.Step + 1.5
	f.run.Close = true
	f.bands(bands, rows, across).Draw(f.run)
	f.run.Close = false
}

func placeNames(v measure.Value) string {
	var names []string
	for _, at := range v.At {
		names = append(names, at.Name())
	}
	return strings.Join(names, ", ")
}

// bands sets the bands in pairs of columns, read downwards.
func (f *form) bands(bands []measure.Band, rows, across int) sheet.Table {
	w := f.words.Condition
	t := sheet.Table{Rows: make([]sheet.Row, rows)}
	for range across {
		t.Columns = append(t.Columns, sheet.Column{Head: w.Measured, Share: 3}, sheet.Column{Head: w.ShimChange, Share: 2, Bold: true})
	}
	for i := range rows * across {
		said := []string{"", ""}
		if i < len(bands) {
			said = f.band(bands[i])
		}
		t.Rows[i%rows].Words = append(t.Rows[i%rows].Words, said...)
	}
	return t
}

func (f *form) band(b measure.Band) []string {
	span := b.From.String() + "–" + b.To.String()
	if b.From == b.To {
		span = b.From.String()
	}
	change := f.words.Condition.NoShim
	switch {
	case b.Keep:
		change = f.words.Condition.ShimKeep
	case b.By.Millionths > 0:
		change = "+" + b.By.String()
	case b.By.Millionths < 0:
		change = "−" + b.By.Times(-1).String()
	}
	return []string{f.words.Figure(span), f.words.Figure(change)}
}
