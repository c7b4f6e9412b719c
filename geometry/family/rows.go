package family

import "drawdown/geometry"

// row: all places on one line.
func (s seer) row() (Seen, bool) {
	loose, isLoose := geometry.LooseRows(s.points)
	seen := Seen{Family: Row, OffMm: geometry.OffLine(s.points, geometry.LongAxis(s.points))}
	if isLoose && loose.Rows == 1 && geometry.NewLayout(s.points).Regular == false {
		seen.Layout = loose
		return seen, true
	}
	return seen, s.named || geometry.OneLine(s.points)
}

// grid: filled rows and columns.
func (s seer) grid() (Seen, bool) {
	layout := geometry.NewLayout(s.points)
	if !layout.Filled() {
		loose, ok := geometry.LooseRows(s.points)
		if !ok || loose.Rows == 1 {
			return Seen{}, false
		}
		layout = loose
	}
	missing := layout.Columns*layout.Rows - len(s.points)
	return Seen{Family: Grid, Layout: layout, OffMm: off(s.points, layout.Points), Missing: missing}, true
}
