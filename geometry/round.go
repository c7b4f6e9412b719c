package geometry

import (
	"cmp"
	"math"
	"slices"
)

// Round lists points in their round along the edge that they form,
// anticlockwise: the hull, into which the others are put one by one where they
// lengthen the way least (cheapest insertion), then made shorter where two of
// its stretches cross. For points along one edge that is the way along it.
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

// shortest makes a round shorter both ways about, from the point that lies
// furthest out, and takes the better: what comes of it belongs to the points,
// not to how they are listed, turned or mirrored.
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

// from turns a round so that it begins with a point.
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

// way is a closed way through some of the points, and where each of the others
// would lengthen it least.
type way struct {
	points []Point
	next   []int // along the way; -1 for a point that is not in it
	after  []int // of a point that is not in it: the one after which it fits best
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

// fit looks through the whole way for the place of a point.
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

// insert puts the point into the way that lengthens it least.
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
		case w.after[i] == a: // the step that it fitted into is no more
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

// shorten turns stretches of the round about while that makes it shorter
// (2-opt), and says whether it did.
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

// apart returns the distance between two points. Lengths of a part need none of the
// care of math.Hypot, which takes five times as long.
func apart(p, q Point) float64 {
	d := p.Sub(q)
	return math.Sqrt(d.Dot(d))
}
