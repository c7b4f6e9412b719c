package way

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// first picks from the candidates the place to begin with: the one nearest the
// centre. A tie goes to the highest in the picture, then to the furthest left
// (furthest right for turn right, so that a mirrored part gives the mirrored
// order).
func (l *layout) first(candidates []int, turn Turn) int {
	return l.highest(l.tiedFor(candidates), turn)
}

// tiedFor returns the places nearest the centre that tie. Those of a regular layout
// tie when they are equally near; those of another only when they cannot be told
// apart on the part itself, since the picture is to decide nothing that the part
// can.
func (l *layout) tiedFor(candidates []int) []int {
	nearest := candidates[0]
	for _, i := range candidates[1:] {
		if l.closer(i, nearest) {
			nearest = i
		}
	}
	var tied []int
	for _, i := range candidates {
		level := l.radius[i]-l.radius[nearest] <= l.levelRadius()
		if level && (l.Regular || i == nearest || l.alike(i, nearest)) {
			tied = append(tied, i)
		}
	}
	if l.tied != nil && len(tied) > 1 {
		return l.tied(tied)
	}
	return tied
}

// levelRadius is how far two distances from the centre may differ and tie. A
// regular layout is already true, up to the rest that fitting leaves; one that
// was seen loosely tells two pitches apart no better than it was measured.
func (l *layout) levelRadius() float64 {
	switch {
	case !l.Regular:
		return l.slack
	case l.seen.OffMm <= l.slack:
		return l.slack / 3
	}
	return geometry.LooseShare * l.spacing
}

// closer compares the distances from the centre and, where these are equal but
// for rounding, the sums of the distances to all other places: both belong to
// the part and not to the picture.
func (l *layout) closer(i, j int) bool {
	dust := 1e-9 * (l.spacing + l.radius[j])
	if d := l.radius[i] - l.radius[j]; math.Abs(d) > dust {
		return d < 0
	}
	return l.reach(i) < l.reach(j)-dust
}

// reach is the sum of the distances from a place to all others. On a circle all
// places tie, so that each is asked for again and again. Lengths of a part need
// none of the care of math.Hypot, which takes five times as long.
func (l *layout) reach(i int) float64 {
	if l.reaches == nil {
		l.reaches = make([]float64, len(l.at))
	}
	if l.reaches[i] == 0 {
		for _, p := range l.at {
			away := p.Sub(l.at[i])
			l.reaches[i] += math.Sqrt(away.X*away.X + away.Y*away.Y)
		}
	}
	return l.reaches[i]
}

// highest picks by the picture alone.
func (l *layout) highest(places []int, turn Turn) int {
	top := math.Inf(-1)
	for _, i := range places {
		top = math.Max(top, l.at[i].Y)
	}
	level := l.slack
	if l.Regular {
		// The more places made it true, the less error is left in a layout; and
		// on a circle of many, the next place is hardly lower than the top.
		level *= min(1, 20/float64(len(l.at)))
	}
	best := -1
	for _, i := range places {
		if top-l.at[i].Y > level {
			continue
		}
		if best < 0 || (turn == TurnRight) == (l.at[i].X > l.at[best].X) {
			best = i
		}
	}
	return best
}

// alike reports whether two places have the same surroundings: the same distances
// to all other places, within the slack. One distance on each side may lack
// its partner when there are enough others, since a hole may be missing.
func (l *layout) alike(i, j int) bool {
	spare := 0
	if len(l.at) >= 6 {
		spare = 1
	}
	a, b := l.surroundings(i), l.surroundings(j)
	spareA, spareB := spare, spare
	for len(a) > 0 && len(b) > 0 {
		switch d := a[0] - b[0]; {
		case math.Abs(d) <= l.slack:
			a, b = a[1:], b[1:]
		case d < 0 && spareA > 0:
			a, spareA = a[1:], spareA-1
		case d > 0 && spareB > 0:
			b, spareB = b[1:], spareB-1
		default:
			return false
		}
	}
	return len(a) <= spareA && len(b) <= spareB
}

// surroundings are the distances from a place to all others, sorted.
func (l *layout) surroundings(i int) []float64 {
	if l.around == nil {
		l.around = make([][]float64, len(l.at))
	}
	if l.around[i] == nil {
		l.around[i] = geometry.Mapped(l.at, func(p geometry.Point) float64 { return p.Distance(l.at[i]) })
		slices.Sort(l.around[i])
	}
	return l.around[i]
}
