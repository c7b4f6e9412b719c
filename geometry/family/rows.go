package family

import "drawdown/geometry"

// row: all places on one line.
func (s seer) row() (Seen, bool) {
	loose, isLoose := geometry.LooseRows(s.points)
	seen := Seen{Family: Row, OffMm: geometry.OffLine(s.points, geometry.LongAxis(s.points))}
	if isLoose && loose.Rows == 1 {
		seen.Layout = loose
		return seen, true
	}
	return seen, s.named || geometry.OneLine(s.points)
}

// grid: filled rows and columns.
func (s seer) grid() (Seen, bool) {
	layout, ok := geometry.LevelRows(s.points)
	if !ok {
		layout = geometry.NewLayout(s.points)
	}
	if !layout.Filled() {
		layout, _ = geometry.LooseRows(s.points)
	}
	if !layout.Filled() {
		return Seen{}, false
	}
	if len(s.points) == 4 { // four corners are worked crosswise
		return Seen{Family: Circle, Layout: layout, OffMm: off(s.points, layout.Points), Rings: [][]int{all(4)}}, true
	}
	missing := layout.Columns*layout.Rows - len(s.points)
	return Seen{Family: Grid, Layout: layout, OffMm: off(s.points, layout.Points), Missing: missing}, true
}
