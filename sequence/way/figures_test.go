package way

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
)

// outlined is a part whose first places follow each other along its edge.
type outlined struct {
	points []geometry.Point
	edge   int
}

// figures are what an order of such a part comes to.
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

// rankCorrelation is Spearman's, ties by their mean rank.
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

// randomOval has 8 to 22 places at uneven steps round a dented ellipse.
func randomOval(r *rand.Rand) outlined {
	n := 8 + r.IntN(15)
	a, b := 100+150*r.Float64(), 60+60*r.Float64()
	p2, p3 := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64()
	d2, d3 := 0.12*r.Float64(), 0.1*r.Float64()
	points := make([]geometry.Point, n)
	// even steps along the edge, then each off by up to a third of a step
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

func median(v []float64) float64 { s := slices.Sorted(slices.Values(v)); return s[len(s)/2] }

type tally struct {
	pull, nb, corr []float64
	run, bad       int
}

func (t *tally) add(f figures) {
	t.pull, t.nb = append(t.pull, f.pull), append(t.nb, f.neighbours)
	if f.ratio > 1.25 {
		t.corr = append(t.corr, f.correlation)
	}
	t.run = max(t.run, f.run)
	if f.run > 2 {
		t.bad++
	}
}

func (t *tally) String() string {
	if len(t.corr) == 0 {
		t.corr = []float64{1}
	}
	return fmt.Sprintf("pull %.2f (max %.2f), neighbours %.0f%%, run %d (%d over 2), corr %.2f (min %.2f)", median(t.pull), slices.Max(t.pull), 100*median(t.nb), t.run, t.bad, median(t.corr), slices.Min(t.corr))
}

func TestFigures(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, kind := range []string{"perimeter", "oval"} {
		for _, off := range []float64{0, 0.1, 0.3} {
			var sum tally
			for range 300 {
				p := randomPerimeter(r)
				if kind == "oval" {
					p = randomOval(r)
				}
				p.points = jittered(p.points, r, off)
				sum.add(p.figures(Places(p.points, Auto, TurnDefault)))
			}
			t.Logf("%s %.0f %%: %s", kind, 100*off, sum.String())
		}
	}
}
