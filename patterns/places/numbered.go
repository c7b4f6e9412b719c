package places

import (
	"math"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// numbered holds things whose names are one word and a number, such as cyl 1,
// with their numbers.
type numbered struct {
	at      []geometry.Point
	nodes   []*nodes.Node
	names   []string
	numbers []int
	size    []float64
}

var wordAndNumber = expression.Lazily(`^(.*\pL)\W*(\d{1,3})$`)

// series groups names by their words.
func series(names []string, at []geometry.Point, from []*nodes.Node, size []float64) (all []*numbered) {
	of := map[string]*numbered{}
	for i, name := range names {
		m := wordAndNumber.FindStringSubmatch(name)
		if m == nil {
			continue
		}
		s := of[m[1]]
		if s == nil {
			s = &numbered{}
			of[m[1]], all = s, append(all, s)
		}
		n, _ := strconv.Atoi(m[2])
		s.at, s.nodes, s.names, s.numbers, s.size = append(s.at, at[i]), append(s.nodes, from[i]), append(s.names, name), append(s.numbers, n), append(s.size, size[i])
	}
	return all
}

// series warns of bores, stations and clusters whose numbers do not rise or
// fall along their row, or that lack one in between, and of a bore of another
// size than the others, or off their pitch.
func (c check) series() {
	bores := geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) string { return b.Label })
	for _, s := range series(bores, geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) geometry.Point { return b.Centre }), c.Bores, geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) float64 { return b.Diameter })) {
		c.inRow(s)
		c.ofOneSize(s)
		c.offPitch(s)
		c.offLine(s)
		c.frontAtLast(s)
		c.frontAcross(s)
		c.outsideBolts(s)
	}
	c.stationSeries()
	middles := c.middlesOfCaps()
	if middles == nil {
		return
	}
	_, odd := geometry.FindOdd(c.Joint.Points())
	for _, s := range c.namedCaps() {
		c.inRow(s)
		if len(c.Joint.Bores) == 0 { // or it is reported of these
			c.frontAtLast(s)
		}
		if !odd { // otherwise a fastener is in the wrong place, and its cap with it
			c.offPitch(s)
		}
	}
	c.offBores(middles)
}

// middlesOfCaps returns the middle of each cluster, or nil if one has no
// fastener.
func (c check) middlesOfCaps() []geometry.Point {
	if slices.ContainsFunc(c.Joint.Clusters, func(k geometry.Cluster) bool { return len(k.Of) == 0 }) {
		return nil
	}
	index := c.Joint.Index()
	return geometry.Mapped(c.Joint.Clusters, func(k geometry.Cluster) geometry.Point {
		return geometry.Centroid(c.Joint.PointsOf(geometry.Mapped(k.Of, func(id string) int { return index[id] })))
	})
}

// namedCaps groups the clusters by their words.
func (c check) namedCaps() []*numbered {
	middles := c.middlesOfCaps()
	if middles == nil {
		return nil
	}
	names := geometry.Mapped(c.Joint.Clusters, func(k geometry.Cluster) string { return k.Name })
	return series(names, middles, c.Clusters, make([]float64, len(names)))
}

// offBores warns of clusters whose middle is outside the bore of the same name,
// at the first such cluster.
func (c check) offBores(middles []geometry.Point) {
	var names []string
	var first *nodes.Node
	var apart float64
	for i, k := range c.Joint.Clusters {
		at := slices.IndexFunc(c.Joint.Bores, func(b geometry.Bore) bool { return b.Label == k.Name })
		if at < 0 {
			continue
		}
		bore := c.Joint.Bores[at]
		off := middles[i].Distance(bore.Centre)
		if off <= bore.Diameter/2 {
			continue
		}
		if names = append(names, problem.Quoted(k.Name)); first == nil {
			first, apart = c.Clusters[i], off
		}
	}
	if first != nil {
		c.Warn(first, ClusterOffBore, finding.Values{"names": names, "count": len(names), "apart": unit.Length(apart)})
	}
}

const fewestOfSeries = 3

