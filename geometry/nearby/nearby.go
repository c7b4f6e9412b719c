// Package nearby names a point of a part by what lies near it.
package nearby

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// Place says in names where a point of a joint lies: between two bores or two
// fasteners, else near one of them or near a station. All are empty where the joint has
// nothing with a name.
type Place struct {
	Between [2]string
	Near    string
}

const (
	atFastener = 0.25            // of the way to the next fastener: the point lies at this one
	opposite   = 2 * math.Pi / 3 // the least angle under which two are seen by what lies between them
)

// To names what lies at a point of a joint.
func To(j geometry.Joint, at geometry.Point) Place {
	var fasteners, bores, stations []named
	for _, f := range j.Fasteners {
		fasteners = append(fasteners, named{f.ID, f.At, 0})
	}
	for _, b := range j.Bores {
		if b.Label != "" {
			bores = append(bores, named{b.Label, b.Centre, b.Diameter / 2})
		}
	}
	for _, s := range j.Stations {
		stations = append(stations, named{s.ID, s.At, 0})
	}
	if f := nearest(fasteners, at); f != nil && f.distance(at) <= atFastener*toNext(fasteners, *f) {
		return Place{Near: f.name}
	}
	inside := nearest(bores, at)
	if inside == nil || inside.distance(at) > 0 {
		for _, list := range [][]named{bores, fasteners} {
			if pair, found := around(list, at); found {
				return Place{Between: pair}
			}
		}
	}
	if one := nearest(slices.Concat(bores, stations, fasteners), at); one != nil {
		return Place{Near: one.name}
	}
	return Place{}
}

// named is something with a name and a radius, in mm.
type named struct {
	name   string
	at     geometry.Point
	radius float64
}

// distance is that of a point from the edge; 0 inside.
func (n named) distance(p geometry.Point) float64 { return max(0, n.at.Distance(p)-n.radius) }

// nearest returns the first of the nearest to a point; nil where there is none.
func nearest(list []named, p geometry.Point) *named {
	var best *named
	for i := range list {
		if best == nil || list[i].distance(p) < best.distance(p) {
			best = &list[i]
		}
	}
	return best
}

// toNext is the distance to the nearest other; 0 where there is none.
func toNext(list []named, one named) float64 {
	others := slices.DeleteFunc(slices.Clone(list), func(n named) bool { return n.name == one.name })
	if next := nearest(others, one.at); next != nil {
		return next.at.Distance(one.at)
	}
	return 0
}

// around returns the two between which a point lies: the nearest pair that is seen
// from there in almost opposite directions.
func around(list []named, p geometry.Point) (pair [2]string, found bool) {
	best := math.Inf(1)
	for i, a := range list {
		for _, b := range list[i+1:] {
			u, v := a.at.Sub(p), b.at.Sub(p)
			cos := u.Dot(v) / (math.Hypot(u.X, u.Y) * math.Hypot(v.X, v.Y))
			if sum := a.distance(p) + b.distance(p); cos <= math.Cos(opposite) && sum < best {
				pair, found, best = [2]string{a.name, b.name}, true, sum
			}
		}
	}
	return pair, found
}
