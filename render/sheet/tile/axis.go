package tile

import (
	"math"

	"drawdown/render/scene"
)

// axis is one direction in which sheets follow one another: where the cut edges
// may be, and what a cut there damages.
type axis struct {
	low, high float64 // of the drawing, with a margin
	window    float64
	from      float64   // first possible cut; the next are cutStep apart
	spoils    []float64 // at each position
	laps      []float64 // at each position: the least overlap so that everything cut is whole on the next sheet
	widest    float64   // of the pieces
}

// stop is an interval of an axis that a cut should avoid.
type stop struct {
	from, to float64
	spoils   float64
	whole    bool // of a piece: the sheet below must show all of it
}

// Cost of a cut through a word, a word that may still move, a spot, a line.
const (
	spoilsWord   = 1000.0
	spoilsLabel  = 10.0
	spoilsSpot   = 30.0
	spoilsLine   = 3.0
	cutStep      = 0.5
	leastVisible = 10.0   // of a sheet between two cuts
	unevenness   = 0.0001 // per square millimetre of deviation from equal shares
)

func newAxis(low, high, window float64, stops []stop) axis {
	a := axis{low: low, high: high, window: window, from: math.Floor(low/cutStep) * cutStep, widest: leastOverlap}
	n := int((high-a.from)/cutStep) + 2
	a.spoils, a.laps = make([]float64, n), make([]float64, n)
	for k := range a.laps {
		a.laps[k] = leastOverlap
	}
	for _, s := range stops {
		if s.whole {
			a.widest = math.Max(a.widest, s.to-s.from+0.1)
		}
		for k := max(0, a.index(s.from)); k < n && a.place(k) < s.to; k++ {
			if a.place(k) <= s.from {
				continue
			}
			a.spoils[k] += s.spoils
			if s.whole {
				a.laps[k] = math.Max(a.laps[k], a.place(k)-s.from+0.1)
			}
		}
	}
	// A piece larger than a sheet is whole on none, and is reported.
	most := 0.7 * window
	a.widest = math.Min(a.widest, most)
	for k := range a.laps {
		a.laps[k] = math.Min(a.laps[k], most)
	}
	return a
}

func (a axis) place(k int) float64     { return a.from + cutStep*float64(k) }
func (a axis) index(place float64) int { return int(math.Floor((place - a.from) / cutStep)) }
func (a axis) sheets(lap float64) float64 {
	if a.high-a.low <= a.window {
		return 1
	}
	return math.Ceil((a.high - a.low - lap) / (a.window - lap))
}

// cuts chooses the cuts between sheets that damage least: with the fewest
// sheets, or a few more if that is better. An overlap as wide as the widest
// piece would need no more.
func (a axis) cuts() []float64 {
	var best []float64
	least := math.Inf(1)
	for n := int(a.sheets(leastOverlap)); n <= int(a.sheets(a.widest)); n++ {
		cuts, spoilt, ok := a.share(n)
		if ok && spoilt < least {
			best, least = cuts, spoilt
		}
		if least == 0 {
			break
		}
	}
	return best
}

type choice struct {
	cost   float64
	before int // the previous cut, as an index of the stage before
}

// share finds the best cuts for a number of sheets by dynamic programming: from
// the first cut to the last, the best way to each position.
func (a axis) share(n int) (cuts []float64, spoilt float64, ok bool) {
	if n == 1 {
		return nil, 0, true
	}
	reach := a.window - leastOverlap
	firsts, stages := make([]int, n), make([][]choice, n)
	for k := 1; k < n; k++ {
		first := max(1, a.index(a.high-reach*float64(n-k)))
		last := min(len(a.spoils)-1, a.index(a.low+a.window+reach*float64(k-1)))
		even := a.low + (a.high-a.low)*float64(k)/float64(n)
		firsts[k] = first
		for i := first; i <= last; i++ {
			c := a.come(stages[k-1], firsts[k-1], i, k == 1)
			off := a.place(i) - even
			c.cost += a.spoils[i] + unevenness*off*off
			stages[k] = append(stages[k], c)
		}
	}
	last, cost := -1, math.Inf(1)
	for i, c := range stages[n-1] {
		at := firsts[n-1] + i
		if c.cost < cost && a.high <= a.place(at)+a.window-a.laps[at] {
			last, cost = i, c.cost
		}
	}
	if last < 0 {
		return nil, 0, false
	}
	cuts = make([]float64, n-1)
	for k := n - 1; k > 0; k-- {
		cuts[k-1] = a.place(firsts[k] + last)
		spoilt += a.spoils[firsts[k]+last]
		last = stages[k][last].before
	}
	return cuts, spoilt, true
}

func (a axis) come(stage []choice, first, i int, firstCut bool) choice {
	if firstCut {
		if a.place(i) > a.low+a.window {
			return choice{cost: math.Inf(1)}
		}
		return choice{}
	}
	best := choice{cost: math.Inf(1)}
	for k, c := range stage {
		at := first + k
		if c.cost < best.cost && a.place(i) <= a.place(at)+a.window-a.laps[at] && a.place(i) >= a.place(at)+leastVisible {
			best = choice{c.cost, k}
		}
	}
	return best
}

// starts returns where the window of each sheet begins. A window ends at its
// cut; the last one is half way between the least it must show and the most.
func (a axis) starts(cuts []float64) []float64 {
	if len(cuts) == 0 {
		return []float64{scene.Rounded((a.low + a.high - a.window) / 2)}
	}
	var starts []float64
	for _, c := range cuts {
		starts = append(starts, scene.Rounded(c-a.window))
	}
	last := cuts[len(cuts)-1]
	lap := leastOverlap
	if k := a.index(last); k >= 0 && k < len(a.laps) {
		lap = a.laps[k]
	}
	spare := math.Max(0, a.window-lap-(a.high-last))
	return append(starts, scene.Rounded(last-lap-spare/2))
}
