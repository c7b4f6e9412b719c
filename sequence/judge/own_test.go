package judge_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/geometry/testkit"
	"drawdown/sequence/judge"
	"drawdown/sequence/way"
	"drawdown/sequence/way/waytest"
)

// First principles: drawdown's own orders follow the rules it judges by, for
// every family and turn, however the part is placed or was measured.
func TestOwnOrdersOfEveryFamilyAreSound(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(9, 1))
	seen := map[family.Family]int{}
	check := func(name string, points []geometry.Point) {
		for _, turn := range way.Turns {
			report := judged(points, way.Places(points, way.Auto, turn))
			wantVerdict(t, fmt.Sprintf("%s, a %s, turning %s", name, family.Of(points).Family, turn), report, judge.Sound)
		}
		seen[family.Of(points).Family]++
	}
	for _, p := range waytest.Parts() {
		check(p.Name, p.Points)
		for _, share := range []float64{0.01, 0.1, 0.3} {
			spacing := geometry.Spacing(p.Points)
			check(fmt.Sprintf("%s off %g", p.Name, share), rotated(moved(p.Points, func(q geometry.Point) geometry.Point {
				return q.Add(geometry.Point{X: share * spacing * (2*r.Float64() - 1), Y: share * spacing * (2*r.Float64() - 1)})
			}), 360*r.Float64()))
		}
	}
	for range testkit.Samples(8, 60) {
		check("oval", ring(8+r.IntN(15), r))
		check("pan", pan(r))
		strewn := make([]geometry.Point, 12+r.IntN(20))
		for k := range strewn {
			strewn[k] = geometry.Point{X: 500 * r.Float64(), Y: 320 * r.Float64()}
		}
		check("strewn", strewn)
		check("flanges", slices.Concat(geometry.Circle(4+r.IntN(3), 90, geometry.Point{X: -150}, 30, true), geometry.Circle(4+r.IntN(3), 90, geometry.Point{X: 150, Y: 20}, 80, true)))
	}
	for _, f := range family.All {
		if f != family.Row && seen[f] == 0 {
			t.Errorf("no part is a %s", f)
		}
	}
}
