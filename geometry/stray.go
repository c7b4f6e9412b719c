package geometry

import (
	"math"
	"slices"
)

// Stray is a point far outside all others.
type Stray struct {
	Index int
	Gap   float64 // to the nearest other point
	Span  float64 // of all others: diameter of the smallest disc around them
}

// FindStray finds the point that is so far from all others that its position is
// probably a typing error: -1500 for -150. It finds at most one point, and
// never one of two that are far off together.
//
// The gap must be at least the span of all others. It must also be so wide that
// fewer than one in a thousand sets of as many random points on a line have
// such a gap at an end: 2·(1 − gap/(gap + span))^(n−2), from the spacings of
// uniform order statistics. For random points in a plane, each of the others is
// in the area that they span with probability (span/(gap + span))².
func FindStray(points []Point) (Stray, bool) {
	const fewest, byChance = 4, 1e-3
	n := len(points)
	if n < fewest {
		return Stray{}, false
	}
	s := Stray{}
	for i, d := range NearestDistances(points) {
		if d > s.Gap {
			s.Index, s.Gap = i, d
		}
	}
	others := slices.Delete(slices.Clone(points), s.Index, s.Index+1)
	s.Span = 2 * Enclose(others).Radius
	if s.Gap <= s.Span {
		return Stray{}, false
	}
	share := s.Span / (s.Gap + s.Span)
	chance := 2 * math.Pow(share, float64(n-2))
	if OffLine(others, LongAxis(others)) > s.Span/4 { // they span a plane
		chance = min(chance, float64(n)*math.Pow(share, 2*float64(n-2)))
	}
	return s, chance < byChance
}

// Odd is a point off the position that the regularity of all others requires.
type Odd struct {
	Index int
	Other int     // its mirror image is the required position; −1 if another point is not needed
	Off   float64 // distance from the required position
}

// FindOdd finds the one point that is off a circle, or off the symmetry, that
// all others keep to a hundredth of their spacing. A point slightly off may be
// intended, so that the part fits only one way round. A point off by a spacing
// or more counts only if it is off two symmetries. A part that is not regular
// has no odd point.
func FindOdd(points []Point) (Odd, bool) {
	const fewest, most = 6, 400
	if len(points) < fewest || len(points) > most {
		return Odd{}, false
	}
	if odd, found := offEvenCircle(points); found {
		return odd, true
	}
	leftRight := pairsAcross(points, func(p Point) (across, along float64) { return p.X, p.Y })
	upDown := pairsAcross(points, func(p Point) (across, along float64) { return p.Y, p.X })
	return oddOfBoth(leftRight, upDown, Spacing(points), len(points))
}

const (
	oddLeast = 0.07 // of the spacing: less may be so that the part fits only one way round (common practice, no source)
	oddMost  = 0.9
	oddEven  = 0.01 // how regular the others must be; hand measurements are not
)

func isOdd(off, spacing float64) bool { return off >= oddLeast*spacing && off <= oddMost*spacing }

// offEvenCircle finds the point that belongs to the one free place of an even
// circle.
func offEvenCircle(points []Point) (Odd, bool) {
	const most = 100
	if len(points) > most || offCircle(points, Enclose(points).Centre) > 2*oddMost*Spacing(points) {
		return Odd{}, false
	}
	for i, p := range points {
		others := slices.Delete(slices.Clone(points), i, i+1)
		even, count := EvenCircle(others, oddEven)
		if even == nil || count != len(points) {
			continue
		}
		if spacing := Spacing(even); isOdd(p.Distance(placeLeft(even, spacing)), spacing) {
			return Odd{Index: i, Other: -1, Off: p.Distance(placeLeft(even, spacing))}, true
		}
	}
	return Odd{}, false
}

// placeLeft returns the free place of a circle that all points but one are on.
func placeLeft(even []Point, spacing float64) Point {
	centre, count := Enclose(even).Centre, len(even)+1
	for k := range count {
		place := Polar(centre, even[0].Distance(centre), even[0].AngleFrom(centre)+360*float64(k)/float64(count))
		if !slices.ContainsFunc(even, func(p Point) bool { return p.Distance(place) < spacing/4 }) {
			return place
		}
	}
	return even[0]
}

