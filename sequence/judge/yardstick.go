package judge

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
)

// yardstick is what the trade allows on a layout. It follows from the objective
// and from the places, not from any order.
type yardstick struct {
	pull, saddle, outwards              float64
	run, inwards, neighbours, notAcross int
	own                                 Figures // of drawdown's own order, for information only
}

// yardstick returns the limits of the group.
func (w *work) yardstick() yardstick {
	n := len(w.units)
	y := yardstick{
		pull: mostPull, saddle: mostSaddle, outwards: mostOutwards, run: leastRun + 1, inwards: n,
		neighbours: fewNeighbours(n), notAcross: (n - 1) / 3,
		own: w.measure(way.Places(w.given, way.Auto, way.TurnDefault)).Figures,
	}
	switch w.seen.Family {
	case family.Row:
		y.saddle, y.outwards = math.Inf(1), math.Inf(1)
		y.inwards, y.neighbours, y.run = 0, 1, 1
	case family.Grid:
		y.saddle, y.outwards = math.Inf(1), math.Inf(1)
		y.inwards = 0
		y.pull, y.run, y.neighbours = w.roundRings()
	case family.Circle:
		y.outwards = math.Inf(1)
		y.pull, y.saddle = y.pull+pullMissing*float64(w.seen.Missing), y.saddle+float64(w.seen.Missing)
		switch {
		case n%2 == 0: // each has one across, so every second step goes there
			y.run, y.notAcross = leastRun, (n-1)/2
		case n < longestStar: // a star of single places crosses with every step
			y.notAcross = 0
		}
		y.run += w.seen.Missing
	case family.Circles:
		y.outwards, y.inwards = math.Inf(1), 0
	case family.Free:
		y.neighbours = max(y.neighbours, int(strewnShare*float64(n)))
	case family.Flanges:
		y.saddle, y.outwards, y.neighbours = math.Inf(1), math.Inf(1), n
		y.pull, y.run = w.roundFlanges()
	}
	if !w.deep(deepTimes) {
		y.outwards = math.Inf(1)
	}
	return y
}

// fewNeighbours is how many steps may go to a neighbour around a closed layout
// of n places. Of three, all are neighbours.
func fewNeighbours(n int) int {
	if n <= 3 {
		return n
	}
	return max(min(2, (n+1)/3), int(neighboursShare*float64(n-1)))
}

// roundRings returns the figures of a spiral, ring by ring around filled rows:
// the pull of the worst arc, the longest run on one side where one ring ends
// and the next begins, and the steps to a neighbour.
func (w *work) roundRings() (pull float64, run, neighbours int) {
	pull = mostPull
	rings := w.rings()
	for r, ring := range rings {
		round := inRound(ring, w.deg)
		pull = math.Max(pull, w.worstArc(round))
		inner := []int(nil)
		if r > 0 {
			inner = inRound(rings[r-1], w.deg)
			neighbours++ // to the next ring
		}
		run = max(run, w.longestRun(inner, round))
		beside := 0
		for k, i := range round {
			if w.neighbours(i, round[(k+1)%len(round)]) {
				beside++
			}
		}
		neighbours += min(beside, len(round)-1)
	}
	return pull, run, neighbours
}

// worstArc is the greatest pull of consecutive places of a round.
func (w *work) worstArc(round []int) float64 {
	worst := 0.0
	for from := range round {
		var sum geometry.Point
		for k := range round {
			sum = sum.Add(w.Points[round[(from+k)%len(round)]].Sub(w.centroid))
			worst = math.Max(worst, sum.Distance(geometry.Point{})/math.Max(w.reach, 1e-9))
		}
	}
	return worst
}

// longestRun is the largest number of places on one side where one ring ends
// anywhere and the next continues.
func (w *work) longestRun(inner, outer []int) int {
	longest := 0
	for _, start := range append(inner, outer...) {
		within := func(ring []int, from, to float64) (count int) {
			for _, i := range ring {
				if off := geometry.Turn(w.deg[i] - w.deg[start]); off >= from && off < to {
					count++
				}
			}
			return count
		}
		const half = 180 - sideDeg
		longest = max(longest, within(outer, 0, half))
		for _, last := range inner {
			if at := geometry.Turn(w.deg[last] - w.deg[start]); at < half {
				longest = max(longest, within(inner, 0, at+hair)+within(outer, at+hair, half))
			}
		}
	}
	return longest
}

// roundFlanges returns the pull of a pair on the outermost flange, and the run
// of one flange with a pair of the next.
func (w *work) roundFlanges() (pull float64, run int) {
	for _, part := range w.seen.Parts {
		run = max(run, len(part)+2)
	}
	return 2 * mostPull, run
}

// deep reports whether some places are that many times as far out as others, so
// that it matters which come first.
func (w *work) deep(times float64) bool {
	return w.reach > times*slices.Min(geometry.Mapped(w.Points, w.centroid.Distance))
}
