package checktest

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
)

func Must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func Alike(n int, value float64) []float64 { return slices.Repeat([]float64{value}, n) }

// TwoByFive are the bolts of case P12.
func TwoByFive() (at []geometry.Point) {
	for i := range 5 {
		for j := range 2 {
			at = append(at, geometry.Point{X: 95 * float64(i), Y: 90 * float64(j)})
		}
	}
	return at
}

// Circle16 are 16 bolts on a circle, anticlockwise from the right.
func Circle16(diameter float64) []geometry.Point {
	return geometry.Circle(16, diameter, geometry.Point{}, 0, false)
}

// InTurn is the order 0, 1, 2 and so on.
func InTurn(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}

// InfiniteBeam is a beam without ends on a foundation. The bolts at the ends of
// a real row are four times as flexible: use Row for these.
type InfiniteBeam struct{ BendingNmm2 float64 }

// At returns the deflection of the beam at a distance from a unit load, in
// mm/N. The foundation is per millimetre of the beam's length.
func (b InfiniteBeam) At(distanceMm, foundationMPa float64) float64 {
	lambda := math.Pow(foundationMPa/(4*b.BendingNmm2), 0.25)
	x := lambda * math.Abs(distanceMm)
	return lambda / (2 * foundationMPa) * math.Exp(-x) * (math.Cos(x) + math.Sin(x)) // Hetényi, section 5: y = Pλ/(2k)·Aλx
}

func Near(a, b, tolerance float64) bool {
	return math.Abs(a-b) <= tolerance*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}
