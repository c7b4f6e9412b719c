package photo

import (
	"image"
	"math"

	"drawdown/geometry"
)

// Edge says on which side of its sides the rectangle is bright.
type Edge float64

const (
	// Paper is brighter than what it lies on.
	Paper Edge = 1
	// Band is a printed frame, dark on paper: its outer edge counts.
	Band Edge = -1
)

// Sheet is a rectangle that was found in a photo.
type Sheet struct {
	// Corners run clockwise from the top left. They are where they would be
	// without the lens, in pixels.
	Corners [4]geometry.Point
	Lens    Lens
	// OffPixels is how far the sides are off straight lines: the root mean square.
	OffPixels float64
}

const (
	alongSide = 400 // places looked at along each side
	// Edges are looked for so far, as a share of the shorter side, on either side of
	// where the corners are named, or were found in a small picture: a lens bends
	// the sides.
	namedShare  = 0.015
	foundShare  = 0.03
	leastKept   = 0.4 // of these places that have to lie on one line
	leastLevels = 10  // of 255: the step at the edge of the sheet
	profileHalf = 4   // pixels on either side of an edge
)

// Near measures a rectangle whose corners were named, clockwise from the top left.
// Not found means that no edge runs along one of its sides.
func Near(picture *image.Gray, corners [4]geometry.Point, edge Edge) (Sheet, bool) {
	return measured(picture, corners, edge, namedShare)
}

func measured(picture *image.Gray, corners [4]geometry.Point, edge Edge, share float64) (Sheet, bool) {
	var sides [4][]geometry.Point
	reach := math.Inf(1)
	for i, a := range corners {
		reach = min(reach, share*a.Distance(corners[(i+1)%4]))
	}
	for i, a := range corners {
		sides[i] = sideOf(picture, a, corners[(i+1)%4], reach, edge)
		if len(sides[i]) < leastKept*alongSide {
			return Sheet{}, false
		}
	}
	size := picture.Rect.Size()
	w, h := float64(size.X), float64(size.Y)
	l := Lens{middle: geometry.Point{X: w / 2, Y: h / 2}, half: math.Hypot(w, h) / 2}
	l, kept := straightening(sides, l)
	s := Sheet{Lens: l}
	var lines [4]line
	var squares, n float64
	for i, side := range kept {
		if len(side) < leastKept*alongSide {
			return Sheet{}, false
		}
		straight := l.straightAll(side)
		lines[i] = lineThrough(straight)
		for _, p := range straight {
			squares, n = squares+math.Pow(lines[i].off(p), 2), n+1
		}
	}
	s.OffPixels = math.Sqrt(squares / n)
	for i := range lines {
		corner, ok := lines[(i+3)%4].cross(lines[i])
		if !ok {
			return Sheet{}, false
		}
		s.Corners[i] = corner
	}
	return s, true
}

// sideOf follows the edge from corner to corner. Places where none is seen, or
// one off the run of the others, are left out.
func sideOf(picture *image.Gray, a, b geometry.Point, reach float64, edge Edge) []geometry.Point {
	length := a.Distance(b)
	along := b.Sub(a).Scale(1 / max(length, 1))
	in := geometry.Point{X: -along.Y, Y: along.X} // the corners run clockwise in the picture
	var at, off []float64
	for i := range alongSide {
		share := 0.02 + 0.96*float64(i)/(alongSide-1)
		p := a.Add(b.Sub(a).Scale(share))
		if d, ok := edgeAt(picture, p, in, along, reach, edge); ok {
			at, off = append(at, 2*share-1), append(off, d)
		}
	}
	var places []geometry.Point
	for _, i := range onCurve(at, off, reach/6) {
		p := a.Add(b.Sub(a).Scale((at[i] + 1) / 2))
		places = append(places, p.Add(in.Scale(off[i])))
	}
	return places
}

