package geometry

import "math"

// Layout is a set of places with the regularity that they have.
type Layout struct {
	// Points are the true places: those of the rows and columns of a grid or
	// perimeter, or evenly on a circle; for other layouts the places as given.
	// The order of a regular part must not follow from which hole was measured
	// a tenth too high.
	Points []Point
	// Regular says that the places were brought to true.
	Regular bool
	// Column and Row number the columns from the left and the rows from below,
	// for each point; nil where the layout has none.
	Column, Row []int
	Columns     int
	Rows        int
	// Gaps are the places of a filled grid that have no fastener.
	Gaps []Point
}

// NewLayout looks for the regularity of points that may be measured a little
// off their true places.
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

// rowsAndColumns moves points to the true rows and columns they lie on; not ok
// where they lie on none.
func rowsAndColumns(points []Point) (layout Layout, ok bool) {
	tilt := gridTilt(points)
	if layout, ok = alignedAt(tilt, points); !ok {
		return layout, false
	}
	// A small tilt is an error of measurement, unless it would show: then the
	// part lies crooked in the picture.
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

// levelled moves points, seen along their rows, to these columns and rows.
func levelled(frame []Point, tilt float64, columns, rows *levels) (layout Layout, ok bool) {
	c, r := len(columns.value), len(rows.value)
	scattered := c > 1 && r > 1 && c+r > len(frame) // one of each for every point
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

// gaps returns the places of columns and rows on which no point lies.
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

// shared says that two points would come to lie on one place of the grid.
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

// Filled says that the layout is a grid in which hardly a place is missing. One
// with nothing inside is a perimeter.
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
