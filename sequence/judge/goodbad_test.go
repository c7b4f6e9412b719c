package judge_test

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/sequence/judge"
)

// Rules for making orders, written before the judge was tested on them. Common
// practice, no source, unless one is named.
//
// Good: the cross-pattern of ASME PCC-1 from any bolt, in either direction;
// four crosswise and then around (PCC-1, appendix F, value from memory); by
// quarters; 1-4-3-6-5-2 on six; filled rows ring by ring, in either direction;
// columns from the middle; rows from the middle, on alternate sides; on pans,
// covers and ovals, among the half nearest to the middle, always the one that
// best balances what is tight; concentric circles star by star, the inner
// first.
//
// Bad: once around nine or more; marching pairs on eight or more; two opposite
// quarters before the others; one half before the other; from the outside
// inwards; heads by rows from a corner; rows from end to end; concentric
// circles with the outer first, or once around each.
//
// Each is made on a random part, some with measuring errors.

type made struct {
	rule   string
	points []geometry.Point
	order  []int
}

type maker func(r *rand.Rand) made

var goodOrders = []maker{
	func(r *rand.Rand) made {
		n := []int{8, 12, 16, 24}[r.IntN(4)]
		return made{"cross-pattern", bolts(n, r), fromAnyBolt(crossPattern(n), n, r)}
	},
	func(r *rand.Rand) made {
		n := 4 * (2 + r.IntN(5))
		return made{"four and then round, circle", bolts(n, r), fromAnyBolt(fourAndRound(n), n, r)}
	},
	func(r *rand.Rand) made {
		p := ring(9+r.IntN(10), r)
		return made{"four and then round, oval", p, fromAnyBolt(fourAndRound(len(p)), len(p), r)}
	},
	func(r *rand.Rand) made {
		n := 4 * (2 + r.IntN(4))
		return made{"round the quarters", bolts(n, r), fromAnyBolt(roundQuarters(n), n, r)}
	},
	func(r *rand.Rand) made {
		return made{"1-4-3-6-5-2", bolts(6, r), fromAnyBolt([]int{0, 3, 2, 5, 4, 1}, 6, r)}
	},
	func(r *rand.Rand) made {
		columns, rows := 3+r.IntN(5), 2+r.IntN(3)
		p := geometry.Grid(columns, rows, 70+40*r.Float64(), 60+40*r.Float64(), geometry.Point{X: 9, Y: 5})
		return made{"ring by ring", p, ringByRing(p, columns, rows, r.IntN(2) == 0)}
	},
	func(r *rand.Rand) made {
		columns := 3 + r.IntN(5)
		p := geometry.Grid(columns, 2, 80, 60+30*r.Float64(), geometry.Point{X: 9, Y: 5})
		var order []int
		for _, c := range fromTheMiddle(columns) {
			order = append(order, c, c+columns)
		}
		return made{"columns from the middle", p, order}
	},
	func(r *rand.Rand) made {
		n := 4 + r.IntN(8)
		return made{"row from the middle", geometry.Row(n, 60, geometry.Point{X: 2, Y: 7}, 360*r.Float64()), fromTheMiddle(n)}
	},
	func(r *rand.Rand) made {
		p := pan(r)
		return made{"pan, balanced", p, balanced(p)}
	},
	func(r *rand.Rand) made {
		p := ring(8+r.IntN(15), r)
		return made{"oval, balanced", p, balanced(p)}
	},
	func(r *rand.Rand) made {
		in, out := 4*(1+r.IntN(3)), 8+4*r.IntN(3)
		p := slices.Concat(geometry.Circle(in, 140, geometry.Point{}, 360*r.Float64(), true), geometry.Circle(out, 320, geometry.Point{}, 360*r.Float64(), true))
		order := crossPattern(in)
		for _, k := range crossPattern(out) {
			order = append(order, in+k)
		}
		return made{"star by star", p, order}
	},
}

