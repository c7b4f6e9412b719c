package handout

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/scene"
)

// The sections exaggerate how the part rests on its gasket after the first
// bolts, after more, and after all. Common practice, no source; nothing in them
// is calculated.

const (
	sectionHeight = 21.0
	sectionGap    = 5.0
	plateMm       = 3.4 // thickness of the part as drawn
	gasketMm      = 1.2
	blockMm       = 3.0
	mostLiftMm    = 5.0
)

// stage is the state shown in a section: how far the part is lifted at x, from
// −1 to 1 across the part, as a share of the maximum; and which bolts are
// tight.
type stage struct {
	lift  func(x float64) float64
	tight func(x float64) bool
}

func (y *why) sections() {
	w := y.layout
	wrong, right := spreadWrong(y.columns()), spreadRight(y.columns())
	if y.circle {
		wrong, right = circleWrong, circleRight
	}
	height := y.rowHeight(w.Wrongs)
	if y.Paper.Wide() { // both rows side by side
		height = max(height, y.rowHeight(w.Rights))
	}
	y.Room(7 + height)
	y.Y = y.Paper.Strong().Set(y.Pen, y.Pen.Left(), y.Y+4, y.Paper.Strong().Lines(y.words.Section, y.Paper.Content())) - 2.4
	y.row(y.Pen.Left(), w.Wrong, wrong, w.Wrongs)
	if y.Paper.Wide() {
		y.row(y.Pen.Left()+3*(y.sectionWidth()+sectionGap), w.Right, right, w.Rights)
		y.Y += height
		return
	}
	y.Y += height
	y.Room(y.rowHeight(w.Rights))
	y.row(y.Pen.Left(), w.Right, right, w.Rights)
	y.Y += y.rowHeight(w.Rights)
}

// columns returns the positions of the columns of the main group along the
// part, from −1 to 1: at most seven, so that they can be told apart.
func (y *why) columns() []float64 {
	points := y.plan.Joint.Points()
	if len(y.plan.Groups) > 0 {
		points = points[:0:0]
		for _, i := range y.plan.Groups[0].Members {
			points = append(points, y.plan.Joint.Fasteners[i].At)
		}
	}
	box := geometry.Bounds(points)
	along, low, high := func(p geometry.Point) float64 { return p.X }, box.Min.X, box.Max.X
	if box.Height() > box.Width() { // an upright part is cut along its length
		along, low, high = func(p geometry.Point) float64 { return p.Y }, box.Min.Y, box.Max.Y
	}
	var xs []float64
	for _, p := range points {
		x := (along(p) - (low+high)/2) / max((high-low)/2, 1e-9)
		if !slices.ContainsFunc(xs, func(other float64) bool { return math.Abs(other-x) < 0.12 }) {
			xs = append(xs, x)
		}
	}
	slices.SortFunc(xs, cmp.Compare[float64])
	if len(xs) < 3 || len(xs) > 7 {
		return evenly
	}
	return xs
}

// evenly are the columns of a part without distinct ones.
var evenly = []float64{-1, -0.5, 0, 0.5, 1}

func innermost(columns []float64) float64 {
	least := 1.0
	for _, x := range columns {
		least = min(least, math.Abs(x))
	}
	return least
}

// within and beyond return which columns are tight, by their distance from the
// middle.
func within(reach float64) func(float64) bool {
	return func(x float64) bool { return math.Abs(x) <= reach+1e-6 }
}

func beyond(reach float64) func(float64) bool {
	return func(x float64) bool { return math.Abs(x) >= reach-1e-6 }
}

func bulge(reach, most float64) func(float64) float64 {
	return func(x float64) float64 {
		if math.Abs(x) >= reach {
			return 0
		}
		c := math.Cos(x / reach * math.Pi / 2)
		return most * c * c
	}
}

func curl(reach, most float64) func(float64) float64 {
	return func(x float64) float64 {
		beyond := max(0, math.Abs(x)-reach) / max(1.12-reach, 1e-9)
		return most * math.Pow(beyond, 1.4)
	}
}

func spreadWrong(columns []float64) [3]stage {
	inner := min(max(innermost(columns), 0.25)+0.15, 0.9)
	return [3]stage{
		{bulge(1, 1), beyond(1)},
		{bulge(max(inner, 0.55), 0.95), beyond(innermost(columns) + 0.05)},
		{bulge(max(inner, 0.45), 0.5), within(2)},
	}
}

func spreadRight(columns []float64) [3]stage {
	inner := innermost(columns)
	return [3]stage{
		{curl(inner, 1), within(inner)},
		{curl(max(inner, 0.6), 0.5), within(0.75)},
		{curl(1, 0), within(2)},
	}
}

