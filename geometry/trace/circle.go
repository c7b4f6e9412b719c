package trace

import (
	"math"

	"drawdown/geometry"
)

type circle struct {
	centre geometry.Point
	radius float64
	// scatter is the standard deviation of the points that count.
	scatter float64
}

func (c circle) off(p geometry.Point) float64 { return p.Distance(c.centre) - c.radius }

// fitCircle lays a circle through points by least squares of their distances
// from it. Points that lie far off, where the edge is torn or dirt sticks to
// it, count less and then not at all (Tukey's biweight).
func fitCircle(points []geometry.Point) (circle, bool) {
	c, ok := startCircle(points)
	if !ok {
		return c, false
	}
	off := make([]float64, len(points))
	for range 25 {
		for i, p := range points {
			off[i] = math.Abs(c.off(p))
		}
		c.scatter = max(1.4826*median(off), leastScatterMm)
		next, ok := c.improved(points)
		if !ok {
			return c, false
		}
		moved := next.centre.Distance(c.centre) + math.Abs(next.radius-c.radius)
		c = next
		if moved < 1e-6 {
			break
		}
	}
	return c, c.radius > 0 && !math.IsNaN(c.radius)
}

const (
	tukey          = 4.685 // 95 % as good as plain least squares where nothing is wrong
	leastScatterMm = 0.01
)

// improved makes one Gauss–Newton step.
func (c circle) improved(points []geometry.Point) (circle, bool) {
	e, limit := newEquations(3), tukey*c.scatter
	var squares, counted float64
	for _, p := range points {
		d := p.Distance(c.centre)
		off := d - c.radius
		if math.Abs(off) >= limit || d == 0 {
			continue
		}
		weight := math.Pow(1-off*off/limit/limit, 2)
		// Moving the centre towards the point, or a larger radius, lessens off.
		e.add([]float64{(p.X - c.centre.X) / d, (p.Y - c.centre.Y) / d, 1}, off, weight)
		squares, counted = squares+weight*off*off, counted+weight
	}
	step, ok := e.solve()
	if counted < 6 || !ok {
		return c, false
	}
	c.centre = c.centre.Add(geometry.Point{X: step[0], Y: step[1]})
	c.radius += step[2]
	c.scatter = math.Sqrt(squares / counted)
	return c, true
}

// startCircle tries circles through three places of the edge and takes the one
// that half of the edge lies nearest to, so that up to half may be wrong.
func startCircle(points []geometry.Point) (best circle, ok bool) {
	n := len(points)
	if n < 12 {
		return best, false
	}
	const tries, looked = 40, 120
	least := math.Inf(1)
	off := make([]float64, 0, looked)
	for _, share := range []int{3, 5} { // three places a third, or a fifth, of the edge apart
		for k := range tries {
			i := k * n / tries
			c, round := through(points[i], points[(i+n/share)%n], points[(i+2*n/share)%n])
			if !round {
				continue
			}
			off = off[:0]
			for j := range min(n, looked) {
				off = append(off, math.Abs(c.off(points[j*n/min(n, looked)])))
			}
			if m := median(off); m < least {
				best, least, ok = c, m, true
			}
		}
	}
	return best, ok
}

func through(a, b, c geometry.Point) (circle, bool) {
	b, c = b.Sub(a), c.Sub(a)
	d := 2 * (b.X*c.Y - b.Y*c.X)
	bb, cc := b.Dot(b), c.Dot(c)
	if math.Abs(d) < 1e-6*(bb+cc) {
		return circle{}, false
	}
	m := geometry.Point{X: (c.Y*bb - b.Y*cc) / d, Y: (b.X*cc - c.X*bb) / d}
	return circle{centre: a.Add(m), radius: math.Hypot(m.X, m.Y)}, true
}

// oval returns the half difference between the longest and the shortest diameter
// of the points about a circle: the second wave of their distances.
func (c circle) oval(points []geometry.Point) float64 {
	e := newEquations(3)
	for _, p := range points {
		s, k := math.Sincos(2 * math.Atan2(p.Y-c.centre.Y, p.X-c.centre.X))
		e.add([]float64{1, k, s}, c.off(p), 1)
	}
	wave, ok := e.solve()
	if !ok {
		return 0
	}
	return math.Hypot(wave[1], wave[2])
}
