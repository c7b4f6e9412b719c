package way

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
)

var placeWays = []Way{Auto, Spiral, Cross, Row, Star, Circular}

// randomPlaces are uneven, off centre, none closer than a tenth of the mean
// spacing, so that symmetry cannot hide swapped axes.
func randomPlaces(t *rapid.T) []geometry.Point {
	n := rapid.IntRange(3, 40).Draw(t, "count")
	seed := rapid.Uint64().Draw(t, "seed")
	return scatter(n, seed)
}

func scatter(n int, seed uint64) []geometry.Point {
	r := rand.New(rand.NewPCG(seed, 7))
	side := 60 * math.Sqrt(float64(n))
	var points []geometry.Point
	for len(points) < n {
		p := geometry.Point{X: 37 + side*1.7*r.Float64(), Y: -11 + side*r.Float64()}
		if !slices.ContainsFunc(points, func(q geometry.Point) bool { return p.Distance(q) < 6 }) {
			points = append(points, p)
		}
	}
	return points
}

func moved(points []geometry.Point, f func(geometry.Point) geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[i] = f(p)
	}
	return out
}

func rotated(points []geometry.Point, deg float64) []geometry.Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return moved(points, func(p geometry.Point) geometry.Point {
		return geometry.Point{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y}
	})
}

// First principles: an order names every fastener once.
func TestOrderIsPermutation(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		points := randomPlaces(t)
		for _, way := range placeWays {
			order := Places(points, way, rapid.SampledFrom([]Turn{TurnLeft, TurnRight, TurnDefault}).Draw(t, "turn"))
			sorted := slices.Sorted(slices.Values(order))
			for i, got := range sorted {
				if i != got || len(sorted) != len(points) {
					t.Fatalf("%s: %v is no permutation of %d places", way, order, len(points))
				}
			}
		}
	})
}

// First principles: the order does not depend on the part's angle, position,
// scale or listing in the picture. Turned, the part gives the same order
// wherever the part itself decides, which it does unless some of its places are
// images of each other. -rapid.checks=5000 tries that many times four parts.
func TestOrderBelongsToThePart(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		for range testkit.Samples(1, 4) {
			points := anyPart(t)
			for how, other := range map[string][]geometry.Point{
				"scaled":  moved(points, func(p geometry.Point) geometry.Point { return p.Scale(0.37) }),
				"shifted": moved(points, func(p geometry.Point) geometry.Point { return p.Add(geometry.Point{X: -412, Y: 93}) }),
			} {
				sameOrders(t, how, points, other)
			}
			shuffle := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "shuffle"), 3)).Perm(len(points))
			for _, way := range everyWay {
				got := Places(geometry.Picked(points, shuffle), way, TurnLeft)
				if diff := cmp.Diff(Places(points, way, TurnLeft), geometry.Picked(shuffle, got)); diff != "" {
					t.Fatalf("%s, shuffled:\n%s", way, diff)
				}
			}
			turned := rotated(points, rapid.Float64Range(1, 359).Draw(t, "turned by"))
			was, is := newLayout(points), newLayout(turned)
			if was.seen.Family != is.seen.Family || was.Regular != is.Regular || (was.Column == nil) != (is.Column == nil) {
				t.Fatalf("a %s, regular %t; turned a %s, regular %t", was.seen.Family, was.Regular, is.seen.Family, is.Regular)
			}
			if !was.Regular && !images(was) {
				sameOrders(t, "turned", points, turned)
			}
		}
	})
}

var everyWay = append(slices.Clone(placeWays), Balanced)

func sameOrders(t *rapid.T, how string, points, other []geometry.Point) {
	t.Helper()
	for _, way := range everyWay {
		if diff := cmp.Diff(Places(points, way, TurnLeft), Places(other, way, TurnLeft)); diff != "" {
			t.Fatalf("%s, %s:\n%s", way, how, diff)
		}
	}
}

// anyPart has random places or places along an edge, exact or with measuring
// errors.
func anyPart(t *rapid.T) []geometry.Point {
	kinds := []func(*rand.Rand) outlined{randomPerimeter, randomOval, dShape, triangle, timingCover}
	kind := rapid.IntRange(-len(kinds), len(kinds)-1).Draw(t, "kind")
	if kind < 0 {
		return randomPlaces(t)
	}
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 5))
	return jittered(kinds[kind](r).points, r, rapid.SampledFrom([]float64{0, 0.1, 0.3}).Draw(t, "off"))
}

