package trace

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// simplified leaves out points of a closed line that lie within the tolerance
// of the rest (Ramer, Douglas and Peucker), and more where too many are left.
func simplified(line []geometry.Point, toleranceMm float64, most int) []geometry.Point {
	if len(line) < 4 {
		return line
	}
	for {
		short := simplify(line, toleranceMm)
		if len(short) <= most {
			return short
		}
		toleranceMm *= 1.3
	}
}

func simplify(line []geometry.Point, tolerance float64) []geometry.Point {
	// The line is opened at two places that stay: the first point, and the one
	// furthest from it. The first is the one furthest from the middle.
	first := furthest(line, geometry.Centroid(line))
	line = append(append([]geometry.Point{}, line[first:]...), line[:first]...)
	opposite := furthest(line, line[0])
	kept := make([]bool, len(line)+1)
	kept[0], kept[opposite] = true, true
	closed := append(line, line[0])
	thin(closed, 0, opposite, tolerance, kept)
	thin(closed, opposite, len(line), tolerance, kept)
	return keep(line, func(i int) bool { return kept[i] })
}

func furthest(line []geometry.Point, from geometry.Point) int {
	best := 0
	for i, p := range line {
		if p.Distance(from) > line[best].Distance(from)+1e-9 {
			best = i
		}
	}
	return best
}

// thin marks the points between two that stay which are needed too.
func thin(line []geometry.Point, from, to int, tolerance float64, kept []bool) {
	worst, at := tolerance, -1
	for i := from + 1; i < to; i++ {
		if d := offSegment(line[i], line[from], line[to]); d > worst {
			worst, at = d, i
		}
	}
	if at >= 0 {
		kept[at] = true
		thin(line, from, at, tolerance, kept)
		thin(line, at, to, tolerance, kept)
	}
}

func offSegment(p, a, b geometry.Point) float64 {
	along := b.Sub(a)
	length := along.Dot(along)
	if length == 0 {
		return p.Distance(a)
	}
	t := min(max(p.Sub(a).Dot(along)/length, 0), 1)
	return math.Hypot(p.X-a.X-t*along.X, p.Y-a.Y-t*along.Y)
}

// Bounds of a nick: what dust at the edge makes of it.
const (
	nickMm      = 2.0
	nickDepthMm = 1.2
	nickPoints  = 10
	nickDeg     = 8
)

// withoutNicks takes short bumps and notches out of a simplified outline where
// the edge goes on straight behind them.
func withoutNicks(line []geometry.Point) []geometry.Point {
	n := len(line)
	if n < 8 {
		return line
	}
	cut := make([]bool, n)
	for i := 0; i < n; i++ {
		for k := nickPoints; k >= 2; k-- {
			if isNick(line, i, k) {
				for j := 1; j < k; j++ {
					cut[(i+j)%n] = true
				}
				i += k - 1
				break
			}
		}
	}
	return keep(line, func(i int) bool { return !cut[i] })
}

// isNick reports whether the k pieces after the point i only leave the edge and
// come back to it.
func isNick(line []geometry.Point, i, k int) bool {
	n := len(line)
	at := func(j int) geometry.Point { return line[(i+j+n)%n] }
	a, b := at(0), at(k)
	if n <= k+2 || a.Distance(b) > nickMm || a == b {
		return false
	}
	deepest := 0.0
	for j := 1; j < k; j++ {
		deepest = max(deepest, offSegment(at(j), a, b))
	}
	if deepest > nickDepthMm {
		return false
	}
	across := b.AngleFrom(a)
	bend := func(deg float64) float64 { return math.Abs(math.Remainder(deg-across, 360)) }
	return bend(a.AngleFrom(at(-1))) < nickDeg*nickAllowance(a, at(-1)) && bend(at(k+1).AngleFrom(b)) < nickDeg*nickAllowance(b, at(k+1))
}

// nickAllowance lets short neighbours point less exactly.
func nickAllowance(a, b geometry.Point) float64 { return max(1, min(4, 4/max(a.Distance(b), 0.1))) }

const (
	faintOverMm    = 1.0 // of the edge that a step of brightness is judged over
	leastFaintMm   = 4.0
	mostFaint      = 5
	crackToPixel   = math.Pi / 4 // the border of pixels is longer than the line by that
	faintEdgeShare = 0.65        // of the usual step
)

// faintStretches doubts the stretches of the outline where the step of brightness is
// much smaller than elsewhere: oil on the paper passes for part there.
func (t *tracer) faintStretches(outer edge) (doubts []finding.Finding) {
	n := len(outer.steps)
	half := max(1, int(faintOverMm/outer.side/crackToPixel)/2)
	if n < 8*half {
		return nil
	}
	at := func(i int) float64 { return outer.steps[(i+n)%n] }
	sum, limit := 0.0, faintEdgeShare*outer.contrast*float64(2*half+1)
	faint := make([]bool, n)
	for i := -half; i < half; i++ {
		sum += at(i)
	}
	first := -1 // that is not faint
	for i := range n {
		sum += at(i + half)
		if faint[i] = sum < limit; !faint[i] && first < 0 {
			first = i
		}
		sum -= at(i - half)
	}
	from := first
	for i := first; i <= first+n && first >= 0; i++ {
		if i < first+n && faint[i%n] {
			continue
		}
		if mm := float64(i-from-1) * outer.side * crackToPixel; mm >= leastFaintMm && len(doubts) < mostFaint {
			p := t.frame.Pixel(outer.mm[(from+i)/2%n])
			doubts = append(doubts, finding.Warned(FaintOutline, finding.Values{"length": unit.Length(mm), "x": p.X, "y": p.Y}))
		}
		from = i
	}
	return doubts
}
