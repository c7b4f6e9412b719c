package trace

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// pair is a direction that the part shows: from hole to hole or along a side.
type pair struct {
	deg    float64 // from -45 to 45: right angles are folded away
	length float64
	weight float64
}

// alignedMm is how far two holes of one row may lie off the level.
const alignedMm = 0.3

// mostStraightened bounds the holes that are looked at: pairs go by the square.
const mostStraightened = 40

// straightTurn returns the turn, in degrees anticlockwise, that lays most rows of
// holes and straight sides level or upright. Of turns that do it equally well it
// takes the smallest. Not found means that no direction stands out.
func straightTurn(holes, outline []geometry.Point) (deg float64, found bool) {
	pairs := append(holePairs(holes), sides(outline)...)
	best, most := 0.0, 0.0
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(math.Abs(a.deg), math.Abs(b.deg)) })
	for _, p := range pairs {
		if s := support(pairs, p.deg); s > 1.05*most {
			best, most = p.deg, s
		}
	}
	if most < leastSupport {
		return 0, false
	}
	for range 3 {
		best = refined(pairs, best)
	}
	return -best, true
}

// leastSupport is three pairs of holes, or a third of a side.
const leastSupport = 3

func holePairs(holes []geometry.Point) []pair {
	spread := make([]geometry.Point, min(len(holes), mostStraightened))
	for i := range spread {
		spread[i] = holes[i*len(holes)/len(spread)]
	}
	var pairs []pair
	for i, a := range spread {
		for _, b := range spread[i+1:] {
			pairs = append(pairs, pair{folded(b.AngleFrom(a)), a.Distance(b), 1})
		}
	}
	return pairs
}

// sides are the straight pieces of the outline that are long enough to tell a
// direction. A whole side counts as ten pairs of holes.
func sides(outline []geometry.Point) []pair {
	around := geometry.Bounds(outline)
	whole := max(around.Width(), around.Height())
	var pairs []pair
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if d := a.Distance(b); d > whole/10 {
			pairs = append(pairs, pair{folded(b.AngleFrom(a)), d, 10 * d / whole})
		}
	}
	return pairs
}

func folded(deg float64) float64 { return math.Remainder(deg, 90) }

// support adds up the pairs that lie level or upright along a direction.
func support(pairs []pair, deg float64) float64 {
	sum := 0.0
	for _, p := range pairs {
		sum += p.weight * p.nearness(deg)
	}
	return sum
}

// nearness is 1 for a pair along the direction and falls to 0 where its ends
// are off by more than alignedMm.
func (p pair) nearness(deg float64) float64 {
	off := p.length * math.Sin(folded(p.deg-deg)*math.Pi/180) / alignedMm
	return math.Exp(-off * off / 2)
}

// refined turns the direction to the mean of the pairs that lie along it. Long
// ones tell it better.
func refined(pairs []pair, deg float64) float64 {
	var sum, weights float64
	for _, p := range pairs {
		w := p.nearness(deg) * p.length * p.length
		sum, weights = sum+w*folded(p.deg-deg), weights+w
	}
	if weights == 0 {
		return deg
	}
	return deg + sum/weights
}
