package survey

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// Shape is the name of a regular layout in the pattern file.
type Shape string

const (
	Grid      Shape = "grid"
	Row       Shape = "row"
	Circle    Shape = "circle"
	Rectangle Shape = "rectangle"
)

// Regular is a regular layout close to the given places.
type Regular struct {
	Shape Shape
	// Columns and Rows are counted as in the pattern file: for a rectangle,
	// Rows are the holes of one end without the corners.
	Columns, Rows int
	Count         int // of a row and of a circle
	// X and Y are the pitches of a grid or the size of a rectangle; X alone is
	// the pitch of a row or the diameter of a circle; all in mm.
	X, Y float64
	// Centre is the middle; for a row, the first place.
	Centre geometry.Point
	// AngleDeg is the direction of the first place of a circle seen from its
	// centre, or the direction of a row. Grids and rectangles are level.
	AngleDeg  float64
	Clockwise bool // direction in which the places of a circle run
	// OffMm is how far the worst place is off the layout.
	OffMm float64
}

// MillimetreSteps and InchSteps are the steps for rounding a pitch, coarsest
// first.
var (
	MillimetreSteps = []float64{10, 5, 1, 0.5, 0.25, 0.1, 0.05}
	InchSteps       = []float64{25.4, 25.4 / 2, 25.4 / 4, 25.4 / 8, 25.4 / 16, 25.4 / 32, 25.4 / 64, 25.4 / 1000}
)

// Recognise returns the regular layout within the tolerance of all places. Its
// sizes are rounded as coarsely as possible without moving a place further off
// than the accuracy.
func Recognise(points []geometry.Point, toleranceMm, accuracyMm float64, steps []float64) (Regular, bool) {
	if len(points) < 3 {
		return Regular{}, false
	}
	layout := geometry.NewLayout(points)
	if len(points) == 4 {
		layout = quadrilateral(points)
	}
	try := []func([]geometry.Point, geometry.Layout) (fit, bool){rowFit, gridFit, rectangleFit, circleFit}
	for _, find := range try {
		f, ok := find(points, layout)
		if !ok || f.off(f.exact) > toleranceMm {
			continue
		}
		r := f.rounded(accuracyMm, steps)
		if r.OffMm = f.off(r); r.OffMm <= toleranceMm {
			return r, true
		}
	}
	return Regular{}, false
}

// quadrilateral numbers four places by columns and rows. Four places on a
// square are both a grid and a bolt circle; with level sides they count as a
// grid.
func quadrilateral(points []geometry.Point) geometry.Layout {
	level := geometry.Layout{Points: points, Regular: true, Columns: 2, Rows: 2}
	middle, count := geometry.Centroid(points), [4]int{}
	for _, p := range points {
		column, row := 0, 0
		if p.X > middle.X {
			column = 1
		}
		if p.Y > middle.Y {
			row = 1
		}
		count[2*row+column]++
		level.Column, level.Row = append(level.Column, column), append(level.Row, row)
	}
	// A circle with its first place at the top has two on each axis, or nearly
	// so.
	turn := math.Abs(math.Mod(points[0].AngleFrom(middle), 90) - 45)
	if count != [4]int{1, 1, 1, 1} || turn > 40 {
		return geometry.NewLayout(points)
	}
	return level
}

// fit is a least-squares fit of a layout to places.
type fit struct {
	points []geometry.Point
	exact  Regular
	place  []int // index in exact.Points() of each point
}

// Points returns the places of the layout, in the order of the pattern file.
func (r Regular) Points() []geometry.Point {
	switch r.Shape {
	case Grid:
		return geometry.Grid(r.Columns, r.Rows, r.X, r.Y, r.Centre)
	case Rectangle:
		return geometry.Rectangle(r.Columns, r.Rows, r.X, r.Y, r.Centre)
	case Circle:
		return geometry.Circle(r.Count, r.X, r.Centre, r.AngleDeg, r.Clockwise)
	}
	return geometry.Row(r.Count, r.X, r.Centre, r.AngleDeg)
}

// Named describes the layout.
func (r Regular) Named() finding.Finding {
	code := map[Shape]finding.Code{Grid: GridLayout, Rectangle: RectangleLayout, Circle: CircleLayout, Row: RowLayout}[r.Shape]
	thousandth := func(mm float64) float64 { return math.Round(mm*1000) / 1000 }
	return finding.Noted(code, finding.Values{
		"columns": r.Columns, "rows": r.Rows, "count": r.Count, "x": thousandth(r.X), "y": thousandth(r.Y),
	})
}

func (f fit) off(r Regular) float64 {
	ideal, worst := r.Points(), 0.0
	for i, p := range f.points {
		worst = math.Max(worst, p.Distance(ideal[f.place[i]]))
	}
	return worst
}

