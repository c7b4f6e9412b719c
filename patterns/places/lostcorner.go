package places

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// lostFastener warns of the one fastener that alone lacks its mirror image, where that
// would be a corner or the end of a row, and there are many others, or it would continue
// an even row of its kind, or make the kind the same in both directions: a line of the
// file was probably lost.
func (c check) lostFastener() {
	const fewest = 7
	points := c.Joint.Points()
	if len(points) < fewest || c.Omits || len(c.Joint.Clusters) > 0 || len(c.Joint.Fasteners) != len(c.Fasteners) {
		return
	}
	if _, count := geometry.EvenCircle(points, evenShare); count > 0 {
		return // blank places of circles are usual
	}
	if _, found := geometry.FindOdd(points); found {
		return // which is said
	}
	if i, at, lost := c.lost(); lost && written(c.Fasteners[i]) {
		c.Warn(c.Fasteners[i], FastenerLost, finding.Values{"id": c.Joint.Fasteners[i].ID, "at": place(at)})
	}
}

const (
	evenShare = 0.05 // of the spacing
	enough    = 9    // fasteners: four pairs and the one

	fewestOfGrid = 6
)

// lost returns the fastener without a mirror image, and the place of that.
func (c check) lost() (fastener int, at geometry.Point, lost bool) {
	points := c.Joint.Points()
	for _, mirrored := range mirrors(points) {
		odd := c.withoutImage(mirrored)
		if len(odd) != 1 {
			continue
		}
		i := odd[0]
		image := mirrored(points[i])
		if c.nearAny(image) || image.Distance(points[i]) < geometry.Spacing(points)/2 {
			continue
		}
		own := c.ofKind(c.Joint.Fasteners[i].Kind)
		grid := len(own)+1 >= fewestOfGrid && symmetricBoth(append(slices.Clone(own), image))
		if !outside(image, points) && !(grid && outside(image, own)) {
			continue // a gap within a row may be meant
		}
		if grid || len(points) >= enough || c.continuesRow(i, image) {
			return i, image, true
		}
	}
	return 0, geometry.Point{}, false
}

func outside(p geometry.Point, of []geometry.Point) bool {
	hull := geometry.Hull(of)
	return len(hull) > 2 && !geometry.Inside(p, hull) && geometry.FromEdge(p, hull) > toleranceMm
}

func (c check) ofKind(kind string) (points []geometry.Point) {
	for _, f := range c.Joint.Fasteners {
		if f.Kind == kind {
			points = append(points, f.At)
		}
	}
	return points
}

// mirrors are the reflections about the upright and the level axis through the middle.
func mirrors(points []geometry.Point) []func(geometry.Point) geometry.Point {
	box := geometry.Bounds(points)
	middle := box.Min.Add(box.Max).Scale(0.5)
	return []func(geometry.Point) geometry.Point{
		func(p geometry.Point) geometry.Point { return geometry.Point{X: 2*middle.X - p.X, Y: p.Y} },
		func(p geometry.Point) geometry.Point { return geometry.Point{X: p.X, Y: 2*middle.Y - p.Y} },
	}
}

// withoutImage lists the fasteners without another of their kind at their mirror image.
func (c check) withoutImage(mirrored func(geometry.Point) geometry.Point) (odd []int) {
	for i, f := range c.Joint.Fasteners {
		image := mirrored(f.At)
		if !slices.ContainsFunc(c.Joint.Fasteners, func(o geometry.Fastener) bool { return o.Kind == f.Kind && o.At.Distance(image) <= toleranceMm }) {
			odd = append(odd, i)
		}
	}
	return odd
}

func (c check) nearAny(p geometry.Point) bool {
	return slices.ContainsFunc(c.Joint.Fasteners, func(o geometry.Fastener) bool { return o.At.Distance(p) <= toleranceMm })
}

// symmetricBoth reports whether points are their own image about both axes.
func symmetricBoth(points []geometry.Point) bool {
	for _, mirrored := range mirrors(points) {
		for _, p := range points {
			image := mirrored(p)
			if !slices.ContainsFunc(points, func(o geometry.Point) bool { return o.Distance(image) <= toleranceMm }) {
				return false
			}
		}
	}
	return true
}

// continuesRow reports whether a place continues the row of a fastener at its other end:
// at least four of the kind on a level or upright line, evenly apart.
func (c check) continuesRow(i int, at geometry.Point) bool {
	const fewest = 4
	own := c.Joint.Fasteners[i]
	for _, axis := range []func(geometry.Point) (along, off float64){
		func(p geometry.Point) (float64, float64) { return p.X, p.Y },
		func(p geometry.Point) (float64, float64) { return p.Y, p.X },
	} {
		_, line := axis(own.At)
		if _, off := axis(at); math.Abs(off-line) > toleranceMm {
			continue
		}
		var row []float64
		for _, f := range c.Joint.Fasteners {
			if along, off := axis(f.At); f.Kind == own.Kind && math.Abs(off-line) <= toleranceMm {
				row = append(row, along)
			}
		}
		along, _ := axis(at)
		row = append(row, along)
		slices.Sort(row)
		if len(row) > fewest && (along == row[0] || along == row[len(row)-1]) && even(row) {
			return true
		}
	}
	return false
}

func even(row []float64) bool {
	for k := 2; k < len(row); k++ {
		if math.Abs(row[k]-2*row[k-1]+row[k-2]) > toleranceMm {
			return false
		}
	}
	return true
}
