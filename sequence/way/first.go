package way

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// first picks the first place from the candidates: the one nearest the centre.
// Ties go to the highest in the picture, then to the furthest left (furthest
// right for turn right, so that a mirrored part gives the mirrored order).
func (l *layout) first(candidates []int, turn Turn) int {
	return l.highest(l.tiedFor(candidates), turn)
}

// tiedFor returns the places nearest the centre that tie. In a regular layout,
// places tie if they are equally near. In others they tie only if they cannot
// be told apart on the part itself, so that the picture decides only what the
// part cannot.
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

// levelRadius is how much two distances from the centre may differ and still
// tie. A regular layout is exact except for the residual of the fit. One
// recognized loosely is only as exact as its measurements.
func (l *layout) levelRadius() float64 {
	switch {
	case !l.Regular:
		return l.slack
	case l.seen.OffMm <= l.slack:
		return l.slack / 3
	}
	return geometry.LooseShare * l.spacing
}

// closer compares the distances from the centre. If these are equal except for
// rounding, it compares the sums of the distances to all other places. Both
// depend on the part and not on the picture.
func (l *layout) closer(i, j int) bool {
	dust := 1e-9 * (l.spacing + l.radius[j])
	if d := l.radius[i] - l.radius[j]; math.Abs(d) > dust {
		return d < 0
	}
	return l.reach(i) < l.reach(j)-dust
}

// reach is the sum of the distances from a place to all others. On a circle all
// places tie, so each is asked for many times. It avoids math.Hypot, whose
// protection against overflow is not needed here and takes five times as long.
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

// highest picks by position in the picture.
func (l *layout) highest(places []int, turn Turn) int {
	top := math.Inf(-1)
	for _, i := range places {
		top = math.Max(top, l.at[i].Y)
	}
	level := l.slack
	if l.Regular {
		// The more places a layout was fitted to, the smaller its error; and on
		// a circle of many, the next place is hardly lower than the top.
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

// alike reports whether two places have the same surroundings: the same
// distances to all other places, within the slack. With enough places, one
// distance on each side may be unmatched, since a hole may be missing.
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

// surroundings are the sorted distances from a place to all others.
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