// images reports whether some places are equally far from the centre and have
// the same surroundings: the picture decides which of them comes first.
func images(l *layout) bool {
	for i := range l.at {
		for k := range i {
			if math.Abs(l.radius[i]-l.radius[k]) <= l.slack && l.alike(i, k) {
				return true
			}
		}
	}
	return false
}

// The second bank is the mirror image of the first, and so is its order.
func TestMirroredInMirroredOut(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		points := randomPlaces(t)
		mirrored := moved(points, func(p geometry.Point) geometry.Point { return geometry.Point{X: -p.X, Y: p.Y} })
		for _, way := range placeWays {
			for _, turn := range Turns {
				if diff := cmp.Diff(Places(points, way, turn), Places(mirrored, way, turn.Opposite())); diff != "" {
					t.Fatalf("%s %s:\n%s", way, turn, diff)
				}
			}
		}
	})
}

func counted(n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = i
	}
	return s
}

type regular struct {
	name   string
	points []geometry.Point
}

// regularLayouts are realistic layouts.
func regularLayouts() []regular {
	off := geometry.Point{X: 31, Y: -17}
	var all []regular
	add := func(name string, points []geometry.Point) { all = append(all, regular{name, points}) }
	for _, pitch := range [][2]float64{{95, 90}, {60, 110}, {80, 80}, {100, 63}} {
		for columns := 2; columns <= 8; columns++ {
			for rows := 1; rows <= 5; rows++ {
				grid := geometry.Grid(columns, rows, pitch[0], pitch[1], off)
				name := fmt.Sprintf("grid %d×%d at %g×%g", columns, rows, pitch[0], pitch[1])
				add(name, grid)
				if len(grid) >= 8 {
					for _, gone := range []int{0, len(grid) / 3, len(grid)/2 + 1} {
						add(fmt.Sprintf("%s without place %d", name, gone), slices.Delete(slices.Clone(grid), gone, gone+1))
					}
				}
			}
		}
	}
	for n := 3; n <= 36; n++ {
		circle := geometry.Circle(n, 240, off, 90, true)
		add(fmt.Sprintf("circle of %d", n), circle)
		add(fmt.Sprintf("circle of %d straddling", n), geometry.Circle(n, 240, off, 90+180/float64(n), true))
		if n >= 7 {
			add(fmt.Sprintf("circle of %d, one missing", n), slices.Delete(slices.Clone(circle), 2, 3))
		}
	}
	for columns := 3; columns <= 9; columns++ {
		for rows := 1; rows <= 4; rows++ {
			add(fmt.Sprintf("perimeter %d+%d", columns, rows), geometry.Rectangle(columns, rows, 304, 164, off))
		}
	}
	for n := 2; n <= 12; n++ {
		add(fmt.Sprintf("row of %d", n), geometry.Row(n, 60, off, 0))
		add(fmt.Sprintf("upright row of %d", n), geometry.Row(n, 60, off, 90))
	}
	return all
}

// A bolt measured slightly off its true place must not change the order.
func TestJitterChangesNothing(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(2, 9))
	for _, layout := range regularLayouts() {
		spacing := geometry.Spacing(layout.points)
		for _, way := range placeWays {
			want := Places(layout.points, way, TurnDefault)
			for range testkit.Samples(2, 8) {
				measured := moved(layout.points, func(p geometry.Point) geometry.Point {
					a, off := 2*math.Pi*r.Float64(), 0.01*spacing*math.Sqrt(r.Float64())
					return geometry.Point{X: p.X + off*math.Cos(a), Y: p.Y + off*math.Sin(a)}
				})
				if diff := cmp.Diff(numbers(want), numbers(Places(measured, way, TurnDefault))); diff != "" {
					t.Errorf("%s, %s: the order changed", layout.name, way)
					break
				}
			}
		}
	}
}

// Two by three places, each within 0.7 mm of its own, are worked as the true ones.
// First principles: three rows 63 mm apart extend 26 mm more than two columns 100 mm
// apart, however the holes are measured.
func TestMeasuredGridKeepsItsRows(t *testing.T) {
	t.Parallel()
	drilled := geometry.Grid(2, 3, 100, 63, geometry.Point{X: 31, Y: -17})
	measured := []geometry.Point{{X: -18.98, Y: 45.62}, {X: 81.03, Y: 45.53}, {X: -19.18, Y: -16.67}, {X: 81.51, Y: -17.21}, {X: -19.12, Y: -79.39}, {X: 81.12, Y: -79.91}}
	if diff := cmp.Diff(numbers(Places(drilled, Row, TurnDefault)), numbers(Places(measured, Row, TurnDefault))); diff != "" {
		t.Errorf("(- drilled, + measured) %s", diff)
	}
}
