package trace

import (
	"image"
	"math"
	"slices"

	"drawdown/geometry/finding"
)

// light is how bright the dark and the light tone are at each place of the
// picture: a lamp or a shadow across the glass changes both slowly.
type light struct {
	dark, bright surface
	contrast     float64 // mean difference, of 255
}

// at returns both tones at a place.
func (l light) at(x, y float64) (dark, bright float64) {
	dark, bright = l.dark.at(x, y), l.bright.at(x, y)
	if least := l.contrast / 3; bright-dark < least { // the surfaces may meet where only one tone was seen
		middle := (dark + bright) / 2
		dark, bright = middle-least/2, middle+least/2
	}
	return dark, bright
}

// middle is the grey halfway between the tones.
func (l light) middle(x, y float64) float64 {
	dark, bright := l.at(x, y)
	return (dark + bright) / 2
}

// surface is a polynomial of the second degree over the picture, kept within
// the greys that it was laid through.
type surface struct {
	c             [6]float64
	width, height float64
	low, high     float64
}

func (s surface) terms(x, y float64) [6]float64 {
	u, v := 2*x/s.width-1, 2*y/s.height-1
	return [6]float64{1, u, v, u * u, u * v, v * v}
}

func (s surface) at(x, y float64) float64 {
	u, v := 2*x/s.width-1, 2*y/s.height-1
	sum := s.c[0] + s.c[1]*u + s.c[2]*v + s.c[3]*(u*u) + s.c[4]*(u*v) + s.c[5]*(v*v)
	return min(max(sum, s.low), s.high)
}

type sample struct{ x, y, grey float64 }

