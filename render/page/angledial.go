package page

import (
	"fmt"
	"math"

	"drawdown/render/scene"
	"drawdown/render/svg"
	"drawdown/sequence/run"
)

// Angle is the drawing of an angle: the head of the fastener from above, its
// starting and finishing marks, and the angle turned before. The box is 100 by
// 100 around its middle.
type Angle struct {
	Before string // path of the angle turned before; "" for none
	Wedge  string // path of the angle to turn now
	Head   string
	Start  string // the starting mark, an open circle
	Finish string // the finishing mark, an arrowhead in the direction of the turn
	Total  string // words
	Way    string // words: clockwise
	Label  string // for a screen reader
}

const (
	dialRadius = 40.0
	headRadius = 22.0
)

// angle draws the angle of a step; nil if it has none.
func (v RunView) angle(s run.Step) *Angle {
	if s.AngleDeg == 0 {
		return nil
	}
	t := v.Text().Run
	sign, way := 1.0, t.Clockwise
	if s.Turn == run.Anticlockwise {
		sign, way = -1, t.Anticlockwise
	}
	from, to := sign*s.FromDeg, sign*s.ToDeg
	degrees := func(deg float64) string { return v.Words.Figure(plain(deg) + "°") }
	a := &Angle{
		Head: svg.Path(scene.Polygon(0, 0, headRadius, 6, 0)), Way: way,
		Wedge: svg.Path(wedge(from, to-from)), Start: svg.Path(onRim(from, startMark)), Finish: svg.Path(finishMark(to, sign)),
		Total: fmt.Sprintf(t.Total, degrees(s.ToDeg)),
		Label: fmt.Sprintf(t.Angle, degrees(s.AngleDeg), way, degrees(s.FromDeg)),
	}
	if s.FromDeg > 0 {
		a.Before = svg.Path(wedge(0, from))
		a.Total = fmt.Sprintf(t.Total, fmt.Sprintf("%s + %s = %s", degrees(s.FromDeg), degrees(s.AngleDeg), degrees(s.ToDeg)))
	}
	return a
}

// wedge is a sector of the dial from a direction, clockwise from the top. From
// a full turn on the dial is full.
func wedge(from, sweep float64) scene.Path {
	if math.Abs(sweep) >= 360 {
		return scene.Circle(0, 0, dialRadius)
	}
	start := (from - 90) * math.Pi / 180
	sin, cos := math.Sincos(start)
	var p scene.Path
	p.MoveTo(0, 0)
	p.LineTo(dialRadius*cos, dialRadius*sin)
	p.Arc(scene.Point{}, dialRadius, start, sweep*math.Pi/180)
	p.Close()
	return p
}

func rim(deg, radius float64) scene.Point {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return scene.Point{X: radius * sin, Y: -radius * cos}
}

func onRim(deg float64, mark func(scene.Point) scene.Path) scene.Path {
	return mark(rim(deg, dialRadius))
}

func startMark(at scene.Point) scene.Path { return scene.Circle(at.X, at.Y, 5) }

// finishMark is an arrowhead pointing at the finishing mark.
func finishMark(deg, sign float64) scene.Path {
	tip := rim(deg, dialRadius)
	back := deg - sign*16
	return scene.Polyline([]scene.Point{tip, rim(back, dialRadius+8), rim(back, dialRadius-8)}, true)
}