// edgeAt finds the edge along a line across a side: how far inwards it lies, in
// pixels. Roughly where the step is steepest, then where the areas under both
// tones are equal.
func edgeAt(picture *image.Gray, p, in, along geometry.Point, reach float64, edge Edge) (float64, bool) {
	at := func(far float64) float64 { return levelAlong(picture, p.Add(in.Scale(far)), along) }
	n := int(math.Ceil(reach)) + 2
	levels := make([]float64, 2*n+1)
	for i := range levels {
		levels[i] = at(float64(i - n))
	}
	best, most := 0, 0.0
	for i := 2; i < len(levels)-2; i++ {
		step := float64(edge) * (levels[i+1] + levels[i+2] - levels[i-1] - levels[i-2]) / 2
		if levels[i-2] >= 0 && levels[i+2] >= 0 && step > most {
			best, most = i-n, step
		}
	}
	if most < leastLevels {
		return 0, false
	}
	const perPixel = 4
	var window [2*profileHalf*perPixel + 1]float64
	for i := range window {
		window[i] = at(float64(best-profileHalf) + float64(i)/perPixel)
		if window[i] < 0 {
			return 0, false
		}
	}
	last := len(window) - 1
	out, inner := mean(window[:perPixel+1]), mean(window[last-perPixel:])
	if float64(edge)*(inner-out) < leastLevels {
		return 0, false
	}
	area := (window[0] + window[last] - 2*inner) / 2
	for _, v := range window[1:last] {
		area += v - inner
	}
	return float64(best-profileHalf) + area/(out-inner)/perPixel, true
}

// levelAlong is the brightness at a place, with its neighbours along the side;
// below 0 beyond the picture.
func levelAlong(picture *image.Gray, p, along geometry.Point) float64 {
	return (level(picture, p.Sub(along)) + level(picture, p) + level(picture, p.Add(along))) / 3
}

func mean(values []float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum / float64(len(values))
}

// onCurve lists the values that lie on one flat curve of the second degree: a lens
// bends a side that way. It is laid through three medians, then narrowed down; in the end nothing lies
// further off than the most.
func onCurve(at, off []float64, most float64) []int {
	if len(at) < 30 {
		return nil
	}
	all := make([]int, len(at))
	for i := range all {
		all[i] = i
	}
	curve := throughThirds(at, off, all)
	kept := all
	for _, times := range []float64{6, 4, 2} {
		rest := make([]float64, len(kept))
		for i, k := range kept {
			rest[i] = math.Abs(off[k] - curve.at(at[k]))
		}
		limit := max(min(times*1.4826*median(rest), times*most/2), 0.6)
		var next []int
		for _, k := range all {
			if math.Abs(off[k]-curve.at(at[k])) <= limit {
				next = append(next, k)
			}
		}
		if len(next) < 30 {
			return nil
		}
		kept = next
		curve = throughThirds(at, off, kept)
	}
	return kept
}

// curve is a polynomial of the second degree.
type curve [3]float64

func (c curve) at(x float64) float64 { return c[0] + x*(c[1]+x*c[2]) }

// throughThirds lays a curve through the medians of the first, the middle and the
// last third of the values.
func throughThirds(at, off []float64, of []int) curve {
	var x, y [3]float64
	for k := range 3 {
		some := of[k*len(of)/3 : (k+1)*len(of)/3]
		xs, ys := make([]float64, len(some)), make([]float64, len(some))
		for i, j := range some {
			xs[i], ys[i] = at[j], off[j]
		}
		x[k], y[k] = median(xs), median(ys)
	}
	first, second := (y[1]-y[0])/(x[1]-x[0]), (y[2]-y[1])/(x[2]-x[1])
	bend := (second - first) / (x[2] - x[0])
	return curve{y[0] - first*x[0] + bend*x[0]*x[1], first - bend*(x[0]+x[1]), bend}
}

// level is the brightness at a place between the pixels' middles; -1e6 beyond the
// picture.
func level(picture *image.Gray, p geometry.Point) float64 {
	x, y := p.X-0.5, p.Y-0.5
	left, top := int(math.Floor(x)), int(math.Floor(y))
	if left < 0 || top < 0 || left+1 >= picture.Rect.Dx() || top+1 >= picture.Rect.Dy() {
		return -1e6
	}
	fx, fy := x-float64(left), y-float64(top)
	i := top*picture.Stride + left
	a, b := float64(picture.Pix[i]), float64(picture.Pix[i+1])
	c, d := float64(picture.Pix[i+picture.Stride]), float64(picture.Pix[i+picture.Stride+1])
	return (a*(1-fx)+b*fx)*(1-fy) + (c*(1-fx)+d*fx)*fy
}