func tilt(left, right float64) func(float64) float64 {
	return func(x float64) float64 { return left + (right-left)*(x+1)/2 }
}

var circleWrong = [3]stage{
	{tilt(0.15, 1), func(x float64) bool { return x < -0.9 }},
	{tilt(-0.15, 0.8), func(x float64) bool { return x < -0.2 }},
	{tilt(-0.18, 0.1), within(2)},
}

var circleRight = [3]stage{
	{tilt(0.75, 0.75), func(x float64) bool { return math.Abs(x) > 0.9 }},
	{tilt(0.35, 0.35), func(x float64) bool { return math.Abs(x) > 0.4 }},
	{tilt(0, 0), within(2)},
}

func (y *why) sectionWidth() float64 {
	if y.Paper.Wide() {
		return (y.Paper.Content() - 5*sectionGap) / 6
	}
	return (y.Paper.Content() - 2*sectionGap) / 3
}

func (y *why) rowHeight(texts [3]string) float64 {
	return 5 + sectionHeight + float64(y.Paper.BreakAll(texts[:], y.sectionWidth()).Most())*y.Paper.Line + 4
}

func (y *why) row(left float64, head string, stages [3]stage, texts [3]string) {
	y.Pen.Write(left, y.Y+3.4, y.Paper.TextEm, scene.Bold, scene.Start, scene.Black, head)
	for k, s := range stages {
		x := left + float64(k)*(y.sectionWidth()+sectionGap)
		y.section(s, x, y.Y+5)
		y.Pen.Lines(x, y.Y+5+sectionHeight+3.8, y.Paper.BreakText(texts[k], y.sectionWidth()))
	}
}

// section draws one stage: block, gasket, the part on it, and the bolts, the
// tight ones black with an arrow down.
func (y *why) section(s stage, left, top float64) {
	width := y.sectionWidth()
	bottom := top + sectionHeight
	seat := bottom - blockMm - gasketMm // the bottom of a level part
	half := width / 2 * 0.92
	at := func(x float64) float64 { return left + width/2 + x/1.12*half }
	y.Pen.Add(scene.Shape{Path: scene.Rect(left, bottom-blockMm, width, blockMm, 0), Fill: scene.Shade, Stroke: scene.Black, Width: 0.3})
	edge := func(height func(lift float64) float64) (points []scene.Point) { // from left to right
		const pieces = 48
		for k := range pieces + 1 {
			x := -1.12 + 2.24*float64(k)/pieces
			points = append(points, scene.Point{X: at(x), Y: height(s.lift(x) * mostLiftMm)})
		}
		return points
	}
	// The gasket fills the space under the part: it is squeezed where the part
	// is too low, and leaves a gap under a part that lifts.
	pressed := edge(func(lift float64) float64 { return seat - min(0, lift) })
	under := edge(func(lift float64) float64 { return seat - lift })
	over := edge(func(lift float64) float64 { return seat - lift - plateMm })
	slices.Reverse(over)
	foot := []scene.Point{{X: at(-1.12), Y: bottom - blockMm}, {X: at(1.12), Y: bottom - blockMm}}
	gasket := scene.Polyline(slices.Concat(foot[:1], pressed, foot[1:]), true)
	plate := scene.Polyline(append(under, over...), true)
	y.Pen.Add(scene.Shape{Path: gasket, Fill: scene.Accent}, scene.Shape{Path: plate, Fill: scene.Tint, Stroke: scene.Black, Width: 0.4})
	columns := y.columns()
	if y.circle {
		columns = evenly
	}
	for _, c := range columns {
		y.bolt(at(c), seat-s.lift(c)*mostLiftMm-plateMm, s.tight(c))
	}
}

func (y *why) bolt(x, on float64, tight bool) {
	const half, high = 1.6, 1.8
	head := scene.Shape{Fill: scene.White, Stroke: scene.Black, Width: 0.35}
	if tight {
		head.Fill = scene.Black
		y.Pen.Add(
			scene.Shape{Path: scene.Polyline([]scene.Point{{X: x, Y: on - high - 4.4}, {X: x, Y: on - high - 2}}, false), Stroke: scene.Black, Width: 0.5},
			scene.Shape{Path: scene.Polyline([]scene.Point{{X: x - 1, Y: on - high - 2.2}, {X: x + 1, Y: on - high - 2.2}, {X: x, Y: on - high - 0.5}}, true), Fill: scene.Black},
		)
	} else {
		on -= 1.2
	}
	head.Path = scene.Rect(x-half, on-high, 2*half, high, 0.3)
	y.Pen.Add(head)
}
