package family

import "drawdown/geometry"

// row recognizes places on one line.
func (s *seer) row() (Seen, bool) {
	seen := Seen{Family: Row, OffMm: geometry.OffLine(s.points, geometry.LongAxis(s.points))}
	if s.rows.Rows == 1 || s.rows.Columns == 1 {
		seen.Layout = s.rows
		return seen, true
	}
	return seen, s.named || geometry.OneLine(s.points)
}

// grid recognizes filled rows and columns.
func (s *seer) grid() (Seen, bool) {
	layout := s.layout
	if !layout.Filled() {
		layout = s.rows
	}
	if !layout.Filled() {
		return Seen{}, false
	}
	if len(s.points) == 4 { // four corners are tightened crosswise, so they count as a circle
		return Seen{Family: Circle, Layout: layout, OffMm: off(s.points, layout.Points), Rings: [][]int{geometry.Count(4)}}, true
	}
	missing := layout.Columns*layout.Rows - len(s.points)
	return Seen{Family: Grid, Layout: layout, OffMm: off(s.points, layout.Points), Missing: missing}, true
}