// rounded takes the coarsest steps that move no place further off than the
// accuracy.
func (f fit) rounded(accuracyMm float64, steps []float64) Regular {
	r, most := f.exact, f.off(f.exact)+accuracyMm
	for _, size := range []func(*Regular) *float64{
		func(r *Regular) *float64 { return &r.X }, func(r *Regular) *float64 { return &r.Y },
	} {
		for _, step := range steps {
			next := r
			value := size(&next)
			*value = math.Round(*value/step) * step
			if r.Shape == Row { // keep the middle
				half := float64(r.Count-1) / 2
				next.Centre = geometry.Polar(r.Centre, half*(r.X-next.X), r.AngleDeg)
			}
			if f.off(next) <= most {
				r = next
				break
			}
		}
	}
	for _, step := range []float64{15, 1, 0.5, 0.1} {
		next := r
		next.AngleDeg = geometry.Turn(math.Round(r.AngleDeg/step) * step)
		if f.off(next) <= most {
			return next
		}
	}
	return r
}

func gridFit(points []geometry.Point, layout geometry.Layout) (fit, bool) {
	c, r := layout.Columns, layout.Rows
	if c < 2 || r < 2 || c*r != len(points) {
		return fit{}, false
	}
	return latticeFit(points, layout, Regular{Shape: Grid, Columns: c, Rows: r}, func(column, row int) int {
		return (r-1-row)*c + column
	}), true
}

func rectangleFit(points []geometry.Point, layout geometry.Layout) (fit, bool) {
	c, r := layout.Columns, layout.Rows
	if c < 2 || r < 3 || 2*(c+r)-4 != len(points) {
		return fit{}, false
	}
	const inside = -1
	f := latticeFit(points, layout, Regular{Shape: Rectangle, Columns: c, Rows: r - 2}, func(column, row int) int {
		switch {
		case row == r-1:
			return column
		case column == c-1 && row > 0:
			return c + r - 2 - row
		case row == 0:
			return c + r - 2 + c - 1 - column
		case column == 0:
			return 2*c + r - 2 + row - 1
		}
		return inside
	})
	f.exact.X, f.exact.Y = f.exact.X*float64(c-1), f.exact.Y*float64(r-1)
	return f, !slices.Contains(f.place, inside)
}

// latticeFit fits level columns and rows to places, with pitches X and Y. place
// converts a column and a row, counted from the bottom left, to an index.
func latticeFit(points []geometry.Point, layout geometry.Layout, exact Regular, place func(column, row int) int) fit {
	f := fit{points: points, exact: exact}
	var columns, rows, x, y []float64
	for i, p := range points {
		column, row := layout.Column[i], layout.Row[i]
		columns, rows = append(columns, float64(column)-float64(layout.Columns-1)/2), append(rows, float64(row)-float64(layout.Rows-1)/2)
		x, y = append(x, p.X), append(y, p.Y)
		f.place = append(f.place, place(column, row))
	}
	f.exact.Centre.X, f.exact.X = stat.LinearRegression(columns, x, nil, false)
	f.exact.Centre.Y, f.exact.Y = stat.LinearRegression(rows, y, nil, false)
	return f
}

func rowFit(points []geometry.Point, _ geometry.Layout) (fit, bool) {
	axis, middle := geometry.LongAxis(points), geometry.Centroid(points)
	along := func(i int) float64 { return points[i].Sub(middle).Dot(axis) }
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(along(a), along(b)) })
	if order[0] > order[len(order)-1] { // the first hole of the list comes first
		slices.Reverse(order)
		axis = axis.Scale(-1)
	}
	f := fit{points: points, place: make([]int, len(points))}
	half := float64(len(points)-1) / 2
	var steps, places []float64
	for k, i := range order {
		f.place[i] = k
		steps, places = append(steps, float64(k)-half), append(places, points[i].Sub(middle).Dot(axis))
	}
	_, pitch := stat.LinearRegression(steps, places, nil, false)
	f.exact = Regular{Shape: Row, Count: len(points), X: pitch, AngleDeg: axis.AngleFrom(geometry.Point{})}
	f.exact.Centre = middle.Sub(axis.Scale(pitch * half))
	return f, pitch > 0
}

// circleFit fits an even circle without gaps to the places.
func circleFit(points []geometry.Point, layout geometry.Layout) (fit, bool) {
	if !layout.Regular || layout.Columns > 0 || len(points) < 3 {
		return fit{}, false
	}
	centre, n := geometry.Centroid(layout.Points), len(points)
	radius, step := layout.Points[0].Distance(centre), 360/float64(n)
	f := fit{points: points, exact: Regular{Shape: Circle, Count: n, X: 2 * radius, Centre: centre}}
	first := layout.Points[0].AngleFrom(centre)
	f.exact.AngleDeg = first
	f.exact.Clockwise = geometry.Turn(first-layout.Points[1].AngleFrom(centre)) <= 180
	taken := make([]bool, n)
	for _, p := range layout.Points {
		ahead := geometry.Turn(p.AngleFrom(centre) - first)
		if f.exact.Clockwise {
			ahead = geometry.Turn(-ahead)
		}
		k := int(math.Round(ahead/step)) % n
		if taken[k] || math.Abs(p.Distance(centre)-radius) > 1e-6*radius {
			return fit{}, false
		}
		taken[k] = true
		f.place = append(f.place, k)
	}
	return f, true
}
