package way

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"drawdown/geometry"
	"drawdown/render/stopwatch"
)

// sized is a kind of part with a variable number of fasteners.
type sized struct {
	name string
	of   func(n int) []geometry.Point
}

var sizedParts = []sized{
	{"filled grid", func(n int) []geometry.Point {
		rows := int(math.Sqrt(float64(n)))
		for n%rows != 0 {
			rows--
		}
		return geometry.Grid(n/rows, rows, 60, 55, geometry.Point{})
	}},
	{"perimeter", func(n int) []geometry.Point {
		return geometry.Rectangle(n/3, n/2-n/3, 20*float64(n), 9*float64(n), geometry.Point{})
	}},
	{"oval", func(n int) []geometry.Point {
		return moved(geometry.Circle(n, 20*float64(n), geometry.Point{}, 90, true), func(p geometry.Point) geometry.Point {
			return geometry.Point{X: p.X, Y: 0.6 * p.Y}
		})
	}},
	{"circle", func(n int) []geometry.Point { return geometry.Circle(n, 20*float64(n), geometry.Point{}, 90, true) }},
	{"circles", func(n int) []geometry.Point {
		inner := 2 * n / 5
		return slices.Concat(geometry.Circle(inner, 20*float64(inner), geometry.Point{}, 90, true),
			geometry.Circle(n-inner, 20*float64(n-inner), geometry.Point{}, 75, true))
	}},
	{"row", func(n int) []geometry.Point { return geometry.Row(n, 60, geometry.Point{}, 0) }},
	{"two flanges", func(n int) []geometry.Point {
		return slices.Concat(geometry.Circle(n/2, 20*float64(n), geometry.Point{X: -15 * float64(n)}, 90, true),
			geometry.Circle(n-n/2, 20*float64(n), geometry.Point{X: 15 * float64(n)}, 90, true))
	}},
	{"scattered", func(n int) []geometry.Point { return scatter(n, 5) }},
}

// BenchmarkOrder measures an order by kind of part, number of fasteners and
// way.
func BenchmarkOrder(b *testing.B) {
	for _, part := range sizedParts {
		for _, n := range []int{10, 20, 40, 100, 400} {
			points := part.of(n)
			for _, way := range everyWay {
				b.Run(fmt.Sprintf("%s/%d/%s", part.name, n, way), func(b *testing.B) {
					for b.Loop() {
						Places(points, way, TurnDefault)
					}
				})
			}
		}
	}
}

func BenchmarkOrderGrowth(b *testing.B) {
	for _, n := range []int{100, 1000, 10000} {
		points := geometry.Rectangle(n/4, n/4, 10*float64(n), 7*float64(n), geometry.Point{})
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Places(points, Spiral, TurnDefault)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/fastener")
		})
	}
}

// distances adds up the distances between all points: a known amount of work to
// compare other times with, on any machine.
func distances(points []geometry.Point) (sum float64) {
	for _, p := range points {
		for _, q := range points {
			sum += p.Distance(q)
		}
	}
	return sum
}

// BenchmarkSpeedLimit limits the order of 400 fasteners to the time of 33 sums
// of all their distances, and that of 40 to a twentieth of it: 20 ms and 1 ms
// if that sum takes 0.6 ms. Both alternate, and the best of several tries
// counts. It is not a test, because other work on the machine would decide the
// result.
func BenchmarkSpeedLimit(b *testing.B) {
	most, apart := map[int]float64{40: 33. / 20, 400: 33}, scatter(400, 5)
	for _, part := range sizedParts {
		for n, limit := range most {
			points := part.of(n)
			for _, way := range everyWay {
				best, unit := time.Hour, time.Hour
				for try := 0; try < 7 || try < 60 && float64(best) > limit*float64(unit); try++ {
					best = min(best, stopwatch.Worked(func() { Places(points, way, TurnDefault) }))
					unit = min(unit, stopwatch.Worked(func() { distances(apart) }))
				}
				ratio := float64(best) / float64(unit)
				b.Logf("%s of %d, %s: %v, %.1f sums of %v", part.name, n, way, best, ratio, unit)
				if ratio > limit {
					b.Errorf("%s of %d, %s: %.1f sums of all distances: at most %.1f are allowed", part.name, n, way, ratio, limit)
				}
			}
		}
	}
}