// fitSurface lays a surface through samples by least squares, and once more
// without those that lie far off.
func fitSurface(samples []sample, width, height float64) (surface, bool) {
	s := surface{width: width, height: height, low: math.Inf(-1), high: math.Inf(1)}
	for range 3 {
		if len(samples) < 12 {
			return s, false
		}
		e := newEquations(len(s.c))
		for _, q := range samples {
			t := s.terms(q.x, q.y)
			e.add(t[:], q.grey, 1)
		}
		for i := range s.c { // where the samples say nothing, the surface stays flat
			e.normal.SetSym(i, i, e.normal.At(i, i)+1e-6*float64(len(samples)))
		}
		c, ok := e.solve()
		if !ok {
			return s, false
		}
		copy(s.c[:], c)
		off := make([]float64, len(samples))
		for i, q := range samples {
			off[i] = math.Abs(q.grey - s.at(q.x, q.y))
		}
		limit := 3*1.4826*median(off) + 1
		samples = keep(samples, func(i int) bool { return off[i] <= limit })
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, q := range samples {
		v := s.at(q.x, q.y)
		low, high = min(low, v), max(high, v)
	}
	s.low, s.high = low, high
	return s, true
}

// measureLight finds both tones. First from the edges, which have one tone on
// each side wherever they lie, then from all that is no edge.
func measureLight(picture *image.Gray) (light, error) {
	t := shrink(picture)
	width, height := float64(picture.Rect.Dx()), float64(picture.Rect.Dy())
	low, high := t.edgeLevels()
	dark, okDark := fitSurface(low, width, height)
	bright, okBright := fitSurface(high, width, height)
	l := light{dark: dark, bright: bright}
	if !okDark || !okBright {
		return l, faint(0)
	}
	edges := slices.Concat(low, high)
	for range 3 {
		l.contrast = l.mean(edges)
		if l.contrast < leastContrast/2 {
			return l, faint(l.contrast)
		}
		dark, bright := t.tones(l)
		if s, ok := fitSurface(dark, width, height); ok {
			l.dark = s
		}
		if s, ok := fitSurface(bright, width, height); ok {
			l.bright = s
		}
	}
	if l.contrast = l.mean(edges); l.contrast < leastContrast {
		return l, faint(l.contrast)
	}
	return l, nil
}

func faint(contrast float64) error {
	return finding.Failed(NoContrast, finding.Values{"contrast": max(contrast, 0), "least": leastContrast})
}

func (l light) mean(samples []sample) float64 {
	sum := 0.0
	for _, q := range samples {
		sum = sum + l.bright.at(q.x, q.y) - l.dark.at(q.x, q.y)
	}
	return sum / max(float64(len(samples)), 1)
}

// thumbnail is the picture made smaller by whole pixels, so that dust and noise
// average out. Lowest and highest are of the 5 × 5 pixels about each.
type thumbnail struct {
	grey, lowest, highest []float64

	width, height int
	scale         int
}

const thumbnailSide = 500

func shrink(picture *image.Gray) thumbnail {
	size := picture.Rect.Size()
	k := max(1, max(size.X, size.Y)/thumbnailSide)
	t := thumbnail{width: size.X / k, height: size.Y / k, scale: k}
	t.grey = make([]float64, t.width*t.height)
	for y := range t.height * k {
		row, sums := picture.Pix[y*picture.Stride:], t.grey[y/k*t.width:][:t.width]
		for x := range sums {
			sum := 0
			for _, level := range row[x*k : x*k+k] {
				sum += int(level)
			}
			sums[x] += float64(sum)
		}
	}
	for i := range t.grey {
		t.grey[i] /= float64(k * k)
	}
	t.lowest, t.highest = t.ranges()
	return t
}

// ranges returns the lowest and highest grey of the 5 × 5 pixels about each: first
// of those beside one another, then of those above one another.
func (t thumbnail) ranges() (lowest, highest []float64) {
	low, high := slices.Clone(t.grey), slices.Clone(t.grey)
	for y := range t.height {
		row := t.grey[y*t.width:][:t.width]
		for x := range row {
			for _, grey := range row[max(x-2, 0):min(x+3, t.width)] {
				low[y*t.width+x] = min(low[y*t.width+x], grey)
				high[y*t.width+x] = max(high[y*t.width+x], grey)
			}
		}
	}
	lowest, highest = slices.Clone(low), slices.Clone(high)
	for y := range t.height {
		for near := max(y-2, 0); near < min(y+3, t.height); near++ {
			for x := range t.width {
				lowest[y*t.width+x] = min(lowest[y*t.width+x], low[near*t.width+x])
				highest[y*t.width+x] = max(highest[y*t.width+x], high[near*t.width+x])
			}
		}
	}
	return lowest, highest
}

// place returns the place in the picture of the middle of a pixel.
func (t thumbnail) place(x, y int) (float64, float64) {
	return (float64(x) + 0.5) * float64(t.scale), (float64(y) + 0.5) * float64(t.scale)
}

// edgeLevels samples the tones on both sides of the strong edges.
func (t thumbnail) edgeLevels() (low, high []sample) {
	step := slices.Clone(t.highest)
	for i := range step {
		step[i] -= t.lowest[i]
	}
	strong := max(4, 0.5*inOrder(slices.Clone(step), len(step)*995/1000))
	for i, s := range step {
		if s < strong {
			continue
		}
		x, y := i%t.width, i/t.width
		px, py := t.place(x, y)
		low, high = append(low, sample{px, py, t.lowest[i]}), append(high, sample{px, py, t.highest[i]})
	}
	return low, high
}

// tones samples the pixels that are clearly of one tone and no edge. One in nine
// is enough for a surface.
func (t thumbnail) tones(l light) (dark, bright []sample) {
	for y := 1; y < t.height; y += 3 {
		for x := 1; x < t.width; x += 3 {
			i := y*t.width + x
			px, py := t.place(x, y)
			d, b := l.at(px, py)
			if t.highest[i]-t.lowest[i] > (b-d)/3 {
				continue
			}
			grey := t.grey[i]
			if grey < (d+b)/2 {
				dark = append(dark, sample{px, py, grey})
			} else {
				bright = append(bright, sample{px, py, grey})
			}
		}
	}
	return dark, bright
}

func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	s := slices.Clone(values)
	return inOrder(s, len(s)/2)
}

// inOrder returns the value that stands at a place once all are sorted, without
// sorting all: only the part that holds the place is parted further. It moves
// the values.
func inOrder(s []float64, place int) float64 {
	low, high := 0, len(s)-1
	for low < high {
		pivot, i, k := s[(low+high)/2], low, high
		for i <= k {
			for s[i] < pivot {
				i++
			}
			for s[k] > pivot {
				k--
			}
			if i <= k {
				s[i], s[k] = s[k], s[i]
				i, k = i+1, k-1
			}
		}
		switch {
		case place <= k:
			high = k
		case place >= i:
			low = i
		default:
			return s[place]
		}
	}
	return s[place]
}

func keep[T any](all []T, wanted func(i int) bool) []T {
	var kept []T
	for i, v := range all {
		if wanted(i) {
			kept = append(kept, v)
		}
	}
	return kept
}