var badOrders = []maker{
	func(r *rand.Rand) made {
		n := 9 + r.IntN(16)
		return made{"once round, circle", bolts(n, r), fromAnyBolt(inOrder(n), n, r)}
	},
	func(r *rand.Rand) made {
		p := ring(9+r.IntN(14), r)
		return made{"once round, oval", p, fromAnyBolt(inOrder(len(p)), len(p), r)}
	},
	func(r *rand.Rand) made {
		p := pan(r)
		return made{"once round, pan", p, fromAnyBolt(inOrder(len(p)), len(p), r)}
	},
	func(r *rand.Rand) made {
		n := 2 * (4 + r.IntN(8))
		return made{"marching pairs, circle", bolts(n, r), fromAnyBolt(marchingPairs(n), n, r)}
	},
	func(r *rand.Rand) made {
		p := ring(2*(5+r.IntN(6)), r)
		return made{"marching pairs, oval", p, fromAnyBolt(marchingPairs(len(p)), len(p), r)}
	},
	func(r *rand.Rand) made {
		n := 4 * (2 + r.IntN(5))
		return made{"two opposite quarters, circle", bolts(n, r), fromAnyBolt(oppositeQuarters(n), n, r)}
	},
	func(r *rand.Rand) made {
		p := ring(4*(3+r.IntN(3)), r)
		return made{"two opposite quarters, oval", p, fromAnyBolt(oppositeQuarters(len(p)), len(p), r)}
	},
	func(r *rand.Rand) made {
		columns := 4 + r.IntN(4)
		p := geometry.Grid(columns, 2, 85, 70, geometry.Point{})
		order := inOrder(2 * columns)
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(p[a].X, p[b].X) })
		return made{"one half of a head first", p, order}
	},
	func(r *rand.Rand) made {
		columns, rows := 3+r.IntN(4), 2+r.IntN(2)
		return made{"head by rows", geometry.Grid(columns, rows, 85, 70, geometry.Point{}), inOrder(columns * rows)}
	},
	func(r *rand.Rand) made {
		columns := 3 + r.IntN(4)
		p := geometry.Grid(columns, 2, 85, 70, geometry.Point{})
		return made{"head from the outside", p, reversed(ringByRing(p, columns, 2, true))}
	},
	func(r *rand.Rand) made {
		p := pan(r)
		return made{"pan from the outside", p, reversed(balanced(p))}
	},
	func(r *rand.Rand) made {
		n := 5 + r.IntN(7)
		return made{"row from end to end", geometry.Row(n, 60, geometry.Point{}, 360*r.Float64()), inOrder(n)}
	},
	func(r *rand.Rand) made {
		in, out := 4+r.IntN(6), 8+r.IntN(8)
		p := slices.Concat(geometry.Circle(in, 140, geometry.Point{}, 30, true), geometry.Circle(out, 320, geometry.Point{}, 90, true))
		if r.IntN(2) == 0 {
			return made{"once round each of two circles", p, inOrder(in + out)}
		}
		order := reversed(inOrder(in + out))
		return made{"outer circle first", p, order}
	},
}

// Right verdicts on 95 % each of 200 good and 200 bad orders, as a technician
// would expect from an instructor.
func TestGoodAndBadOrders(t *testing.T) {
	t.Parallel()
	const orders, atLeast = 200, 0.95
	for _, kind := range []struct {
		name   string
		makers []maker
		right  bool
	}{{"good", goodOrders, true}, {"bad", badOrders, false}} {
		r := rand.New(rand.NewPCG(20, 26))
		hits, sound := 0, 0
		missed := map[string]int{}
		for k := range orders {
			m := kind.makers[k%len(kind.makers)](r)
			report := judged(m.points, m.order)
			if report.Verdict == judge.Sound {
				sound++
			}
			if report.Verdict.Right() == kind.right {
				hits++
				continue
			}
			missed[fmt.Sprintf("%s: %q", m.rule, words(report))]++
		}
		t.Logf("%s: %d of %d right, %d called sound", kind.name, hits, orders, sound)
		if float64(hits) < atLeast*orders {
			t.Errorf("%s: only %d of %d right", kind.name, hits, orders)
		}
		for what, n := range missed {
			t.Logf("  missed %d × %s", n, what)
		}
	}
}

func bolts(n int, r *rand.Rand) []geometry.Point {
	return measuredOff(geometry.Circle(n, 200+200*r.Float64(), geometry.Point{X: 5, Y: -3}, 360*r.Float64(), true), r)
}

// ring is an oval with n unevenly spaced places.
func ring(n int, r *rand.Rand) []geometry.Point {
	a, b, dent, at := 110+120*r.Float64(), 70+50*r.Float64(), 0.1*r.Float64(), 2*math.Pi*r.Float64()
	const fine = 1440
	outline := make([]geometry.Point, fine)
	length := make([]float64, fine+1)
	for k := range fine {
		t := -2 * math.Pi * float64(k) / fine
		f := 1 + dent*math.Cos(3*t+at)
		outline[k] = geometry.Point{X: a * f * math.Cos(t), Y: b * f * math.Sin(t)}
		if k > 0 {
			length[k] = length[k-1] + outline[k].Distance(outline[k-1])
		}
	}
	length[fine] = length[fine-1] + outline[0].Distance(outline[fine-1])
	points := make([]geometry.Point, n)
	for k := range points {
		want := length[fine] * (float64(k) + 0.2*r.Float64()) / float64(n)
		i, _ := slices.BinarySearch(length, want)
		points[k] = outline[i%fine]
	}
	return points
}

