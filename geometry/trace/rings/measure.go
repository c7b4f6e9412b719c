package rings

import (
	"image"
	"math"
	"slices"

	"drawdown/geometry"
)

const (
	rays       = 96
	reachShare = 0.3  // of the radius that the edge is looked for on either side
	nearShare  = 0.06 // of the radius that the edge may lie off the circle
)

// sighting is the step of brightness along one ray.
type sighting struct {
	at   geometry.Point
	off  float64 // distance from the centre
	step float64
}

// measured follows the brightness outwards along rays and lays a circle through
// the steepest places. Twice, because the first centre is rough.
func measured(picture *image.Gray, from centre, bright bool) (Ring, bool) {
	r := Ring{Centre: geometry.Point{X: from.x, Y: from.y}, Radius: from.radius, Bright: bright}
	for range 3 {
		seen := sightings(picture, r, max(3, reachShare*r.Radius))
		on := r.on(seen)
		if len(on) < rays/4 {
			return r, false
		}
		before := r
		r.refit(on)
		if r.Centre.Distance(before.Centre) > 0.5*before.Radius || !(r.Radius > 0.6*before.Radius && r.Radius < 1.6*before.Radius) {
			return r, false
		}
	}
	// Finely: a shadow beside the edge has a slope, too.
	seen := sightings(picture, r, max(3, nearShare*r.Radius))
	r.Faint = r.faint(seen)
	on := r.on(seen)
	var steps []float64
	r.Edge = nil
	for _, s := range on {
		steps = append(steps, s.step)
		r.Edge = append(r.Edge, s.at)
	}
	if len(on) == 0 {
		return r, false
	}
	slices.Sort(steps)
	r.Step, r.Round = steps[len(steps)/2], float64(len(on))/rays
	return r, true
}

// on keeps the sightings near the circle that have at least a third of the usual
// step.
func (r Ring) on(seen []sighting) []sighting {
	var steps []float64
	for _, s := range seen {
		steps = append(steps, s.step)
	}
	if len(steps) == 0 {
		return nil
	}
	slices.Sort(steps)
	least, tolerance := steps[len(steps)*3/4]/3, max(1.5, nearShare*r.Radius)
	return slices.DeleteFunc(seen, func(s sighting) bool { return s.step < least || math.Abs(s.off-r.Radius) > tolerance })
}

// faint is the share of the way round that any step is seen close to the ring.
func (r Ring) faint(seen []sighting) float64 {
	n := 0
	for _, s := range seen {
		if s.step >= leastLevels && math.Abs(s.off-r.Radius) < max(1.5, nearShare/3*r.Radius) {
			n++
		}
	}
	return float64(n) / rays
}

// sightings finds the steepest place along each ray that has the bright side in
// the right place, within a reach on either side of the ring.
func sightings(picture *image.Gray, r Ring, reach float64) []sighting {
	var seen []sighting
	pace := max(0.5, reach/16)
	n := int(2*reach/pace) + 1
	greys := make([]float64, n)
	for k := range rays {
		dy, dx := math.Sincos(2 * math.Pi * float64(k) / rays)
		from := r.Radius - reach
		for i := range greys {
			d := from + float64(i)*pace
			greys[i] = greyAt(picture, r.Centre.X+d*dx, r.Centre.Y+d*dy)
		}
		best, place := 0.0, 0.0
		for i := 2; i+2 < n; i++ {
			step := (greys[i-2] + greys[i-1] - greys[i+1] - greys[i+2]) / 2
			if !r.Bright {
				step = -step
			}
			// What lies nearer to the circle counts for more.
			off := (from + float64(i)*pace - r.Radius) / reach
			if step*(1-0.5*math.Abs(off)) > best {
				best, place = step*(1-0.5*math.Abs(off)), centred(greys, i, r.Bright)
			}
		}
		if best > 0 {
			d := from + place*pace
			seen = append(seen, sighting{geometry.Point{X: r.Centre.X + d*dx, Y: r.Centre.Y + d*dy}, d, best})
		}
	}
	return seen
}

// centred is the middle of the slope about a place, to a fraction.
func centred(greys []float64, i int, bright bool) float64 {
	sum, weights := 0.0, 0.0
	for k := max(i-3, 0); k < min(i+3, len(greys)-1); k++ {
		w := greys[k] - greys[k+1]
		if !bright {
			w = -w
		}
		if w = max(w, 0); w > 0 {
			sum, weights = sum+w*(float64(k)+0.5), weights+w
		}
	}
	if weights == 0 {
		return float64(i)
	}
	return sum / weights
}

// refit lays the circle through the sightings by least squares (Kåsa, 1976).
func (r *Ring) refit(on []sighting) {
	var sx, sy, sxx, syy, sxy, sz, sxz, syz float64
	n := float64(len(on))
	for _, s := range on {
		x, y := s.at.X-r.Centre.X, s.at.Y-r.Centre.Y
		z := x*x + y*y
		sx, sy, sxx, syy, sxy = sx+x, sy+y, sxx+x*x, syy+y*y, sxy+x*y
		sz, sxz, syz = sz+z, sxz+x*z, syz+y*z
	}
	mx, my, mz := sx/n, sy/n, sz/n
	a, b, c := sxx/n-mx*mx, sxy/n-mx*my, syy/n-my*my
	u, v := sxz/n-mx*mz, syz/n-my*mz
	det := a*c - b*b
	if det < 1e-6*r.Radius*r.Radius*r.Radius*r.Radius {
		return
	}
	x, y := (u*c-v*b)/det/2, (a*v-b*u)/det/2
	radius := math.Sqrt(max(mz-2*x*mx-2*y*my+x*x+y*y, 0))
	r.Centre, r.Radius = r.Centre.Add(geometry.Point{X: x, Y: y}), radius
}

// greyAt is the brightness between the middles of four pixels.
func greyAt(p *image.Gray, x, y float64) float64 {
	x = min(max(x-0.5, 0), float64(p.Rect.Dx()-2))
	y = min(max(y-0.5, 0), float64(p.Rect.Dy()-2))
	left, top := int(x), int(y)
	fx, fy := x-float64(left), y-float64(top)
	i := top*p.Stride + left
	a, b, c, d := float64(p.Pix[i]), float64(p.Pix[i+1]), float64(p.Pix[i+p.Stride]), float64(p.Pix[i+p.Stride+1])
	return (a*(1-fx)+b*fx)*(1-fy) + (c*(1-fx)+d*fx)*fy
}
