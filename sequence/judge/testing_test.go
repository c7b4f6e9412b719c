package judge_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/sequence"
	"drawdown/sequence/judge"
	"drawdown/sequence/way"
)

// jointOf gives places the ids M1, M2 and so on, in listing order.
func jointOf(points []geometry.Point) geometry.Joint {
	var j geometry.Joint
	for k, p := range points {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: fmt.Sprintf("M%d", k+1), Kind: "main", At: p})
	}
	return j
}

func idsOf(j geometry.Joint, order []int) []string {
	names := make([]string, len(order))
	for k, i := range order {
		names[k] = j.Fasteners[i].ID
	}
	return names
}

// judged judges an order of bare places.
func judged(points []geometry.Point, order []int) judge.Report {
	j := jointOf(points)
	return judge.Order(judge.Input{Joint: j, Order: idsOf(j, order)})
}

// listed judges ids of bare places.
func listed(points []geometry.Point, order string) judge.Report {
	return judge.Order(judge.Input{Joint: jointOf(points), Order: strings.Fields(order)})
}

// words writes findings in short form: rule, severity, steps.
func words(r judge.Report) []string {
	said := []string{}
	for _, f := range r.Findings {
		if f.Rule != judge.Travel { // a note on travel changes with the last digit
			said = append(said, fmt.Sprintf("%s %s %v", f.Rule, f.Severity, f.Steps))
		}
	}
	return said
}

func has(r judge.Report, rule judge.Rule) bool {
	return slices.ContainsFunc(r.Findings, func(f judge.Finding) bool { return f.Rule == rule })
}

func reversed(order []int) []int {
	back := slices.Clone(order)
	slices.Reverse(back)
	return back
}

func inOrder(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}

// part is a realistic layout, with the ways that suit it.
type part struct {
	name   string
	points []geometry.Point
	ways   []sequence.Way
}

// parts are off the origin and have different pitches, so that swapped axes
// show.
func parts() []part {
	off := geometry.Point{X: 31, Y: -17}
	var all []part
	add := func(name string, points []geometry.Point, ways ...sequence.Way) {
		all = append(all, part{name, points, ways})
	}
	outwards := []sequence.Way{sequence.Spiral, sequence.Cross}
	for _, pitch := range [][2]float64{{95, 90}, {60, 110}, {100, 63}} {
		for columns := 3; columns <= 8; columns++ {
			for rows := 2; rows <= 5; rows++ {
				ways := outwards
				if float64(columns-1)*pitch[0] > 1.5*float64(rows-1)*pitch[1] && rows <= 3 {
					ways = append(slices.Clone(outwards), sequence.RowWay)
				}
				add(fmt.Sprintf("grid %d×%d at %g×%g", columns, rows, pitch[0], pitch[1]), geometry.Grid(columns, rows, pitch[0], pitch[1], off), ways...)
			}
		}
	}
	for n := 3; n <= 36; n++ {
		add(fmt.Sprintf("circle of %d", n), geometry.Circle(n, 240, off, 90+70/float64(n), true), sequence.Star)
	}
	for n := 3; n <= 12; n++ {
		add(fmt.Sprintf("row of %d", n), geometry.Row(n, 60, off, 20), sequence.RowWay)
	}
	for columns := 4; columns <= 9; columns++ {
		for rows := 1; rows <= 4; rows++ {
			add(fmt.Sprintf("perimeter %d+%d", columns, rows), geometry.Rectangle(columns, rows, 304, 164, off), sequence.Auto)
		}
	}
	return all
}

// auto is drawdown's own order.
func (p part) auto() []int { return way.Places(p.points, sequence.Auto, sequence.TurnDefault) }

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

// measuredOff moves each place by up to 1 % of the spacing, a few tenths of a
// millimetre on a usual part.
func measuredOff(points []geometry.Point, r *rand.Rand) []geometry.Point {
	spacing := geometry.Spacing(points)
	return moved(points, func(p geometry.Point) geometry.Point {
		return geometry.Polar(p, 0.01*spacing*math.Sqrt(r.Float64()), 360*r.Float64())
	})
}

func wantVerdict(t *testing.T, name string, r judge.Report, want judge.Verdict) {
	t.Helper()
	if r.Verdict != want {
		t.Errorf("%s is %q, want %q: %q", name, r.Verdict, want, words(r))
	}
}
