package exercise

import (
	"math"
	"math/rand/v2"
	"slices"

	"drawdown/geometry"
)

// between returns a multiple of step from low to high.
func between(r *rand.Rand, low, high, step int) float64 {
	return float64(low + step*r.IntN((high-low)/step+1))
}

func pick[T any](r *rand.Rand, from ...T) T { return from[r.IntN(len(from))] }

// head is a cylinder head: two rows of main bolts with the bores between their
// columns and, in two of three cases, a row of small bolts on one side.
func head(r *rand.Rand) Exercise {
	columns := 3 + r.IntN(4)
	pitch, across := between(r, 84, 108, 4), between(r, 76, 96, 4)
	main := geometry.Grid(columns, 2, pitch, across, geometry.Point{})
	edge, top := pitch*float64(columns-1)/2, across/2
	e := Exercise{Family: Head, threads: [2]string{pick(r, "M10", "M11", "M12"), ""}}
	low, high := -top-28, top+28
	var side []geometry.Point
	if r.IntN(3) > 0 {
		e.threads[1] = "M8"
		y := pick(r, -1.0, 1.0) * (top + 44)
		side = geometry.Row(columns-1, pitch, geometry.Point{X: -edge + pitch/2, Y: y}, 0)
		low, high = math.Min(low, y-16), math.Max(high, y+16)
	}
	e.Joint.Fasteners = lettered(main, side)
	e.Joint.Outline = plate(edge+30, low, high)
	for c := range columns - 1 {
		e.Joint.Bores = append(e.Joint.Bores, geometry.Bore{
			Centre: geometry.Point{X: -edge + pitch*(float64(c)+0.5)}, Diameter: math.Round(0.78 * math.Min(pitch, across)),
		})
	}
	e.Joint.Front = pick(r, geometry.FrontLeft, geometry.FrontRight)
	return e
}

// cover is a lid with bolts around its rim and an opening off centre.
func cover(r *rand.Rand) Exercise {
	columns, rows := 3+r.IntN(4), 1+r.IntN(3)
	pitchX, pitchY := between(r, 60, 84, 4), between(r, 48, 68, 4)
	width, height := pitchX*float64(columns-1), pitchY*float64(rows+1)
	e := Exercise{Family: Cover, threads: [2]string{pick(r, "M6", "M8"), ""}}
	e.Joint.Fasteners = lettered(geometry.Rectangle(columns, rows, width, height, geometry.Point{}), nil)
	e.Joint.Outline = plate(width/2+16, -height/2-16, height/2+16)
	e.Joint.Bores = []geometry.Bore{{
		Centre:   geometry.Point{X: pick(r, -1.0, 1.0) * width / 5, Y: height / 12},
		Diameter: math.Round(0.3 * math.Min(width, height)),
	}}
	e.Joint.Front = pick(r, geometry.FrontLeft, geometry.FrontRight)
	return e
}

// flange is one bolt circle around a bore; half of them straddle the centre
// line.
func flange(r *rand.Rand) Exercise {
	count := pick(r, 6, 8, 10, 12, 16)
	diameter := between(r, 140, 320, 10)
	first := 90.0
	if r.IntN(2) == 0 {
		first -= 180 / float64(count)
	}
	e := Exercise{Family: Flange, threads: [2]string{pick(r, "M12", "M16", "M20"), ""}}
	for k, at := range geometry.Circle(count, diameter, geometry.Point{}, first, true) {
		e.Joint.Fasteners = append(e.Joint.Fasteners, geometry.Fastener{ID: letter(k), Kind: main, At: at})
	}
	e.Joint.Bores = []geometry.Bore{{Diameter: math.Round(0.6 * diameter)}}
	e.Joint.Front = geometry.FrontTop
	return e
}

// caps are bearing caps in a row, each with two bolts that are tightened
// together.
func caps(r *rand.Rand) Exercise {
	count := 3 + r.IntN(5)
	pitch, across := between(r, 76, 108, 4), between(r, 40, 64, 4)
	e := Exercise{Family: Caps, threads: [2]string{pick(r, "M8", "M10", "M12"), ""}}
	e.Joint.Fasteners = lettered(geometry.Grid(count, 2, pitch, across, geometry.Point{}), nil)
	for c := range count {
		e.Joint.Clusters = append(e.Joint.Clusters, geometry.Cluster{
			Name: letter(c), Of: []string{e.Joint.Fasteners[c].ID, e.Joint.Fasteners[count+c].ID},
		})
	}
	edge := pitch * float64(count-1) / 2
	e.Joint.Outline = plate(edge+30, -across/2-22, across/2+22)
	e.Joint.Front = pick(r, geometry.FrontLeft, geometry.FrontRight)
	return e
}

// plate is the outline of a part from its left to its right edge.
func plate(edge, low, high float64) [][]geometry.Point {
	return [][]geometry.Point{{{X: -edge, Y: high}, {X: edge, Y: high}, {X: edge, Y: low}, {X: -edge, Y: low}}}
}

// lettered assigns letters to places row by row from the top left.
func lettered(mains, smalls []geometry.Point) []geometry.Fastener {
	var all []geometry.Fastener
	for _, at := range mains {
		all = append(all, geometry.Fastener{Kind: main, At: at})
	}
	for _, at := range smalls {
		all = append(all, geometry.Fastener{Kind: small, At: at})
	}
	slices.SortStableFunc(all, func(a, b geometry.Fastener) int {
		if math.Abs(a.At.Y-b.At.Y) > 1e-6 {
			return int(math.Copysign(1, b.At.Y-a.At.Y))
		}
		return int(math.Copysign(1, a.At.X-b.At.X))
	})
	for k := range all {
		all[k].ID = letter(k)
	}
	return all
}

// letters leaves out I and O, which look like digits.
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"

func letter(k int) string { return letters[k : k+1] }
