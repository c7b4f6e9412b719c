package edit

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
)

const (
	leastRegular = 3
	nearMm       = 1.5 // that a place may be off the layout
	accuracyMm   = 0.2 // up to which its sizes and its place are rounded
)

// regular moves fasteners to the places of the regular layout that they nearly
// form.
func (p *pattern) regular(op Operation) error {
	if len(op.IDs) < leastRegular {
		return finding.Failed(TooFew, finding.Values{"do": string(op.Do), "least": leastRegular})
	}
	places := make([]geometry.Point, len(op.IDs))
	for i, id := range op.IDs {
		var err error
		if places[i], err = p.where(id); err != nil {
			return err
		}
	}
	steps := survey.MillimetreSteps
	if p.inches() {
		steps = survey.InchSteps
	}
	layout, ok := survey.Recognise(places, nearMm, accuracyMm, steps)
	if !ok {
		return finding.Failed(NotRegular, nil)
	}
	points := layout.Points()
	shift := geometry.Point{X: rounding(points[0].X, steps), Y: rounding(points[0].Y, steps)}
	for i, id := range op.IDs {
		if err := p.place(id, nearest(points, places[i]).Add(shift)); err != nil {
			return err
		}
	}
	return nil
}

// rounding returns what a coordinate lacks to the coarsest step that is near.
func rounding(mm float64, steps []float64) float64 {
	for _, step := range steps {
		if by := math.Round(mm/step)*step - mm; math.Abs(by) <= accuracyMm {
			return by
		}
	}
	return 0
}

func nearest(points []geometry.Point, to geometry.Point) geometry.Point {
	best := points[0]
	for _, p := range points {
		if p.Distance(to) < best.Distance(to) {
			best = p
		}
	}
	return best
}
