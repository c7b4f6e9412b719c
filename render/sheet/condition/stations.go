package condition

import (
	"cmp"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/measure"
)

// stationsHead is the height of the heading above the parts that go back to
// their places.
const stationsHead = 8.0

// stations draws a row for each part that goes back to its place, such as a
// follower with its shim: its measurement, and what is fitted there.
func (f *form) stations(end float64) {
	stations := f.plan.Joint.Stations
	if len(stations) == 0 {
		return
	}
	columns := f.stationColumns()
	head := headHeight(columns, f.run.Pen.Paper.Type)
	together := float64(min(lastRows, len(stations))) * f.row
	if len(stations) <= lastRows {
		together += end
	}
	f.run.Room(stationsHead + head + together)
	lines := f.run.Pen.Paper.Bold().Lines(f.words.Condition.Stations, f.run.Pen.Paper.Content())
	f.run.Pen.Paper.Bold().Set(f.run.Pen, f.run.Pen.Left(), f.run.Y+stationsHead-2, lines)
	f.run.Y += stationsHead
	f.head(columns, head)
	rows := make([]int, len(stations))
	for i := range rows {
		rows[i] = i
	}
	f.rows(columns, head, rows, end)
}

func (f *form) stationsHeight() float64 {
	n := len(f.plan.Joint.Stations)
	if n == 0 {
		return 0
	}
	return stationsHead + headHeight(f.stationColumns(), f.run.Pen.Paper.Type) + float64(n)*rowHeight
}

func (f *form) stationColumns() []column {
	w, p := f.words.Condition, f.run.Pen
	tick, written := 12.0, 24.0
	if p.Paper.Narrow() {
		tick, written = 9.0, 16.0
	}
	stations := f.plan.Joint.Stations
	label := func(i int) string { return cmp.Or(stations[i].Label, stations[i].ID) }
	name, id := font.Width(w.Station, scene.Regular, p.Paper.TextEm), font.Width(w.ID, scene.Regular, p.Paper.TextEm)
	for i, s := range stations {
		name = max(name, font.Width(label(i), scene.Regular, p.Paper.TextEm))
		id = max(id, font.Width(s.ID, scene.Regular, p.Paper.TextEm))
	}
	columns := []column{
		{head: w.Station, w: min(name+4, 40), fill: func(p *sheet.Pen, c column, y float64, i int) { f.text(p, c, y, label(i)) }},
		{head: w.ID, w: min(id+4, 22), fill: func(p *sheet.Pen, c column, y float64, i int) { f.text(p, c, y, stations[i].ID) }},
	}
	for _, head := range w.StationTicks {
		columns = append(columns, f.tick(head, tick))
	}
	columns = append(columns, f.stationValue(written)...)
	if left(p, columns) < leastRemark {
		return sideBySide(p, columns)
	}
	return sideBySide(p, append(columns, column{head: w.Remark}))
}

// stationValue are the columns for a measured value: that of the file, or space
// for any figure.
func (f *form) stationValue(written float64) []column {
	w := f.words.Condition
	v := first(f.plan.Measures, func(at measure.Place) bool { return at.Station != "" })
	if v == nil {
		return []column{{head: w.Measured, w: written}, {head: w.Fitted, w: written}}
	}
	limits, widest := make([]string, len(f.plan.Joint.Stations)), 0.0
	shims := false
	for i, s := range f.plan.Joint.Stations {
		if at, found := measure.Find(f.plan.Measures, v.What, measure.Place{Station: s.ID}); found {
			limits[i] = f.words.Figure(at.Limits())
			shims = shims || at.Shims != nil
		}
		widest = max(widest, font.Width(limits[i], scene.Regular, f.run.Pen.Paper.TextEm))
	}
	columns := []column{
		{head: w.Limit, w: widest + 3.5, fill: func(p *sheet.Pen, c column, y float64, i int) { f.text(p, c, y, limits[i]) }},
		{head: w.Measured, w: written},
	}
	if shims {
		low := f.run.Pen.Paper.Narrow() // not enough space for both headings
		return append(columns, column{head: w.OldShim, w: written, upright: low}, column{head: w.NewShim, w: written, upright: low})
	}
	return append(columns, column{head: w.Fitted, w: written})
}
