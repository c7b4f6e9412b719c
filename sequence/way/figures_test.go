package way

import (
	"cmp"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
)

// outlined is a part whose first places are in order along its edge.
type outlined struct {
	points []geometry.Point
	edge   int
}

// figures are the figures of an order of such a part.
type figures struct {
	pull, neighbours, correlation, ratio float64
	run                                  int
}

func (p outlined) figures(order []int) figures {
	c := geometry.Centroid(p.points)
	var f figures
	reach, near := 0.0, math.Inf(1)
	dist := make([]float64, len(p.points))
	for i, q := range p.points {
		dist[i] = q.Distance(c)
		reach, near = math.Max(reach, dist[i]), math.Min(near, dist[i])
	}
	f.ratio = reach / near
	var sum geometry.Point
	run := 1
	f.run = 1
	for k, i := range order {
		sum = sum.Add(p.points[i].Sub(c))
		f.pull = math.Max(f.pull, sum.Distance(geometry.Point{})/reach)
		if k == 0 {
			continue
		}
		if p.adjacent(i, order[k-1]) {
			f.neighbours++
			run++
		} else {
			run = 1
		}
		f.run = max(f.run, run)
	}
	f.neighbours /= float64(len(order) - 1)
	f.correlation = rankCorrelation(order, dist)
	return f
}

func (p outlined) adjacent(a, b int) bool {
	if a >= p.edge || b >= p.edge {
		return false
	}
	d := (a - b + p.edge) % p.edge
	return d == 1 || d == p.edge-1
}

// rankCorrelation is Spearman's, with mean ranks for ties.
func rankCorrelation(order []int, dist []float64) float64 {
	n := len(order)
	sorted := slices.Clone(order)
	slices.SortStableFunc(sorted, func(a, b int) int { return cmp.Compare(dist[a], dist[b]) })
	rank := make([]float64, n)
	for from := 0; from < n; {
		to := from + 1
		for to < n && dist[sorted[to]]-dist[sorted[from]] < 1e-9*(1+dist[sorted[from]]) {
			to++
		}
		for k := from; k < to; k++ {
			rank[sorted[k]] = float64(from+to-1) / 2
		}
		from = to
	}
	mean := float64(n-1) / 2
	var sxy, sxx, syy float64
	for k, i := range order {
		x, y := float64(k)-mean, rank[i]-mean
		sxy, sxx, syy = sxy+x*y, sxx+x*x, syy+y*y
	}
	return sxy / math.Sqrt(math.Max(sxx*syy, 1e-12))
}

func jittered(points []geometry.Point, r *rand.Rand, share float64) []geometry.Point {
	spacing := geometry.Spacing(points)
	return moved(points, func(p geometry.Point) geometry.Point {
		return geometry.Point{X: p.X + share*spacing*(2*r.Float64()-1), Y: p.Y + share*spacing*(2*r.Float64()-1)}
	})
}

// randomPerimeter is a pan of 10 to 20 places.
func randomPerimeter(r *rand.Rand) outlined {
	columns := 3 + r.IntN(5)
	rows := 1 + r.IntN(3)
	for 2*(columns+rows) < 10 || 2*(columns+rows) > 20 {
		columns, rows = 3+r.IntN(5), 1+r.IntN(4)
	}
	pitch := 40 + 30*r.Float64()
	height := pitch * float64(rows+1) * (0.8 + 0.4*r.Float64())
	points := geometry.Rectangle(columns, rows, pitch*float64(columns-1), height, geometry.Point{X: 20, Y: 9})
	return outlined{points, len(points)}
}

// randomOval has 8 to 22 unevenly spaced places around a dented ellipse.
func randomOval(r *rand.Rand) outlined {
	n := 8 + r.IntN(15)
	a, b := 100+150*r.Float64(), 60+60*r.Float64()
	p2, p3 := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64()
	d2, d3 := 0.12*r.Float64(), 0.1*r.Float64()
	points := make([]geometry.Point, n)
	// even steps along the edge, then each moved by up to a third of a step
	const fine = 720
	at := func(t float64) geometry.Point {
		k := 1 + d2*math.Cos(2*t+p2) + d3*math.Cos(3*t+p3)
		return geometry.Point{X: a * k * math.Cos(t), Y: b * k * math.Sin(t)}
	}
	length := make([]float64, fine+1)
	for i := 1; i <= fine; i++ {
		length[i] = length[i-1] + at(2*math.Pi*float64(i)/fine).Distance(at(2*math.Pi*float64(i-1)/fine))
	}
	for k := range points {
		want := length[fine] * (float64(k) + 0.35*(2*r.Float64()-1)) / float64(n)
		want = math.Mod(want+length[fine], length[fine])
		i, _ := slices.BinarySearch(length, want)
		points[k] = at(2 * math.Pi * float64(i) / fine)
	}
	return outlined{points, n}
}

func median(v []float64) float64 {
	sorted := slices.Sorted(slices.Values(v))
	return sorted[len(sorted)/2]
}

// tally collects the figures of many parts.
type tally struct {
	pull, neighbours, correlation []float64
	run                           int
}

