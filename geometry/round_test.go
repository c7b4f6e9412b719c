package geometry

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// First principles: a round depends only on the points, also if they are
// mirrored or listed differently. Random points have no edge, so that many
// rounds are nearly as short.
func TestRoundOfMirroredPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 8))
	for range 2000 {
		points := make([]Point, 4+r.IntN(30))
		for i := range points {
			points[i] = Point{170 * r.Float64(), 100 * r.Float64()}
		}
		shuffle := r.Perm(len(points))
		mirrored := make([]Point, len(points))
		for k, i := range shuffle {
			mirrored[k] = Point{-points[i].X, points[i].Y}
		}
		want, got := Round(points), Round(mirrored)
		for k := range got {
			got[k] = shuffle[got[k]]
		}
		from(got, want[0])
		if got[1] != want[1] {
			slices.Reverse(got[1:])
		}
		if !slices.Equal(got, want) {
			t.Fatalf("%v, mirrored %v", want, got)
		}
	}
}
