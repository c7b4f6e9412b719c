package diagram

import (
	"math"

	"drawdown/render/scene"
)

const (
	headLength = 2.8
	headHalf   = 1.0
	clearance  = 0.9 // between an arrow and a mark
	headAir    = 0.2 // between the head of an arrow and a mark it passes
	mergeMm    = 0.8 // closer than this, two lines look like one
)

// route is one arrow: a cubic from rim to rim.
type route struct {
	bow    float64
	curve  [4]scene.Point
	points []scene.Point // flattened
	bounds scene.Box
}

// leg is the step from one fastener to the next. It holds the routes tried so
// far; most legs use the first.
type leg struct {
	from, to int
	looked   int // bows tried
	found    []route
}

// next returns the k-th route that touches nothing fixed. ok is false when
// there are no more, or when the rest bend by tooMuch or more.
func (s *sketch) next(l *leg, k int, tooMuch float64) (*route, bool) {
	for ; len(l.found) <= k && l.looked < len(bows) && math.Abs(bows[l.looked]) < tooMuch; l.looked++ {
		if r, ok := s.route(l.from, l.to, bows[l.looked]); ok {
			l.found = append(l.found, r)
		}
	}
	if k < len(l.found) && math.Abs(l.found[k].bow) < tooMuch {
		return &l.found[k], true
	}
	return nil, false
}

// routes finds a route for each leg so that none cross or run together. ok is
// false when a leg has no such route. Later rounds let the first legs make room
// for the last.
func (s *sketch) routes(legs []leg) (chosen []route, ok bool) {
	chosen = make([]route, len(legs))
	for range 3 {
		ok = true
		for k := range legs {
			chosen[k] = route{}
			best, free := s.cheapest(&legs[k], chosen)
			if best == nil {
				return nil, false
			}
			chosen[k], ok = *best, ok && free
		}
		if ok {
			return chosen, true
		}
	}
	return nil, false
}

// cheapest returns the route that disturbs the others least, or nil if there is
// none. free reports that it crosses none and runs into none. A route costs at
// least its bend, and routes come in order of bend.
func (s *sketch) cheapest(l *leg, others []route) (best *route, free bool) {
	least := math.Inf(1)
	for k := 0; ; k++ {
		r, ok := s.next(l, k, least)
		if !ok {
			return best, free
		}
		crossed, near, merges := r.meets(others)
		cost := float64(crossed)*crossingCost + float64(near)*nearCost + math.Abs(r.bow)
		if merges {
			cost += mergeCost
		}
		if cost < least {
			best, free, least = r, crossed == 0 && !merges, cost
		}
	}
}

// Costs of a crossing, of a close neighbour and of a merge, on the scale of a
// bend.
const (
	crossingCost = 1.0
	nearCost     = 0.2
	mergeCost    = 1.0 // added to nearCost
	nearMm       = 2.0
)

// meets counts the routes that r crosses and those that it runs near, and
// reports whether it merges with one.
func (r *route) meets(others []route) (crossed, near int, merges bool) {
	around := r.bounds.Grown(nearMm)
	for k := range others {
		o := &others[k]
		if !around.Meets(o.bounds) {
			continue
		}
		crosses := r.crosses(o)
		if crosses {
			crossed++
		}
		if r.runsNear(o) {
			near++
		}
		merges = merges || !crosses && r.mergesWith(o)
	}
	return crossed, near, merges
}

// runsNear reports whether o runs or ends so close to r that readers could
// confuse the two.
func (r *route) runsNear(o *route) bool {
	around := o.bounds.Grown(nearMm)
	for _, p := range r.points {
		if !around.Contains(p) {
			continue
		}
		for _, q := range o.points {
			if math.Abs(p.X-q.X) < nearMm && math.Abs(p.Y-q.Y) < nearMm {
				return true
			}
		}
	}
	return false
}

// bows are the bends to try, as fractions of the arrow's length, straightest
// first.
var bows = []float64{0, 0.07, -0.07, 0.09, -0.09, 0.12, -0.12, 0.16, -0.16, 0.2, -0.2, 0.26, -0.26, 0.34, -0.34}

