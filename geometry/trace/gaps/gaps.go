// Package gaps finds the places where a regular layout of holes lacks one: in a
// row with even steps, on an evenly divided circle, or in a mirror image. It may
// import geometry.
package gaps

import (
	"slices"

	"drawdown/geometry"
)

// By is what a gap shows in.
type By string

const (
	Row    By = "row"
	Circle By = "circle"
	Mirror By = "mirror"
)

// Gap is a place where a hole is missing.
type Gap struct {
	At geometry.Point
	By By
}

// Limits of a layout (common practice, no source).
const (
	offMm     = 0.6 // how far a hole may lie off its place in the layout
	mostGaps  = 4   // a layout that lacks more is none
	mostHoles = 100
)

// Find returns the gaps in a layout, those of circles first, then of rows and
// mirror images. A place is named once.
func Find(holes []geometry.Point) []Gap {
	if len(holes) < 4 || len(holes) > mostHoles {
		return nil
	}
	var found []Gap
	for _, some := range [][]Gap{inCircle(holes), inRows(holes), inMirror(holes)} {
		if len(some) > mostGaps {
			continue
		}
		for _, gap := range some {
			known := slices.ContainsFunc(found, func(g Gap) bool { return g.At.Distance(gap.At) < 5*offMm })
			if !known {
				found = append(found, gap)
			}
		}
	}
	return found
}

func has(holes []geometry.Point, p geometry.Point) bool {
	return slices.ContainsFunc(holes, func(h geometry.Point) bool { return h.Distance(p) <= offMm })
}