// unpaired holds the points that are not the mirror image of another about an
// axis.
type unpaired struct {
	points []int
	off    float64 // if two: distance of each from the mirror image of the other
	alone  []int   // if two: those that no other point lines up with
	// flipped reports, for two points, that one would be the mirror image of
	// the other with another sign.
	flipped bool
}

// isFlipped reports whether one of two points is the image of the other after a
// change of sign.
func isFlipped(a, b Point, image func(a, b Point) bool) bool {
	return image(Point{X: -a.X, Y: a.Y}, b) || image(Point{X: a.X, Y: -a.Y}, b)
}

// pairsAcross pairs points with their mirror images about the middle of a
// coordinate: the median of the middles between first and last, second and
// second-last, and so on.
func pairsAcross(points []Point, of func(Point) (across, along float64)) unpaired {
	across := func(i int) float64 { a, _ := of(points[i]); return a }
	order := Sorted(len(points), across)
	middles := make([]float64, len(points))
	for k := range order {
		middles[k] = (across(order[k]) + across(order[len(order)-1-k])) / 2
	}
	slices.Sort(middles)
	middle, slack := middles[len(middles)/2], oddEven*Spacing(points)
	apart := func(i, k int) float64 {
		a, b := points[i], points[k]
		x, y := of(a)
		u, v := of(b)
		return math.Hypot(x+u-2*middle, y-v)
	}
	var left unpaired
	for i := range points {
		if !slices.ContainsFunc(order, func(k int) bool { return apart(i, k) <= slack }) {
			left.points = append(left.points, i)
		}
	}
	switch len(left.points) {
	case 1:
		left.off = apart(left.points[0], left.points[0]) / 2
	case 2:
		left.off = apart(left.points[0], left.points[1])
		left.flipped = isFlipped(points[left.points[0]], points[left.points[1]], func(a, b Point) bool {
			x, y := of(a)
			u, v := of(b)
			return math.Hypot(x+u-2*middle, y-v) <= slack
		})
		left.alone = slices.DeleteFunc(slices.Clone(left.points), func(i int) bool {
			return slices.ContainsFunc(order, func(k int) bool { return k != i && math.Abs(across(k)-across(i)) <= slack })
		})
	}
	return left
}

// oddOfBoth finds the point that is off both symmetries, or off the only one.
func oddOfBoth(a, b unpaired, spacing float64, count int) (Odd, bool) {
	const fewestOfOne = 8
	few := func(u unpaired) bool {
		switch len(u.points) {
		case 1: // off the axis, its partner is missing
			return isOdd(u.off, spacing) && 2*u.off < oddMost*spacing
		case 2:
			return isOdd(u.off, spacing) || u.flipped && u.off > spacing
		}
		return false
	}
	// If off both symmetries, a point may be off by any distance, because all
	// others keep them.
	far := func(u unpaired) bool { return len(u.points) == 2 && u.off > oddMost*spacing }
	switch {
	case few(a) && few(b), count >= fewestOfOne && (few(a) || far(a)) && (few(b) || far(b)):
		for _, i := range a.points {
			if slices.Contains(b.points, i) {
				return Odd{Index: i, Other: -1, Off: max(a.off, b.off)}, true
			}
		}
		return Odd{}, false
	case few(a):
		return a.odd(count, fewestOfOne)
	case few(b):
		return b.odd(count, fewestOfOne)
	}
	return Odd{}, false
}

func (u unpaired) odd(count, fewest int) (Odd, bool) {
	if count < fewest {
		return Odd{}, false
	}
	switch {
	case len(u.points) == 1:
		return Odd{Index: u.points[0], Other: -1, Off: u.off}, true
	case len(u.alone) == 1:
		return Odd{Index: u.alone[0], Other: -1, Off: u.off}, true
	}
	return Odd{Index: u.points[0], Other: u.points[1], Off: u.off}, true
}
