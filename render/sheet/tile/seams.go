package tile

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// Seams are the cut edges of the overlaid sheets in the drawing: vertical ones
// at X, horizontal ones at Y. Something across one is on two sheets; a word
// must not be.
type Seams struct{ X, Y []float64 }

// seamAir is the tolerance of cutting by hand.
const seamAir = 0.6

// Cross reports whether a seam runs through a box or close to it.
func (s Seams) Cross(b scene.Box) bool {
	b = b.Grown(seamAir)
	return between(s.X, b.Left, b.Right) || between(s.Y, b.Top, b.Bottom)
}

// Part reports whether a seam runs between two boxes that do not overlap.
func (s Seams) Part(a, b scene.Box) bool {
	return between(s.X, a.Right, b.Left) || between(s.X, b.Right, a.Left) ||
		between(s.Y, a.Bottom, b.Top) || between(s.Y, b.Bottom, a.Top)
}

func between(seams []float64, low, high float64) bool {
	return slices.ContainsFunc(seams, func(at float64) bool { return low < at && at < high })
}

// stops lists the intervals that cuts should avoid, across and down.
func (d Contents) stops() (across, down []stop) {
	add := func(b scene.Box, spoils float64, whole bool) {
		across = append(across, stop{b.Left, b.Right, spoils, whole})
		down = append(down, stop{b.Top, b.Bottom, spoils, whole})
	}
	for _, p := range d.Pieces {
		add(p.Bounds().Grown(seamAir), spoilsSpot, true)
		for _, b := range p.texts() {
			b = b.Grown(seamAir)
			// Nor between a word and its spot.
			edge := b
			if len(p.Edge.Path) > 0 {
				edge = p.Edge.Path.Bounds()
			}
			across = append(across, stop{math.Min(b.Left, edge.Right), math.Max(b.Right, edge.Left), spoilsWord, false})
			down = append(down, stop{math.Min(b.Top, edge.Bottom), math.Max(b.Bottom, edge.Top), spoilsWord, false})
		}
	}
	for _, p := range d.Words {
		add(p.Bounds().Grown(seamAir), spoilsLabel, false)
	}
	for _, b := range d.Beside {
		add(b.Grown(seamAir), spoilsLine, false)
	}
	return across, down
}

func (p Piece) texts() []scene.Box {
	var all []scene.Box
	for _, it := range p.Items {
		if t, ok := it.(scene.Text); ok {
			all = append(all, t.Box())
		}
	}
	return all
}

func (s Seams) spoilt(d Contents) []string {
	var names []string
	for _, p := range d.Pieces {
		cuts := func(b scene.Box) bool {
			return s.Cross(b) || len(p.Edge.Path) > 0 && s.Part(b, p.Edge.Path.Bounds())
		}
		if slices.ContainsFunc(p.texts(), cuts) {
			names = append(names, p.Name)
		}
	}
	return names
}

func (s Seams) anyWord(d Contents) bool {
	return slices.ContainsFunc(d.Words, func(p Piece) bool { return s.Cross(p.Bounds()) })
}
