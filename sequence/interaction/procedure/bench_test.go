package procedure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/sequence/interaction/checktest"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
)

func BenchmarkSearchOn16Bolts(b *testing.B) {
	var at []geometry.Point
	for i := range 16 {
		y, x := math.Sincos(2 * math.Pi * float64(i) / 16)
		at = append(at, geometry.Point{X: 225 * x, Y: 225 * y})
	}
	f := compliance.Flange{Part: compliance.Part{Elastic: 206000, Poisson: 0.3, Thickness: 42}, Outer: 515, Bore: 330, BoltCircle: 450, Pair: true}
	c, err := f.Compliance(at, 150)
	if err != nil {
		b.Fatal(err)
	}
	j, _ := contact.NewJoint(mat.Symmetric(c), ownAlike(16, 1.03e-6))
	for b.Loop() {
		Search(checktest.InTurn(16), Scatter(j, checktest.Alike(16, 1), inStages(checktest.Alike(16, 1), 1)), 100_000)
	}
}
