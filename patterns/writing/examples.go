package writing

import (
	"fmt"
	"math"
	"strings"

	"drawdown/geometry"
)

// points returns the places of the fasteners in the future file.
func (d Draft) points() []geometry.Point {
	if d.Layout != nil {
		return d.Layout.Points()
	}
	return d.Joint.Points()
}

// exampleOutline is a rectangle round the fasteners, so that the example in a
// comment fits the part.
func exampleOutline(fasteners []geometry.Point) string {
	b := geometry.Bounds(fasteners).Grown(math.Ceil(geometry.EdgeAllowance(fasteners)))
	corners := []geometry.Point{{X: b.Min.X, Y: b.Max.Y}, b.Max, {X: b.Max.X, Y: b.Min.Y}, b.Min}
	return "[" + strings.Join(geometry.Mapped(corners, Place), ", ") + "]"
}

// exampleBore is in the middle of the part, or between two fasteners if there
// is a fastener in the middle.
func exampleBore(fasteners []geometry.Point) string {
	centre := geometry.Enclose(fasteners).Centre
	const least = 5.0 // mm of radius
	if len(fasteners) > 1 && nearest(centre, fasteners) < least {
		centre = fasteners[0].Add(fasteners[1]).Scale(0.5)
	}
	radius := nearest(centre, fasteners)
	if radius < least || math.IsInf(radius, 1) {
		radius = 76
	}
	return fmt.Sprintf("{bore: %s, diameter: %s, label: cyl 1}", Place(centre), Number(math.Floor(radius)))
}

func nearest(p geometry.Point, others []geometry.Point) float64 {
	distance := math.Inf(1)
	for _, o := range others {
		distance = math.Min(distance, p.Distance(o))
	}
	return distance
}