// alongRow returns the order along the row, or nil for too few things or no
// row.
func (s *numbered) alongRow(fewest int) []int {
	if len(s.at) < fewest || !geometry.OneLine(s.at) {
		return nil
	}
	axis := geometry.LongAxis(s.at)
	return geometry.Sorted(len(s.at), func(i int) float64 { return s.at[i].Dot(axis) })
}

func (c check) inRow(s *numbered) {
	order := s.alongRow(fewestOfSeries)
	if order == nil {
		return
	}
	along := geometry.Mapped(order, func(i int) int { return s.numbers[i] })
	if along[0] > along[len(along)-1] {
		slices.Reverse(order)
		slices.Reverse(along)
	}
	for k := 1; k < len(along); k++ {
		if along[k] < along[k-1] {
			c.Warn(s.nodes[order[k]], NumbersJumbled, finding.Values{"name": problem.Quoted(s.names[order[k]]), "before": problem.Quoted(s.names[order[k-1]])})
			return
		}
	}
	c.noGap(s, order, along)
	c.noJump(s, order, along)
}

// noJump warns of a jump in the numbers at the end of a row: 1, 2, 3, 4, 50.
func (c check) noJump(s *numbered, order, along []int) {
	const fewest = 4
	last := len(along) - 1
	if len(along) < fewest {
		return
	}
	step := along[1] - along[0]
	for k := 1; k < last; k++ {
		if along[k]-along[k-1] != step {
			return
		}
	}
	if along[last]-along[last-1] > 2*step {
		c.Warn(s.nodes[order[last]], NumberMissing, finding.Values{"name": problem.Quoted(s.names[order[last]]), "before": problem.Quoted(s.names[order[last-1]])})
	}
}

// noGap warns of a missing number between two whose places leave room for it.
func (c check) noGap(s *numbered, order, along []int) {
	for k := 1; k < len(along); k++ {
		pitch := func(k int) float64 { return s.at[order[k]].Distance(s.at[order[k-1]]) }
		other := pitch(max(1, (k+1)%len(along)))
		if along[k]-along[k-1] == 2 && math.Abs(pitch(k)-2*other) < other/10 {
			c.Warn(s.nodes[order[k]], NumberMissing, finding.Values{"name": problem.Quoted(s.names[order[k]]), "before": problem.Quoted(s.names[order[k-1]])})
			return
		}
	}
}

func (c check) stationSeries() {
	labels := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) string { return s.Label })
	at := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) geometry.Point { return s.At })
	for _, s := range series(labels, at, c.Stations, make([]float64, len(labels))) {
		c.inRow(s)
		c.offPitch(s)
	}
}

// offPitch warns of the one thing in an even row that is nearer to one
// neighbour than to the other, or, at the end of the row, much nearer than all
// others.
func (c check) offPitch(s *numbered) {
	const fewest = 4
	order := s.alongRow(fewestOfSeries)
	if order == nil {
		return
	}
	pitch := func(k int) float64 { return s.at[order[k+1]].Distance(s.at[order[k]]) }
	if len(order) < fewest {
		c.threeOffPitch(s, order, pitch)
		return
	}
	for k := 1; k < len(order)-1; k++ {
		usual, off, others := (pitch(k-1)+pitch(k))/2, math.Abs(pitch(k)-pitch(k-1))/2, 0
		for i := range len(order) - 1 {
			if i != k-1 && i != k && math.Abs(pitch(i)-usual) <= toleranceMm {
				others++
			}
		}
		if off > toleranceMm && others == len(order)-3 {
			i := order[k]
			c.Warn(s.nodes[i], BoreOffPitch, finding.Values{"name": problem.Quoted(s.names[i]), "off": unit.Length(off), "pitch": unit.Length(usual)})
			return
		}
	}
	c.endOffPitch(s, order, pitch)
}

// threeOffPitch warns of three bores of one size with unequal distances.
func (c check) threeOffPitch(s *numbered, order []int, pitch func(int) float64) {
	const share = 0.05
	first, second := pitch(0), pitch(1)
	if s.size[0] > 0 && s.size[0] == s.size[1] && s.size[1] == s.size[2] && math.Abs(first-second) > share*(first+second)/2 {
		i := order[2]
		c.Warn(s.nodes[i], EndOffPitch, finding.Values{"name": problem.Quoted(s.names[i]), "apart": unit.Length(second), "pitch": unit.Length(first)})
	}
}

