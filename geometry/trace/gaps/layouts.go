package gaps

import (
	"math"

	"drawdown/geometry"
)

// inRows finds three holes or more in a row with even steps, of which one lacks.
func inRows(holes []geometry.Point) []Gap {
	var found []Gap
	for _, a := range holes {
		for _, b := range holes {
			step := b.Sub(a)
			if step.Dot(step) < 25*offMm*offMm {
				continue
			}
			at := func(k float64) geometry.Point { return a.Add(step.Scale(k)) }
			missing := at(2)
			if has(holes, missing) || !has(holes, at(3)) || has(holes, at(0.5)) {
				continue
			}
			if has(holes, at(-1)) || has(holes, at(4)) {
				found = append(found, Gap{missing, Row})
			}
		}
	}
	return merged(found)
}

// merged leaves of gaps at one place the first.
func merged(all []Gap) []Gap {
	var kept []Gap
	for _, g := range all {
		same := false
		for _, k := range kept {
			same = same || k.At.Distance(g.At) < 2*offMm
		}
		if !same {
			kept = append(kept, g)
		}
	}
	return kept
}

// Of a circle: so many holes show it, and at most one in so many lacks.
const (
	leastOnCircle = 5
	oneInLacks    = 4
)

// inCircle finds the circle through most holes and how evenly they divide it.
func inCircle(holes []geometry.Point) []Gap {
	centre, radius, on := fullestCircle(holes)
	if len(on) < leastOnCircle {
		return nil
	}
	for count := len(on); count <= len(on)+len(on)/oneInLacks; count++ {
		if gaps, fits := divided(centre, radius, on, count); fits {
			return gaps
		}
	}
	return nil
}

// divided lays the holes on an even division of the circle.
func divided(centre geometry.Point, radius float64, on []geometry.Point, count int) (gaps []Gap, fits bool) {
	first := on[0].AngleFrom(centre)
	at := func(k int) geometry.Point {
		return geometry.Polar(centre, radius, first+360*float64(k)/float64(count))
	}
	seen := 0
	for k := range count {
		if has(on, at(k)) {
			seen++
		} else {
			gaps = append(gaps, Gap{at(k), Circle})
		}
	}
	return gaps, seen == len(on)
}

// fullestCircle tries the circles through three holes each.
func fullestCircle(holes []geometry.Point) (centre geometry.Point, radius float64, on []geometry.Point) {
	n := len(holes)
	for k := range min(n*n, 600) {
		i, j := k%n, (k%n+1+k/n)%n
		l := (j + 1 + n/3) % n
		c, r, ok := through(holes[i], holes[j], holes[l])
		if !ok {
			continue
		}
		var near []geometry.Point
		for _, h := range holes {
			if math.Abs(h.Distance(c)-r) <= offMm {
				near = append(near, h)
			}
		}
		if len(near) > len(on) {
			centre, radius, on = c, r, near
		}
	}
	return centre, radius, on
}

// through returns the circle through three places that are not in line.
func through(a, b, c geometry.Point) (centre geometry.Point, radius float64, ok bool) {
	b, c = b.Sub(a), c.Sub(a)
	twice := 2 * (b.X*c.Y - b.Y*c.X)
	if math.Abs(twice) < offMm*offMm {
		return centre, 0, false
	}
	bb, cc := b.Dot(b), c.Dot(c)
	off := geometry.Point{X: (c.Y*bb - b.Y*cc) / twice, Y: (b.X*cc - c.X*bb) / twice}
	return a.Add(off), off.Distance(geometry.Point{}), true
}

// Of a mirror image.
const (
	leastMirrored = 0.75 // of the holes that have an image
	offMiddleMm   = 3    // how far its axis may lie off the middle of the holes
)

// inMirror tries the axes halfway between two holes each that run through the
// middle of all.
func inMirror(holes []geometry.Point) []Gap {
	var found []Gap
	box := geometry.Bounds(holes)
	middle := box.Min.Add(box.Max).Scale(0.5)
	for i, a := range holes {
		for _, b := range holes[i+1:] {
			on, across := a.Add(b).Scale(0.5), b.Sub(a)
			if math.Abs(middle.Sub(on).Dot(across)) > offMiddleMm*across.Distance(geometry.Point{}) {
				continue
			}
			gaps := mirrored(holes, on, across)
			if matched := len(holes) - len(gaps); matched >= 4 && float64(matched) >= leastMirrored*float64(len(holes)) {
				found = append(found, gaps...)
			}
		}
	}
	return merged(found)
}

// mirrored returns the images of holes in an axis that no hole lies on.
func mirrored(holes []geometry.Point, on, across geometry.Point) []Gap {
	var gaps []Gap
	square := across.Dot(across)
	for _, h := range holes {
		image := h.Sub(across.Scale(2 * h.Sub(on).Dot(across) / square))
		if !has(holes, image) {
			gaps = append(gaps, Gap{image, Mirror})
		}
	}
	return gaps
}