// route bends an arrow by a fraction of its length. ok is false when the arrow
// would touch a mark, a bore or a dowel, or leave the part.
func (s *sketch) route(from, to int, bow float64) (route, bool) {
	a, b := s.marks[from], s.marks[to]
	dx, dy := b.at.X-a.at.X, b.at.Y-a.at.Y
	length := math.Hypot(dx, dy)
	control := scene.Point{
		X: (a.at.X+b.at.X)/2 - dy*bow*2, // a quadratic curve reaches half as far as its control
		Y: (a.at.Y+b.at.Y)/2 + dx*bow*2,
	}
	start := along(a.at, control, s.reach(from)+clearance)
	end := along(b.at, control, s.reach(to)+clearance)
	if length < s.reach(from)+s.reach(to)+2*clearance+headLength {
		return route{}, false
	}
	r := route{bow: bow, curve: [4]scene.Point{start, mix(start, control), mix(end, control), end}}
	const steps = 16
	r.points = make([]scene.Point, 0, steps+1)
	for k := range steps + 1 {
		r.points = append(r.points, scene.Bezier(r.curve[0], r.curve[1], r.curve[2], r.curve[3], float64(k)/steps))
	}
	r.bounds = scene.BoxOf(r.points...)
	return r, s.clear(r, from, to)
}

func (s *sketch) clear(r route, from, to int) bool {
	if !s.onPart(r) || !s.space.ClearOfBoxes(r.points, clearance) {
		return false
	}
	for i, m := range s.marks {
		keep := s.reach(i) + clearance*0.8
		if i == from || i == to || !r.bounds.Grown(keep+headHalf).Contains(m.at) {
			continue
		}
		// The head is wider than the line.
		if base := r.base(); math.Hypot(base.X-m.at.X, base.Y-m.at.Y) < s.reach(i)+headHalf+headAir {
			return false
		}
		for k := 1; k < len(r.points); k++ {
			if math.Sqrt(scene.SquareToLine(m.at, r.points[k-1], r.points[k])) < keep {
				return false
			}
		}
	}
	return true
}

// onPart reports whether an arrow stays on the part: inside its edge, and clear
// of openings, bores and dowels.
func (s *sketch) onPart(r route) bool {
	for _, p := range r.points {
		covered := false
		for _, edge := range s.edges {
			covered = covered != scene.Inside(p, edge) // inside an even number of edges is in an opening
		}
		if !covered {
			return false
		}
	}
	for _, h := range s.holes {
		for k := 1; k < len(r.points); k++ {
			if math.Sqrt(scene.SquareToLine(h.at, r.points[k-1], r.points[k])) < h.radius+clearance/2 {
				return false
			}
		}
	}
	return true
}

// mergesWith reports whether two arrows look like one.
func (r *route) mergesWith(o *route) bool {
	return r.bounds.Grown(mergeMm).Meets(o.bounds) && (r.merges(o) || o.merges(r))
}

func (r *route) merges(o *route) bool {
	around := o.bounds.Grown(mergeMm)
	for _, p := range r.points {
		if !around.Contains(p) {
			continue
		}
		for k := 1; k < len(o.points); k++ {
			if scene.SquareToLine(p, o.points[k-1], o.points[k]) < mergeMm*mergeMm {
				return true
			}
		}
	}
	return false
}

func (r *route) crosses(o *route) bool {
	if !r.bounds.Meets(o.bounds) {
		return false
	}
	for i := 1; i < len(r.points); i++ {
		p, q := r.points[i-1], r.points[i]
		if !scene.BoxOf(p, q).Meets(o.bounds) {
			continue
		}
		for k := 1; k < len(o.points); k++ {
			if scene.Crossing(p, q, o.points[k-1], o.points[k]) {
				return true
			}
		}
	}
	return false
}

// base is the point where the line of an arrow ends and its head begins.
func (r route) base() scene.Point { return along(r.curve[3], r.points[len(r.points)-2], headLength) }

func (r route) head() scene.Shape {
	head := Arrowhead(r.base(), r.curve[3], headHalf, scene.Accent)
	head.Tag = scene.Tag{Role: scene.Trail}
	return head
}

// along returns the point at a distance from one point towards another. The
// distance may exceed the gap between them.
func along(from, to scene.Point, distance float64) scene.Point {
	length := math.Max(math.Hypot(to.X-from.X, to.Y-from.Y), 1e-9)
	return scene.Point{X: from.X + (to.X-from.X)/length*distance, Y: from.Y + (to.Y-from.Y)/length*distance}
}
