package geometry

import "math"

// Layout is a set of places with the regularity found in them.
type Layout struct {
	// Points are the exact places: on the rows and columns of a grid or
	// perimeter, or evenly spaced on a circle. For other layouts they are the
	// places as given. The order of a regular part must not depend on which
	// hole was measured a tenth too high.
	Points []Point
	// Regular reports that the places were moved to exact ones.
	Regular bool
	// Column and Row number the columns from the left and the rows from below,
	// for each point; nil if the layout has none.
	Column, Row []int
	Columns     int
	Rows        int
	// Gaps are the places of a filled grid without a fastener.
	Gaps []Point
}

// NewLayout looks for the regularity of points that may be measured slightly
// off their exact places.
func NewLayout(points []Point) Layout {
	as := Layout{Points: points}
	if len(points) < 3 {
		return as
	}
	if even, _ := EvenCircle(points, LevelShare); even != nil {
		return Layout{Points: even, Regular: true}
	}
	if grid, ok := rowsAndColumns(points); ok {
		return grid
	}
	return as
}

// rowsAndColumns moves points to exact rows and columns. ok is false if there
// are none.
func rowsAndColumns(points []Point) (layout Layout, ok bool) {
	tilt := gridTilt(points)
	if layout, ok = alignedAt(tilt, points); !ok {
		return layout, false
	}
	// A small tilt is a measuring error, unless it moves points too far: then
	// the part is at an angle in the picture.
	if math.Abs(tilt) < 1 && shift(points, tilt) <= LevelShare*Spacing(points) {
		if level, ok := alignedAt(0, points); ok && sameShape(level, layout) {
			return level, true
		}
	}
	return layout, true
}

// alignedAt moves points to rows in the direction tilt and columns across it.
func alignedAt(tilt float64, points []Point) (layout Layout, ok bool) {
	slack, frame := LevelShare*Spacing(points), rotated(points, -tilt)
	return levelled(frame, tilt, newLevels(frame, alongX, slack), newLevels(frame, alongY, slack))
}

// levelled moves points to columns and rows. frame holds the points rotated so
// that their rows are level.
func levelled(frame []Point, tilt float64, columns, rows *levels) (layout Layout, ok bool) {
	c, r := len(columns.value), len(rows.value)
	scattered := c > 1 && r > 1 && c+r > len(frame) // a column and a row of its own for each point
	if scattered || !columns.tight() || !rows.tight() || shared(columns.of, rows.of) {
		return Layout{}, false
	}
	even, level := columns.straighten(), rows.straighten()
	if even && level {
		layout.Column, layout.Row = columns.of, rows.of
		layout.Columns, layout.Rows = len(columns.value), len(rows.value)
	}
	for i := range frame {
		frame[i] = Point{columns.at(i), rows.at(i)}
	}
	layout.Points, layout.Regular = rotated(frame, tilt), true
	if layout.Filled() {
		layout.Gaps = rotated(layout.gaps(columns.value, rows.value), tilt)
	}
	return layout, true
}

// gaps returns the grid places without a point.
func (l Layout) gaps(columns, rows []float64) (gaps []Point) {
	taken := make(map[[2]int]bool, len(l.Column))
	for i := range l.Column {
		taken[[2]int{l.Column[i], l.Row[i]}] = true
	}
	for c, x := range columns {
		for r, y := range rows {
			if !taken[[2]int{c, r}] {
				gaps = append(gaps, Point{x, y})
			}
		}
	}
	return gaps
}

// shared reports whether two points would end up on one place of the grid.
func shared(columns, rows []int) bool {
	taken := make(map[[2]int]bool, len(columns))
	for i := range columns {
		place := [2]int{columns[i], rows[i]}
		if taken[place] {
			return true
		}
		taken[place] = true
	}
	return false
}

// Filled reports whether the layout is a grid with at most a few places
// missing. A grid that is empty inside is a perimeter.
func (l Layout) Filled() bool {
	places := l.Columns * l.Rows
	if l.Columns < 2 || l.Rows < 2 || len(l.Points) < places-max(1, places/10) {
		return false
	}
	if l.Columns == 2 || l.Rows == 2 || l.Column == nil {
		return true
	}
	for i, column := range l.Column {
		if row := l.Row[i]; column > 0 && column < l.Columns-1 && row > 0 && row < l.Rows-1 {
			return true
		}
	}
	return false
}