func (t *tally) add(f figures) {
	t.pull, t.neighbours = append(t.pull, f.pull), append(t.neighbours, f.neighbours)
	if f.ratio > 1.25 {
		t.correlation = append(t.correlation, f.correlation)
	}
	t.run = max(t.run, f.run)
}

// dShape has a straight side and a curved one, triangle has three sides; each
// place is moved by up to a third of a step along the edge.
func dShape(r *rand.Rand) outlined {
	n, radius := 9+r.IntN(8), 80+60*r.Float64()
	var outline []geometry.Point
	for deg := -90.0; deg <= 90; deg++ {
		outline = append(outline, geometry.Polar(geometry.Point{}, radius, deg))
	}
	return stepped(outline, n, r)
}

func triangle(r *rand.Rand) outlined {
	n := 6 + r.IntN(9)
	return stepped([]geometry.Point{{X: 0, Y: 100 + 60*r.Float64()}, {X: -90 - 50*r.Float64(), Y: -70}, {X: 100 + 50*r.Float64(), Y: -90}}, n, r)
}

// timingCover is tall, and wider at one end.
func timingCover(r *rand.Rand) outlined {
	n, top, waist := 10+r.IntN(9), 45+30*r.Float64(), 35+30*r.Float64()
	return stepped([]geometry.Point{{X: top, Y: 170}, {X: -top, Y: 170}, {X: -waist, Y: 20}, {X: -100, Y: -90}, {X: -80, Y: -160}, {X: 80, Y: -160}, {X: 100, Y: -90}, {X: waist, Y: 20}}, n, r)
}

func stepped(outline []geometry.Point, n int, r *rand.Rand) outlined {
	fine := make([]geometry.Point, 0, 1200)
	for k, a := range outline {
		b := outline[(k+1)%len(outline)]
		steps := max(1, int(a.Distance(b)))
		for s := range steps {
			fine = append(fine, a.Add(b.Sub(a).Scale(float64(s)/float64(steps))))
		}
	}
	points := make([]geometry.Point, n)
	for k := range points {
		at := (float64(k) + 0.3*(2*r.Float64()-1)) / float64(n) * float64(len(fine))
		points[k] = fine[(int(at)+len(fine))%len(fine)]
	}
	return outlined{points, n}
}

// Common practice, no source: the figures of a practitioner's order. A greedy
// choice, among the half nearest to the centre, of the place that keeps the
// vector sum smallest has a pull of 0.9 to 1.0, 0 to 5 % neighbours and a
// correlation of 0.95.
func TestFiguresOfRandomParts(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 2))
	kinds := map[string]func(*rand.Rand) outlined{
		"perimeter": randomPerimeter, "oval": randomOval, "D": dShape, "triangle": triangle, "timing cover": timingCover,
	}
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		var regular tally
		for _, off := range []float64{0, 0.1, 0.3} {
			var sum tally
			for range testkit.Samples(20, 200) {
				p := kinds[kind](r)
				p.points = jittered(p.points, r, off)
				sum.add(p.figures(Places(p.points, Auto, TurnDefault)))
			}
			if off == 0 {
				regular = sum
			}
			pull, neighbours, correlation := median(sum.pull), median(sum.neighbours), median(append(sum.correlation, 1))
			t.Logf("%-12s %2.0f %% off: pull %.2f (most %.2f), neighbours %.1f %%, run %d, correlation %.2f", kind, 100*off,
				pull, slices.Max(sum.pull), 100*neighbours, sum.run, correlation)
			if pull > 1.2 || neighbours > 0.1 || sum.run > 3 || correlation < 0.8 {
				t.Errorf("%s, %g off", kind, off)
			}
			if pull > 1.1*median(regular.pull) {
				t.Errorf("%s, %g off: the pull is more than a tenth above that of the regular ones", kind, off)
			}
		}
	}
}

// Common practice, no source: concentric circles go star by star, the inner
// first.
func TestNestedCirclesGoStarByStar(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(8, 3))
	for range testkit.Samples(60, 200) {
		inner, outer := 4+r.IntN(9), 6+r.IntN(13)
		in := geometry.Circle(inner, 140, geometry.Point{X: 9, Y: 4}, 360*r.Float64(), true)
		out := geometry.Circle(outer, 240+120*r.Float64(), geometry.Point{X: 9, Y: 4}, 360*r.Float64(), true)
		order := Places(jittered(slices.Concat(in, out), r, 0.02), Auto, TurnDefault)
		for k, i := range order {
			if (k < inner) != (i < inner) {
				t.Fatalf("circles of %d and %d: %v", inner, outer, order)
			}
		}
		isStar(t, order[:inner], 0)
		isStar(t, order[inner:], inner)
	}
}

// isStar compares places, numbered clockwise from before, with the
// cross-pattern.
func isStar(t *testing.T, order []int, before int) {
	t.Helper()
	n := len(order)
	for k, step := range starPlaces(n) {
		if order[k]-before != (order[0]-before+step)%n {
			t.Fatalf("%v is no star", order)
		}
	}
}