func pan(r *rand.Rand) []geometry.Point {
	columns, rows := 4+r.IntN(4), 1+r.IntN(3)
	pitch := 50 + 30*r.Float64()
	p := geometry.Rectangle(columns, rows, pitch*float64(columns-1), pitch*float64(rows+1), geometry.Point{X: 3, Y: 8})
	return measuredOff(p, r)
}

// crossPattern is the rule of ASME PCC-1, Table 4, for multiples of four:
// quarters, their starts by halves.
func crossPattern(n int) []int {
	starts := []int{0}
	for step := n / 4; len(starts) < n/4; {
		half := step / 2
		if step%2 == 1 { // with an odd count the starts are taken one by one
			starts = inOrder(n / 4)
			break
		}
		var more []int
		for _, s := range starts {
			more = append(more, s, s+half)
		}
		starts, step = more, half
	}
	var order []int
	for _, s := range starts {
		order = append(order, s, s+n/2, s+n/4, s+3*n/4)
	}
	return order
}

func fourAndRound(n int) []int {
	order := []int{0, n / 2, n / 4, (3*n + 2) / 4}
	for k := range n {
		if !slices.Contains(order[:4], k) {
			order = append(order, k)
		}
	}
	return order
}

func roundQuarters(n int) []int {
	var order []int
	for k := range n / 4 {
		start := k
		if n/4 == 4 {
			start = []int{0, 2, 1, 3}[k]
		}
		for quarter := range 4 {
			order = append(order, start+quarter*n/4)
		}
	}
	return order
}

func marchingPairs(n int) []int {
	var order []int
	for k := range n / 2 {
		order = append(order, k, k+n/2)
	}
	return order
}

func oppositeQuarters(n int) []int {
	var order []int
	for _, quarter := range []int{0, 2, 1, 3} {
		for k := range n / 4 {
			order = append(order, quarter*n/4+k)
		}
	}
	return order
}

// fromAnyBolt begins at any place of a round, in either direction.
func fromAnyBolt(order []int, n int, r *rand.Rand) []int {
	first, sense := r.IntN(n), 1-2*r.IntN(2)
	out := make([]int, len(order))
	for k, i := range order {
		out[k] = ((sense*i+first)%n + n) % n
	}
	return out
}

func fromTheMiddle(n int) []int {
	order := inOrder(n)
	middle := float64(n-1) / 2
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(math.Abs(float64(a)-middle), math.Abs(float64(b)-middle))
	})
	return order
}

// ringByRing goes around filled rows ring by ring, each from where the last
// ended.
func ringByRing(p []geometry.Point, columns, rows int, left bool) []int {
	number := func(i int) int {
		c, r := 2*(i%columns)-(columns-1), 2*(i/columns)-(rows-1)
		return max(c, -c, r, -r)
	}
	middle := geometry.Centroid(p)
	var order []int
	last := 90.0
	for n := 0; len(order) < len(p); n++ {
		var ring []int
		for i := range p {
			if number(i) == n {
				ring = append(ring, i)
			}
		}
		ahead := func(i int) float64 {
			deg := geometry.Turn(p[i].AngleFrom(middle) - last - 1)
			if !left {
				deg = geometry.Turn(last - 1 - p[i].AngleFrom(middle))
			}
			return deg
		}
		slices.SortStableFunc(ring, func(a, b int) int { return cmp.Compare(ahead(a), ahead(b)) })
		order = append(order, ring...)
		if len(ring) > 0 && n > 0 {
			last = p[ring[len(ring)-1]].AngleFrom(middle)
		}
	}
	return order
}

// balanced takes, among the half nearest to the middle, always the place that
// keeps the vector sum of those tight smallest.
func balanced(p []geometry.Point) []int {
	middle := geometry.Centroid(p)
	rest := inOrder(len(p))
	slices.SortStableFunc(rest, func(a, b int) int { return cmp.Compare(p[a].Distance(middle), p[b].Distance(middle)) })
	var sum geometry.Point
	var order []int
	for len(rest) > 0 {
		best := 0
		for k, i := range rest[:(len(rest)+1)/2] {
			if sum.Add(p[i].Sub(middle)).Distance(geometry.Point{}) < sum.Add(p[rest[best]].Sub(middle)).Distance(geometry.Point{})-1e-9 {
				best = k
			}
		}
		sum = sum.Add(p[rest[best]].Sub(middle))
		order = append(order, rest[best])
		rest = slices.Delete(rest, best, best+1)
	}
	return order
}
