package geometry

import (
	"math"
	"slices"
)

// LevelShare is how far off, as a share of the spacing, a measured hole may
// make two distances differ that are equal on the part. A hole that lies 1 %
// of the spacing off its true place changes a difference of two distances by
// 5.7 % at the most.
const LevelShare = 0.06

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
}

// NewLayout looks for the regularity of points that may be measured a little
// off their true places.
func NewLayout(points []Point) Layout {
	as := Layout{Points: points}
	if len(points) < 3 {
		return as
	}
	if even := evenCircle(points); even != nil {
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
	spacing := Spacing(points)
	tilt := gridTilt(points)
	frame := rotated(points, -tilt)
	columns := newLevels(frame, func(p Point) float64 { return p.X }, spacing)
	rows := newLevels(frame, func(p Point) float64 { return p.Y }, spacing)
	if columns == nil || rows == nil || tooMany(columns.count(), rows.count(), len(points)) {
		return Layout{}, false
	}
	if columns.straighten() && rows.straighten() {
		layout.Column, layout.Row = columns.of, rows.of
		layout.Columns, layout.Rows = columns.count(), rows.count()
	}
	for i := range frame {
		frame[i] = Point{columns.at(i), rows.at(i)}
	}
	layout.Points, layout.Regular = rotated(frame, tilt), true
	return layout, true
}

// tooMany says that rows and columns are no mark of a grid: scattered points
// have one of each for every point.
func tooMany(columns, rows, points int) bool {
	return columns > 1 && rows > 1 && columns+rows > points
}

// Filled says that the layout is a grid in which hardly a place is missing.
func (l Layout) Filled() bool {
	places := l.Columns * l.Rows
	return l.Columns > 1 && l.Rows > 1 && len(l.Points) >= places-max(1, places/10)
}

// gridTilt gives the direction of the rows of a grid in degrees, in
// (-45, 45]: the mean direction to the nearest neighbour, right angles folded
// away. A tilt under a degree is an error of measurement.
func gridTilt(points []Point) float64 {
	var sum Point
	for i, k := range nearestNeighbours(points) {
		sum = sum.Add(Polar(Point{}, 1, 4*points[k].AngleFrom(points[i])))
	}
	tilt := math.Atan2(sum.Y, sum.X) * 180 / math.Pi / 4
	if math.Abs(tilt) < 1 {
		return 0
	}
	return tilt
}

func rotated(points []Point, deg float64) []Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return mapped(points, func(p Point) Point { return Point{c*p.X - s*p.Y, s*p.X + c*p.Y} })
}

// levels are the rows, or the columns, on which points lie.
type levels struct {
	of    []int     // the level of each point
	value []float64 // the coordinate of each level, rising
	slack float64
}

// newLevels parts the coordinates into levels; nil where a level is not tight.
func newLevels(points []Point, coordinate func(Point) float64, spacing float64) *levels {
	l := &levels{of: make([]int, len(points)), slack: LevelShare * spacing}
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return sign(coordinate(points[a]) - coordinate(points[b])) })
	begin := 0
	for k := 1; k <= len(order); k++ {
		if k < len(order) && coordinate(points[order[k]])-coordinate(points[order[k-1]]) <= 2*l.slack {
			continue
		}
		sum := 0.0
		for _, i := range order[begin:k] {
			l.of[i], sum = len(l.value), sum+coordinate(points[i])
		}
		if coordinate(points[order[k-1]])-coordinate(points[order[begin]]) > 2*l.slack {
			return nil
		}
		l.value = append(l.value, sum/float64(k-begin))
		begin = k
	}
	return l
}

func (l *levels) count() int { return len(l.value) }

func (l *levels) at(i int) float64 { return l.value[l.of[i]] }

// straighten brings the levels to even steps where they are even within the
// slack (some may be skipped), else to symmetry where they are symmetric
// within the slack, and says whether they were one or the other.
func (l *levels) straighten() bool {
	steps := l.steps()
	few := steps[len(steps)-1] <= 4*len(steps)
	if even := fitSteps(l.value, steps); few && l.near(even) {
		l.value = even
		l.number(steps)
		return true
	}
	n := len(l.value)
	symmetric := make([]float64, n)
	middle := (l.value[0] + l.value[n-1]) / 2
	for k, v := range l.value {
		symmetric[k] = middle + (v-l.value[n-1-k])/2
	}
	if l.near(symmetric) {
		l.value = symmetric
		return true
	}
	return false
}

// steps counts the levels in whole steps of the smallest distance between two.
func (l *levels) steps() []int {
	smallest := math.Inf(1)
	for k := 1; k < len(l.value); k++ {
		smallest = math.Min(smallest, l.value[k]-l.value[k-1])
	}
	steps := make([]int, len(l.value))
	for k := 1; k < len(l.value); k++ {
		steps[k] = steps[k-1] + int(math.Round((l.value[k]-l.value[k-1])/smallest))
	}
	return steps
}

// number gives the points the step numbers of their levels; levels between
// that no point lies on keep their numbers free.
func (l *levels) number(steps []int) {
	value := make([]float64, steps[len(steps)-1]+1)
	for k, step := range steps {
		value[step] = l.value[k]
	}
	for i, k := range l.of {
		l.of[i] = steps[k]
	}
	l.value = value
}

func (l *levels) near(other []float64) bool {
	for k, v := range other {
		if math.Abs(v-l.value[k]) > l.slack {
			return false
		}
	}
	return true
}

// fitSteps gives the values that even steps lay over the levels by least
// squares.
func fitSteps(values []float64, steps []int) []float64 {
	n := float64(len(values))
	var meanValue, meanStep, along, squares float64
	for k, v := range values {
		meanValue, meanStep = meanValue+v/n, meanStep+float64(steps[k])/n
	}
	for k, v := range values {
		x := float64(steps[k]) - meanStep
		along, squares = along+x*(v-meanValue), squares+x*x
	}
	slope := along / math.Max(squares, 1)
	fitted := make([]float64, len(values))
	for k := range values {
		fitted[k] = meanValue + slope*(float64(steps[k])-meanStep)
	}
	return fitted
}
