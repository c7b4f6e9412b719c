package tile

import (
	"math"

	"drawdown/render/scene"
)

// cut gives the part of a path's line that lies in the box. A path that lies in
// it altogether stays as it is, curves and all; of others the curves become
// runs of straight lines that leave them by no more than flatness.
func cut(path scene.Path, box scene.Box) scene.Path {
	around := path.Bounds()
	switch {
	case box.Holds(around):
		return path
	case !box.Grown(0.001).Meets(around.Grown(0.001)):
		return nil
	}
	var out scene.Path
	for _, run := range flatten(path) {
		var last scene.Point
		open := false
		for k := 1; k < len(run); k++ {
			a, b, ok := box.Clipped(run[k-1], run[k])
			if !ok {
				open = false
				continue
			}
			if !open || a != last {
				out.MoveTo(a.X, a.Y)
			}
			out.LineTo(b.X, b.Y)
			last, open = b, true
		}
	}
	return out
}

// flatness is how far a cut curve may lie from the true one, in millimetres: a
// tenth of what a sheet promises.
const flatness = 0.01

// flatten gives each sub-path as a run of straight lines.
func flatten(p scene.Path) [][]scene.Point {
	var runs [][]scene.Point
	add := func(q scene.Point) { runs[len(runs)-1] = append(runs[len(runs)-1], q) }
	var here scene.Point
	for _, s := range p {
		switch s.Verb {
		case scene.Move:
			runs = append(runs, nil)
			here = s.P[0]
			add(here)
		case scene.Line:
			here = s.P[0]
			add(here)
		case scene.Curve:
			steps := pieces(here, s.P)
			for k := 1; k <= steps; k++ {
				add(scene.Bezier(here, s.P[0], s.P[1], s.P[2], float64(k)/float64(steps)))
			}
			here = s.P[2]
		case scene.Close:
			here = runs[len(runs)-1][0]
			add(here)
		}
	}
	return runs
}

// pieces is how many straight lines stand for a cubic curve. A chord over 1/n of
// it lies within 1/8 of the second derivative over n² of it, and that is at most
// 6 times the largest second difference of its four points.
func pieces(start scene.Point, p [3]scene.Point) int {
	first := math.Hypot(start.X-2*p[0].X+p[1].X, start.Y-2*p[0].Y+p[1].Y)
	second := math.Hypot(p[0].X-2*p[1].X+p[2].X, p[0].Y-2*p[1].Y+p[2].Y)
	return max(1, int(math.Ceil(math.Sqrt(0.75*math.Max(first, second)/flatness))))
}

// Moved gives the piece at another place.
func (p Piece) Moved(by scene.Point) Piece {
	p.Edge.Path, p.Items = p.Edge.Path.Moved(by), scene.Moved(p.Items, by)
	return p
}
