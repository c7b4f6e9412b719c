package way

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// row goes from the middle outwards along the longest extent, on alternate
// sides. Places across the row form a column and are tightened together,
// nearest the centre first.
func (l *layout) row(turn Turn) []int {
	columns := l.columns()
	n := len(columns)
	left, right := n/2-1, n/2
	var order []int
	toLeft := false
	if n%2 == 1 {
		order = l.column(columns[n/2], turn)
		right = n/2 + 1
		// From the middle the path starts against the tie rule, like a spiral
		// that came in from the top.
		toLeft = n > 1 && l.starts(columns[left], columns[right], turn.Opposite())
	} else {
		toLeft = l.starts(columns[left], columns[right], turn)
	}
	for left >= 0 || right < n {
		if toLeft {
			order = append(order, l.column(columns[left], turn)...)
			left--
		} else {
			order = append(order, l.column(columns[right], turn)...)
			right++
		}
		toLeft = !toLeft
	}
	return order
}

// starts reports whether the first of two columns comes before the second.
func (l *layout) starts(a, b []int, turn Turn) bool {
	return slices.Contains(a, l.first(slices.Concat(a, b), turn))
}

// column orders the places of one column.
func (l *layout) column(places []int, turn Turn) []int {
	var order []int
	for rest := slices.Clone(places); len(rest) > 0; {
		next := l.first(rest, turn)
		order = append(order, next)
		rest = slices.DeleteFunc(rest, func(i int) bool { return i == next })
	}
	return order
}

// columns divides the places by their position along the longest extent.
func (l *layout) columns() [][]int {
	if l.Column != nil {
		return l.gridColumns()
	}
	axis := geometry.LongAxis(l.at)
	along := func(i int) float64 { return l.at[i].Dot(axis) }
	order := geometry.Sorted(len(l.at), along)
	var columns [][]int
	for k, i := range order {
		if k == 0 || along(i)-along(order[k-1]) > 0.25*l.spacing {
			columns = append(columns, nil)
		}
		columns[len(columns)-1] = append(columns[len(columns)-1], i)
	}
	return columns
}

// alikeShare is the largest difference between two extents that count as equal, as
// a share of the spacing. The extents of 2 by 3 or 3 by 4 places differ by 1/3 if the
// pitches are 5 to 3 or 4 to 3, and by 2/5 if they are 8 to 5. The limit is between
// the two, so that a measuring error does not decide.
const alikeShare = 0.365

// gridColumns returns the columns of a grid, or its rows if these are along the
// shorter extent. If the two are equal the picture decides.
func (l *layout) gridColumns() [][]int {
	columns, rows := l.numbered(l.Column, l.Columns), l.numbered(l.Row, l.Rows)
	across, up := l.extent(columns), l.extent(rows)
	apart := math.Sqrt(up.Dot(up)) - math.Sqrt(across.Dot(across))
	if alike := alikeShare * l.spacing; apart > alike || apart >= -alike && math.Abs(across.Y) > math.Abs(up.Y) {
		return rows
	}
	return columns
}

// numbered groups the places by the number of their column or row.
func (l *layout) numbered(of []int, count int) [][]int {
	columns := make([][]int, count)
	for i, k := range of {
		columns[k] = append(columns[k], i)
	}
	return slices.DeleteFunc(columns, func(column []int) bool { return len(column) == 0 })
}

// extent is the vector from the middle of the first column to that of the last.
func (l *layout) extent(columns [][]int) geometry.Point {
	middle := func(column []int) geometry.Point { return geometry.Centroid(geometry.Picked(l.at, column)) }
	return middle(columns[len(columns)-1]).Sub(middle(columns[0]))
}
