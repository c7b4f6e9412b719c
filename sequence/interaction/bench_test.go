package interaction

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

func benchJoint(b *testing.B, n int) *Joint {
	b.Helper()
	var at []geometry.Point
	for i := range n {
		at = append(at, geometry.Point{X: 60 * float64(i/2), Y: 60 * float64(i%2)})
	}
	c, err := InfinitePlate{1.4e9}.Compliance(at, 105)
	if err != nil {
		b.Fatal(err)
	}
	j, err := NewJoint(c, ownAlike(n, 9.7e-6))
	if err != nil {
		b.Fatal(err)
	}
	return j
}

func BenchmarkFirstPass(b *testing.B) { // grows as n³/6
	for _, n := range []int{10, 50, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			p, order, targets := newPasser(benchJoint(b, n)), identity(n), alike(n, 1)
			for b.Loop() {
				if !p.first(order, targets) {
					b.Fatal("slack")
				}
			}
			per(b, float64(n*n*n)/6, "ns/(n³/6)")
		})
	}
}

// per reports the time by the count of what is worked: it stays about the same as
// the joint grows, or falls while the joint is small.
func per(b *testing.B, count float64, unit string) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/count, unit)
}

func BenchmarkRepeatPass(b *testing.B) { // grows as n²
	for _, n := range []int{10, 50, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			p, order, targets := newPasser(benchJoint(b, n)), identity(n), alike(n, 1)
			p.first(order, targets)
			p.again(order, targets)
			for b.Loop() {
				for i := range p.force {
					p.force[i] = 0.95 // so that each is turned
				}
				if !p.again(order, targets) {
					b.Fatal("slack")
				}
			}
			per(b, float64(n*n), "ns/n²")
		})
	}
}

func BenchmarkExactPass(b *testing.B) {
	for _, n := range []int{10, 50} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			j, order, targets := benchJoint(b, n), identity(n), alike(n, 1)
			for b.Loop() {
				if _, err := j.Loose().Work(stages(order, targets, 1), nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkHeadCompliance(b *testing.B) {
	plate, c := headPlate(&testing.T{})
	for _, mesh := range []float64{0, 10, 5} {
		b.Run(fmt.Sprint(mesh), func(b *testing.B) {
			plate.MeshMm = mesh
			for b.Loop() {
				if _, err := plate.Compliance(twoByFive(), c.in("k")); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSearchOn16Bolts(b *testing.B) {
	var at []geometry.Point
	for i := range 16 {
		y, x := math.Sincos(2 * math.Pi * float64(i) / 16)
		at = append(at, geometry.Point{X: 225 * x, Y: 225 * y})
	}
	f := Flange{Part: Part{206000, 0.3, 42}, Outer: 515, Bore: 330, BoltCircle: 450, Pair: true}
	c, err := f.Compliance(at, 150)
	if err != nil {
		b.Fatal(err)
	}
	j, _ := NewJoint(mat.Symmetric(c), ownAlike(16, 1.03e-6))
	for b.Loop() {
		Search(identity(16), j.Scatter(alike(16, 1), inStages(alike(16, 1), 1)), 100_000)
	}
}
