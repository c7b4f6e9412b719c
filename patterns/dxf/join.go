package dxf

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// piece is a line that may join others into a closed path.
type piece struct {
	points    []geometry.Point
	round     bool // all of it is curved
	closed    bool
	layer     string
	line      int
	bridgesMm float64 // above 0: not drawn, it closes a gap of that size
}

// gapMm returns the distance between its ends.
func (p piece) gapMm() float64 { return p.points[0].Distance(p.points[len(p.points)-1]) }

// mostPoints limits the points of all flattened lines.
const mostPoints = 10_000_000

func (r *reader) addPiece(p piece) {
	if r.bad != nil {
		return
	}
	r.points += len(p.points)
	if r.points > mostPoints {
		r.stop(faultAt(p.line, "", TooManyPoints, nil))
		return
	}
	p.points = slices.CompactFunc(p.points, func(a, b geometry.Point) bool { return a == b })
	// A polyline may be closed by its last corner instead of its flag.
	p.closed = p.closed || len(p.points) > 2 && p.gapMm() <= gapMm
	r.pieces = append(r.pieces, p)
}

// gapMm is the largest gap between two ends that count as meeting.
const gapMm = 0.02

// join makes closed paths of the pieces, and circles of round paths.
func (r *reader) join() {
	var open []piece
	for _, p := range r.pieces {
		if p.closed {
			r.addPath(p)
		} else if len(p.points) > 1 && p.gapMm() > 0 {
			open = append(open, p)
		}
	}
	for _, pieces := range byLayer(withoutRepeats(open)) {
		r.joinLayer(append(pieces, bridges(pieces, r.ask.GapMm)...))
	}
	r.noteMoreGaps()
}

// byLayer splits the pieces by layer: lines of two layers never form one
// outline.
func byLayer(pieces []piece) [][]piece {
	var groups [][]piece
	index := map[string]int{}
	for _, p := range pieces {
		i, known := index[p.layer]
		if !known {
			i = len(groups)
			index[p.layer], groups = i, append(groups, nil)
		}
		groups[i] = append(groups[i], p)
	}
	return groups
}

func (r *reader) joinLayer(pieces []piece) {
	n := newNet(pieces)
	n.prune()
	r.noteGaps(pieces, n)
	for _, i := range n.order() {
		p := pieces[i]
		if n.pruned[i] {
			r.leaveLoose(p)
		}
		for !n.used[i] { // a walk from its node may first go another way
			if path, closes := n.walk(i); closes {
				r.addPath(path)
			} else {
				r.leaveLoose(p)
			}
		}
	}
}

func (r *reader) leaveLoose(p piece) {
	if p.bridgesMm > 0 {
		return
	}
	r.leaveOut(LooseEnd, entity{kind: "drawn line", line: p.line})
}

// addPath adds a closed path, or a circle if the path is one.
func (r *reader) addPath(p piece) {
	points := p.points
	if len(points) > 1 && p.gapMm() <= gapMm {
		points = points[:len(points)-1]
	}
	if centre, diameter, ok := circleThrough(points); ok && p.round {
		r.addCircle(centre, diameter, p.layer, p.line)
		return
	}
	if len(points) < 3 {
		r.leaveLoose(p)
		return
	}
	r.drawing.Paths = append(r.drawing.Paths, Path{points, p.layer, p.line})
}

// circleThrough returns the circle through all the points.
func circleThrough(points []geometry.Point) (centre geometry.Point, diameter float64, ok bool) {
	const fewest = 8 // flattened curves never have fewer; a hexagon has
	n := len(points)
	if n < fewest {
		return
	}
	a, b, c := points[0], points[n/3], points[2*n/3]
	u, v := b.Sub(a), c.Sub(a)
	twice := 2 * (u.X*v.Y - u.Y*v.X)
	if twice == 0 {
		return
	}
	uu, vv := u.X*u.X+u.Y*u.Y, v.X*v.X+v.Y*v.Y
	centre = a.Add(geometry.Point{X: (v.Y*uu - u.Y*vv) / twice, Y: (u.X*vv - v.X*uu) / twice})
	radius := centre.Distance(a)
	for _, p := range points {
		if !(math.Abs(p.Distance(centre)-radius) <= 1e-6+1e-6*radius) {
			return
		}
	}
	return centre, 2 * radius, true
}

// withoutRepeats drops lines that are drawn twice.
func withoutRepeats(pieces []piece) []piece {
	type key [6]int64
	round := func(v float64) int64 { return int64(math.Round(v / gapMm)) }
	seen := map[key]bool{}
	kept := pieces[:0:0]
	for _, p := range pieces {
		a, b, m := p.points[0], p.points[len(p.points)-1], p.points[len(p.points)/2]
		if a.X > b.X || a.X == b.X && a.Y > b.Y {
			a, b, m = b, a, p.points[(len(p.points)-1)/2]
		}
		k := key{round(a.X), round(a.Y), round(b.X), round(b.Y), round(m.X), round(m.Y)}
		if len(p.points) == 2 {
			k[4], k[5] = 0, 0
		}
		if !seen[k] {
			kept = append(kept, p)
		}
		seen[k] = true
	}
	return kept
}
