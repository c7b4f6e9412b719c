package compliance

import (
	"fmt"
	"testing"

	"drawdown/sequence/interaction/checktest"
)

func BenchmarkHeadCompliance(b *testing.B) {
	plate, c := headPlate(&testing.T{})
	for _, mesh := range []float64{0, 10, 5} {
		b.Run(fmt.Sprint(mesh), func(b *testing.B) {
			plate.MeshMm = mesh
			for b.Loop() {
				if _, err := plate.Compliance(checktest.TwoByFive(), c.In("k")); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
