package way

import (
	"fmt"
	"testing"
	"time"

	"drawdown/geometry"
	"drawdown/render/stopwatch"
)

func benchLayouts() map[string][]geometry.Point {
	return map[string][]geometry.Point{
		"grid":      geometry.Grid(20, 20, 60, 55, geometry.Point{}),
		"circle":    geometry.Circle(400, 2000, geometry.Point{}, 90, true),
		"scattered": scatter(400, 5),
	}
}

func BenchmarkOrder400(b *testing.B) {
	for name, points := range benchLayouts() {
		for _, way := range placeWays {
			b.Run(name+"/"+string(way), func(b *testing.B) {
				for b.Loop() {
					Places(points, way, TurnDefault)
				}
			})
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

// distances sums the distances between all points: work of a known kind, against
// which other times are held on whatever machine this is.
func distances(points []geometry.Point) (sum float64) {
	for _, p := range points {
		for _, q := range points {
			sum += p.Distance(q)
		}
	}
	return sum
}

// BenchmarkSpeedLimit holds the ordering of 400 fasteners to mostDistances times
// the sum of all their distances: 20 ms where that sum takes 0.6 ms. Both take
// turns, and the best of several tries counts, so that neither a slow machine
// nor a busy one decides.
func BenchmarkSpeedLimit(b *testing.B) {
	const mostDistances = 33
	for name, points := range benchLayouts() {
		for _, way := range placeWays {
			best, unit := time.Hour, time.Hour
			for try := 0; try < 7 || try < 60 && float64(best) > mostDistances*float64(unit); try++ {
				best = min(best, stopwatch.Worked(func() { Places(points, way, TurnDefault) }))
				unit = min(unit, stopwatch.Worked(func() { distances(points) }))
			}
			b.Logf("%s, %s: %v, %.1f sums of %v", name, way, best, float64(best)/float64(unit), unit)
			if float64(best) > mostDistances*float64(unit) {
				b.Errorf("%s, %s: %v, %.1f sums of all distances: at most %d are allowed", name, way, best, float64(best)/float64(unit), mostDistances)
			}
		}
	}
}

// What an order of a free layout takes, by the number of fasteners.
func BenchmarkBalanced(b *testing.B) {
	for _, n := range []int{10, 20, 40, 100, 400} {
		pan := geometry.Rectangle(n/3, n/2-n/3, 20*float64(n), 9*float64(n), geometry.Point{})
		for name, points := range map[string][]geometry.Point{"pan": pan, "scattered": scatter(n, 5)} {
			b.Run(fmt.Sprintf("%s of %d", name, n), func(b *testing.B) {
				for b.Loop() {
					Places(points, Auto, TurnDefault)
				}
			})
		}
	}
}
