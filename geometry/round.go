package geometry

import (
	"cmp"
	"math"
	"slices"
)

// Round orders points along the edge that they form, anticlockwise. It starts
// from the hull, inserts the other points one by one where they lengthen the
// path least (cheapest insertion), then shortens the path where two stretches
// cross. For points along one edge the result is the path along it.
func Round(points []Point) []int {
	if len(points) < 4 {
		middle := Centroid(points)
		return Sorted(len(points), func(i int) float64 { return points[i].AngleFrom(middle) })
	}
	w := newWay(points)
	for w.left > 0 {
		w.insert()
	}
	return shortest(points, w.round())
}

// shortest shortens a round in both directions, from the point furthest out,
// and returns the better result. The result depends only on the points, not on
// how they are listed, turned or mirrored.
func shortest(points []Point, round []int) []int {
	start, c := round[0], Centroid(points)
	furthest := slices.MaxFunc(round, func(a, b int) int { return cmp.Compare(points[a].Distance(c), points[b].Distance(c)) })
	from(round, furthest)
	back := slices.Clone(round)
	slices.Reverse(back[1:])
	if shorten(points, round) {
		shorten(points, back)
		if lengthOf(points, back) < lengthOf(points, round)*(1-1e-9) {
			slices.Reverse(back)
			round = back
		}
	}
	from(round, start)
	return round
}

// from rotates a round so that it begins with a point.
func from(round []int, start int) {
	k := slices.Index(round, start)
	copy(round, append(slices.Clone(round[k:]), round[:k]...))
}

func lengthOf(points []Point, round []int) (length float64) {
	for k, i := range round {
		length += points[i].Distance(points[round[(k+1)%len(round)]])
	}
	return length
}

// way is a closed path through some of the points. For each of the others it
// records where that point would lengthen the path least.
type way struct {
	points []Point
	next   []int // along the path; −1 for a point not in it
	after  []int // for a point not in it: the point after which it fits best
	longer []float64
	start  int
	left   int
}

func newWay(points []Point) *way {
	n := len(points)
	w := &way{points: points, next: make([]int, n), after: make([]int, n), longer: make([]float64, n)}
	for i := range w.next {
		w.next[i] = -1
	}
	at := Mapped(Hull(points), func(corner Point) int { return slices.Index(points, corner) })
	for k, i := range at {
		w.next[i] = at[(k+1)%len(at)]
	}
	w.start, w.left = at[0], n-len(at)
	for i := range points {
		if w.next[i] < 0 {
			w.fit(i)
		}
	}
	return w
}

// fit searches the whole path for the best position of a point.
func (w *way) fit(i int) {
	w.longer[i] = math.Inf(1)
	for a, from := w.start, true; from || a != w.start; a, from = w.next[a], false {
		w.fitAfter(i, a)
	}
}

func (w *way) fitAfter(i, a int) {
	p, q, r := w.points[a], w.points[i], w.points[w.next[a]]
	if d := apart(p, q) + apart(q, r) - apart(p, r); d < w.longer[i]*(1-1e-9) {
		w.longer[i], w.after[i] = d, a
	}
}

// insert adds the point that lengthens the path least.
func (w *way) insert() {
	best := -1
	for i := range w.points {
		if w.next[i] < 0 && (best < 0 || w.longer[i] < w.longer[best]*(1-1e-9)) {
			best = i
		}
	}
	a := w.after[best]
	w.next[best], w.next[a] = w.next[a], best
	w.left--
	for i := range w.points {
		switch {
		case w.next[i] >= 0:
		case w.after[i] == a: // the step it fitted into is gone
			before := w.longer[i]
			w.longer[i] = math.Inf(1)
			w.fitAfter(i, a)
			w.fitAfter(i, best)
			if w.longer[i] > before {
				w.fit(i)
			}
		default:
			w.fitAfter(i, a)
			w.fitAfter(i, best)
		}
	}
}

func (w *way) round() []int {
	round := []int{w.start}
	for i := w.next[w.start]; i != w.start; i = w.next[i] {
		round = append(round, i)
	}
	return round
}

// shorten reverses stretches of the round while that makes it shorter (2-opt),
// and reports whether it did.
func shorten(points []Point, round []int) (changed bool) {
	n := len(round)
	for better, pass := true, 0; better && pass < 10; pass++ {
		better = false
		for a := 0; a < n-2; a++ {
			for b := a + 2; b < n; b++ {
				p, q := points[round[a]], points[round[a+1]]
				r, s := points[round[b]], points[round[(b+1)%n]]
				now, other := apart(p, q)+apart(r, s), apart(p, r)
				if other < now && other+apart(q, s) < now*(1-1e-9) {
					slices.Reverse(round[a+1 : b+1])
					better, changed = true, true
				}
			}
		}
	}
	return changed
}

// apart returns the distance between two points. It takes a fifth of the time
// of math.Hypot, whose protection against overflow is not needed here.
func apart(p, q Point) float64 {
	d := p.Sub(q)
	return math.Sqrt(d.Dot(d))
}
