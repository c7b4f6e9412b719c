package rings

import (
	"image"
	"math"
	"slices"
)

// level is the picture made smaller by whole pixels, with the slope of its
// brightness.
type level struct {
	width, height int
	grey          []float32
	noise         float64 // median of the slope, grey levels per pixel
	edges         []step
}

// step is a pixel on an edge, with the direction towards the bright side.
type step struct {
	x, y   int32
	dx, dy float32
}

const (
	leastSlope   = 2.0 // grey levels per pixel: less is not seen
	noiseTimes   = 3.5
	leastLevels  = 8 // grey levels between both sides of a ring
	mostEdgeEach = 8 // one pixel in so many may lie on an edge
)

func (l level) leastStep() float64 { return max(leastLevels, 2.5*l.noise) }

func shrunk(picture *image.Gray, factor int) level {
	size := picture.Rect.Size()
	l := level{width: size.X / factor, height: size.Y / factor}
	l.grey = make([]float32, l.width*l.height)
	for y := range l.height * factor {
		row, sums := picture.Pix[y*picture.Stride:], l.grey[y/factor*l.width:][:l.width]
		for x := range sums {
			sum := 0
			for _, v := range row[x*factor : (x+1)*factor] {
				sum += int(v)
			}
			sums[x] += float32(sum)
		}
	}
	for i := range l.grey {
		l.grey[i] /= float32(factor * factor)
	}
	l.findEdges()
	return l
}

// slope is the change of brightness along x and y, by the weights of Sobel.
func (l level) slope(i int) (dx, dy float32) {
	g, w := l.grey, l.width
	a, b, c := g[i-w-1], g[i-w], g[i-w+1]
	d, f := g[i-1], g[i+1]
	p, q, r := g[i+w-1], g[i+w], g[i+w+1]
	return (c + 2*f + r - a - 2*d - p) / 8, (p + 2*q + r - a - 2*b - c) / 8
}

// findEdges keeps the pixels whose slope is steeper than those before and behind
// it (Canny, 1986).
func (l *level) findEdges() {
	steep := make([]float32, len(l.grey))
	for y := 1; y < l.height-1; y++ {
		for x := 1; x < l.width-1; x++ {
			i := y*l.width + x
			dx, dy := l.slope(i)
			steep[i] = float32(math.Sqrt(float64(dx*dx + dy*dy)))
		}
	}
	limit := l.limit(steep)
	for y := 2; y < l.height-2; y++ {
		for x := 2; x < l.width-2; x++ {
			i := y*l.width + x
			s := steep[i]
			if s < limit {
				continue
			}
			dx, dy := l.slope(i)
			ahead := i + across(dx/s) + l.width*across(dy/s)
			behind := i - across(dx/s) - l.width*across(dy/s)
			if s >= steep[ahead] && s > steep[behind] {
				l.edges = append(l.edges, step{int32(x), int32(y), dx / s, dy / s})
			}
		}
	}
}

// across is the step to the next pixel along a direction.
func across(d float32) int {
	const eighth = 0.3827 // sine of an eighth of a right angle and a half
	switch {
	case d > eighth:
		return 1
	case d < -eighth:
		return -1
	}
	return 0
}

// limit is the slope above which a pixel lies on an edge: clear of the noise, and
// few enough.
func (l *level) limit(steep []float32) float32 {
	some := make([]float32, 0, len(steep)/7+1)
	for i := 0; i < len(steep); i += 7 {
		some = append(some, steep[i])
	}
	slices.Sort(some)
	l.noise = float64(some[len(some)/2])
	return float32(max(leastSlope, noiseTimes*l.noise, float64(some[len(some)-1-len(some)/mostEdgeEach])/2))
}
