package judge

import (
	"math"

	"drawdown/geometry"
	"drawdown/sequence"
	"drawdown/sequence/way"
)

// allowed is what the trade's orders for the layout reach at the most, and
// what drawdown's own does.
type allowed struct {
	pull                                float64
	run, inwards, neighbours, notAcross int
	own                                 Figures
}

// ways lists the ways that the trade has for the layout.
func (w *work) ways() []sequence.Way {
	switch w.layout {
	case Row:
		return []sequence.Way{sequence.RowWay}
	case Circle:
		return []sequence.Way{sequence.Star}
	}
	if w.Filled() && min(w.Columns, w.Rows) <= 3 && w.along != nil {
		return []sequence.Way{sequence.Spiral, sequence.Cross, sequence.RowWay}
	}
	return []sequence.Way{sequence.Spiral, sequence.Cross}
}

// pictures are the directions in which the longest extent is laid to order the
// places. Where places tie, an order begins with the highest; level, and tipped
// a little either way, shows every beginning that makes a difference. A circle
// and a row look alike from everywhere, and in an irregular layout little ties.
func (w *work) pictures() []float64 {
	if w.layout == Spread && w.Regular {
		return []float64{0, 12, -12}
	}
	return []float64{0}
}

func (w *work) allowed() allowed {
	a := allowed{own: w.measure(way.Places(w.given, sequence.Auto, sequence.TurnDefault)).Figures}
	for _, deg := range w.pictures() {
		laid := w.laid(deg)
		for _, by := range w.ways() {
			for _, turn := range sequence.Turns {
				m := w.measure(way.Places(laid, by, turn))
				a.pull = math.Max(a.pull, m.Pull)
				a.run, a.inwards = max(a.run, m.Run), max(a.inwards, m.Inwards)
				a.neighbours, a.notAcross = max(a.neighbours, m.Neighbours), max(a.notAcross, len(m.notAcross))
			}
		}
	}
	return a
}

// laid turns the true places so that their longest extent lies in a direction.
func (p places) laid(deg float64) []geometry.Point {
	axis := geometry.LongAxis(p.Points)
	turn := geometry.Polar(geometry.Point{}, 1, deg-axis.AngleFrom(geometry.Point{}))
	points := make([]geometry.Point, len(p.Points))
	for i, at := range p.Points {
		points[i] = geometry.Point{X: turn.X*at.X - turn.Y*at.Y, Y: turn.Y*at.X + turn.X*at.Y}
	}
	return points
}