// endOffPitch warns if the first or last of an even row is less than half a
// pitch from the next.
func (c check) endOffPitch(s *numbered, order []int, pitch func(int) float64) {
	last := len(order) - 2
	for _, end := range []struct{ pitch, of, from, to int }{{0, 0, 1, last}, {last, last + 1, 0, last - 1}} {
		even := true
		for k := end.from; k <= end.to; k++ {
			even = even && math.Abs(pitch(k)-pitch(end.from)) <= toleranceMm
		}
		if even && pitch(end.pitch) < pitch(end.from)/2 {
			i := order[end.of]
			c.Warn(s.nodes[i], EndOffPitch, finding.Values{"name": problem.Quoted(s.names[i]), "apart": unit.Length(pitch(end.pitch)), "pitch": unit.Length(pitch(end.from))})
			return
		}
	}
}

// offLine warns of the one bore beside the line through all others.
func (c check) offLine(s *numbered) {
	const fewest = 4
	if len(s.at) < fewest {
		return
	}
	at, off := -1, 0.0
	for i := range s.at {
		others := slices.Delete(slices.Clone(s.at), i, i+1)
		axis := geometry.LongAxis(others)
		across := geometry.Point{X: -axis.Y, Y: axis.X}
		if geometry.OffLine(others, axis) > toleranceMm {
			continue
		}
		if d := math.Abs(s.at[i].Sub(others[0]).Dot(across)); d > 2*toleranceMm {
			if at >= 0 {
				return // more than one
			}
			at, off = i, d
		}
	}
	if at >= 0 {
		c.Warn(s.nodes[at], BoreOffLine, finding.Values{"name": problem.Quoted(s.names[at]), "off": unit.Length(off)})
	}
}

// outsideBolts warns of bores of a row, cylinders or ports, whose middle is not
// surrounded by bolts: nothing would press on their seal.
func (c check) outsideBolts(s *numbered) {
	hull := geometry.Hull(c.Joint.Points())
	if len(s.at) < fewestOfSeries || len(hull) < fewestOfSeries {
		return
	}
	var names []string
	at := -1
	for i, p := range s.at {
		if !geometry.Inside(p, hull) && geometry.FromEdge(p, hull) > toleranceMm {
			if names = append(names, problem.Quoted(s.names[i])); at < 0 {
				at = i
			}
		}
	}
	if at >= 0 {
		c.Warn(s.nodes[at], BoresOutside, finding.Values{"labels": names})
	}
}

// frontAtLast warns of cylinders numbered from the end away from the front:
// most makers begin at the front (common practice).
func (c check) frontAtLast(s *numbered) {
	order := s.alongRow(fewestOfSeries)
	towards, known := directions[c.Joint.Front]
	if order == nil || c.Front == nil || !known {
		return
	}
	first, last := order[0], order[len(order)-1]
	if s.numbers[first] > s.numbers[last] {
		first, last = last, first
	}
	along := s.at[first].Sub(s.at[last])
	if along.Dot(towards) < -math.Hypot(along.X, along.Y)*math.Sqrt2/2 {
		c.Warn(c.Front, FrontAtLast, finding.Values{"name": problem.Quoted(s.names[last]), "front": string(c.Joint.Front)})
	}
}

// ofOneSize warns of the one bore whose diameter differs from all others of its
// name.
func (c check) ofOneSize(s *numbered) {
	if len(s.size) < fewestOfSeries {
		return
	}
	sizes := slices.Sorted(slices.Values(s.size))
	usual := sizes[len(sizes)/2]
	var odd []int
	for i, size := range s.size {
		if math.Abs(size-usual) > toleranceMm {
			odd = append(odd, i)
		}
	}
	if len(odd) == 1 {
		i := odd[0]
		c.Warn(s.nodes[i], BoreOtherSize, finding.Values{"name": problem.Quoted(s.names[i]), "diameter": unit.Length(s.size[i]), "usual": unit.Length(usual)})
	}
}
