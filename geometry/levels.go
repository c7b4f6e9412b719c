package geometry

import (
	"math"
	"slices"
)

// levels are the rows or the columns that points form.
type levels struct {
	of     []int     // the level of each point
	value  []float64 // the coordinate of each level, ascending
	widest float64   // the largest extent of a level
	slack  float64
}

// newLevels groups the coordinates into levels. Consecutive levels are further
// apart than measuring errors explain.
func newLevels(points []Point, coordinate func(Point) float64, slack float64) *levels {
	l := &levels{of: make([]int, len(points)), slack: slack}
	order := Sorted(len(points), func(i int) float64 { return coordinate(points[i]) })
	begin := 0
	for k := 1; k <= len(order); k++ {
		if k < len(order) && coordinate(points[order[k]])-coordinate(points[order[k-1]]) <= 2*l.slack {
			continue
		}
		sum := 0.0
		for _, i := range order[begin:k] {
			l.of[i], sum = len(l.value), sum+coordinate(points[i])
		}
		l.widest = math.Max(l.widest, coordinate(points[order[k-1]])-coordinate(points[order[begin]]))
		l.value = append(l.value, sum/float64(k-begin))
		begin = k
	}
	return l
}

// tight reports that no level is wider than measuring errors explain.
func (l *levels) tight() bool { return l.widest <= 2*l.slack }

// middles returns the centroid of the points of each level.
func (l *levels) middles(points []Point) []Point {
	sum, number := make([]Point, len(l.value)), make([]float64, len(l.value))
	for i, k := range l.of {
		sum[k], number[k] = sum[k].Add(points[i]), number[k]+1
	}
	for k := range sum {
		sum[k] = sum[k].Scale(1 / number[k])
	}
	return sum
}

func (l *levels) at(i int) float64 { return l.value[l.of[i]] }

// straighten moves the levels to even steps, of which some may be skipped, if
// they are even within the slack. Otherwise it makes them symmetric if they are
// so within the slack. It reports whether either was the case.
func (l *levels) straighten() bool {
	steps := l.steps()
	few := steps[len(steps)-1] <= 4*len(steps)
	if even := fitSteps(l.value, steps); few && l.near(even) {
		l.value = even
		l.number(steps)
		return true
	}
	if symmetric := symmetric(l.value); l.near(symmetric) {
		l.value = symmetric
		return true
	}
	return false
}

// symmetric returns the nearest values that are symmetric about their mean.
func symmetric(values []float64) []float64 {
	n, mean := len(values), 0.0
	for _, v := range values {
		mean += v / float64(n)
	}
	out := make([]float64, n)
	for k, v := range values {
		out[k] = mean + (v-values[n-1-k])/2
	}
	return out
}

// steps numbers the levels in whole steps of the smallest distance between two.
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

// number gives each point the step number of its level. Levels without points
// are counted too.
func (l *levels) number(steps []int) {
	value := make([]float64, steps[len(steps)-1]+1)
	first, last := l.value[0], l.value[len(l.value)-1]
	for step := range value {
		value[step] = first + (last-first)*float64(step)/float64(max(1, len(value)-1))
	}
	for k, step := range steps {
		value[step] = l.value[k]
	}
	for i, k := range l.of {
		l.of[i] = steps[k]
	}
	l.value = value
}

func (l *levels) near(other []float64) bool {
	return slices.EqualFunc(l.value, other, func(v, w float64) bool { return math.Abs(v-w) <= l.slack })
}

// fitSteps fits even steps to the levels by least squares and returns their
// values.
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
