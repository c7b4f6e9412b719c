package tile

import "drawdown/render/scene"

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
	for _, run := range path.FlattenTo(flatness) {
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

// Moved gives the piece at another place.
func (p Piece) Moved(by scene.Point) Piece {
	p.Edge.Path, p.Items = p.Edge.Path.Moved(by), scene.Moved(p.Items, by)
	return p
}
