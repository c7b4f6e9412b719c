package sequence

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

// Ordering 400 fasteners takes under 5 ms of the processor's time, the best of
// several tries, so that a busy machine does not decide.
func TestOrderingIsQuick(t *testing.T) {
	if testing.Short() || stopwatch.Raced {
		t.Skip("times mean nothing under the race detector and are not wanted in a short run")
	}
	for name, points := range benchLayouts() {
		for _, way := range placeWays {
			best := time.Hour
			for try := 0; try < 7 || try < 60 && best > 5*time.Millisecond; try++ {
				best = min(best, stopwatch.Worked(func() { Places(points, way, TurnDefault) }))
			}
			t.Logf("%s, %s: %v", name, way, best)
			if best > 5*time.Millisecond {
				t.Errorf("%s, %s: %v", name, way, best)
			}
		}
	}
}
