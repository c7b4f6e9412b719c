package contact

import (
	"fmt"
	"testing"

	"drawdown/geometry"
	"drawdown/sequence/interaction/checktest"
	"drawdown/sequence/interaction/compliance"
)

func benchJoint(b *testing.B, n int) *Joint {
	b.Helper()
	var at []geometry.Point
	for i := range n {
		at = append(at, geometry.Point{X: 60 * float64(i/2), Y: 60 * float64(i%2)})
	}
	c, err := compliance.InfinitePlate{RigidityNmm: 1.4e9}.Compliance(at, 105)
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
			p, order, targets := NewPasser(benchJoint(b, n)), checktest.InTurn(n), checktest.Alike(n, 1)
			for b.Loop() {
				if !p.first(order, targets) {
					b.Fatal("slack")
				}
			}
			per(b, float64(n*n*n)/6, "ns/(n³/6)")
		})
	}
}

// per reports the time per unit of work: it stays about constant as the joint
// grows, or decreases for small joints.
func per(b *testing.B, count float64, unit string) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/count, unit)
}

func BenchmarkRepeatPass(b *testing.B) { // grows as n²
	for _, n := range []int{10, 50, 200} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			p, order, targets := NewPasser(benchJoint(b, n)), checktest.InTurn(n), checktest.Alike(n, 1)
			p.first(order, targets)
			p.again(order, targets)
			for b.Loop() {
				for i := range p.force {
					p.force[i] = 0.95 // so that each bolt is turned
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
			j, order, targets := benchJoint(b, n), checktest.InTurn(n), checktest.Alike(n, 1)
			for b.Loop() {
				if _, err := j.Loose().Work(stages(order, targets, 1), nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
