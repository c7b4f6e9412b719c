package diagram

import (
	"math"

	"drawdown/render/scene"
	"drawdown/sequence"
)

// pathLimit is the number of fasteners past which arrows would tangle.
const pathLimit = 24

// paths says whether arrows may show the order: neither on a section, whose
// numbers do not follow one another.
func (s *sketch) paths() bool {
	return s.req.Show == Numbers && s.count() <= pathLimit && s.req.piece == nil && !s.req.noPaths
}

// planPath routes the arrows from each number to the next, group by group. A
// group in which one finds no clear way, or too many cross, has none. Where the
// main group has none, rings are shaded instead.
func (s *sketch) planPath() []scene.Item {
	var routes []route
	if s.paths() && !s.out.Led {
		routes = s.allRoutes()
	}
	if !s.out.Path {
		s.out.Rings = s.req.Show == Numbers && s.req.piece == nil && s.ringsGuide()
		return nil
	}
	s.out.WholePath = len(routes) == len(s.marks)-1
	for _, r := range routes {
		for k := 1; k < len(r.points); k++ {
			s.space.TakeLine(r.points[k-1], r.points[k])
		}
		s.space.TakeBox(r.head().Path.Bounds())
	}
	return drawRoutes(routes)
}

// allRoutes finds the arrows of each group and those from group to group. The
// arrows of the main work may cross a little; others only stand where nothing
// is in their way, and where none runs into another group's, along which the
// eye would go on.
func (s *sketch) allRoutes() []route {
	var routes []route
	group := map[int]int{}
	for k, g := range s.req.Plan.Groups {
		for _, i := range g.Members {
			group[i] = k
		}
	}
	for k, g := range s.req.Plan.Groups {
		legs := s.legs(func(a, b int) bool { return group[a] == k && group[b] == k })
		more, crossings, ok := s.routes(legs, routes)
		if ok && (crossings == 0 || s.leads(g.Members) && crossings <= len(legs)/2) {
			routes = append(routes, more...)
			s.out.Path = s.out.Path || len(more) > 0 && s.leads(g.Members)
		}
	}
	for _, leg := range s.legs(func(a, b int) bool { return group[a] != group[b] }) {
		more, crossings, ok := s.routes([][2]int{leg}, routes)
		if ok && crossings == 0 && math.Abs(more[0].bow) <= mostBridgeBow {
			routes = append(routes, more...)
		}
	}
	return routes
}

// mostBridgeBow keeps an arrow from group to group short: a long way round
// would only puzzle.
const mostBridgeBow = 0.2

// leads says whether a group is the one that most of the work is on.
func (s *sketch) leads(members []int) bool { return 2*len(members) >= len(s.marks) }

// legs lists the pairs of successive numbers that an arrow is to join.
func (s *sketch) legs(joins func(a, b int) bool) [][2]int {
	var legs [][2]int
	for k := 1; k < len(s.req.Order); k++ {
		if a, b := s.req.Order[k-1], s.req.Order[k]; joins(a, b) {
			legs = append(legs, [2]int{a, b})
		}
	}
	return legs
}

func drawRoutes(routes []route) []scene.Item {
	var items []scene.Item
	for _, r := range routes {
		var p scene.Path
		p.MoveTo(r.curve[0].X, r.curve[0].Y)
		p.CurveTo(r.curve[1], r.curve[2], r.base())
		items = append(items, scene.Shape{Path: p, Stroke: scene.Accent, Width: 0.45, Tag: scene.Tag{Role: scene.Trail}}, r.head())
	}
	return items
}

// ringsGuide says whether shading every second ring would guide the eye: there
// must be a few fasteners on either side of it.
func (s *sketch) ringsGuide() bool {
	const few = 3
	count := [2]int{}
	for i := range s.marks {
		count[s.ringOf(i)%2]++
	}
	return count[0] >= few && count[1] >= few
}

// ringOf gives the ring that a fastener lies on within the main group, inside
// out; 0 in other groups.
func (s *sketch) ringOf(fastener int) int {
	if s.ring == nil {
		s.ring = make([]int, len(s.marks))
		for _, g := range s.req.Plan.Groups {
			if !s.leads(g.Members) {
				continue
			}
			for n, ring := range sequence.Rings(s.req.Plan.Joint, g.Members) {
				for _, i := range ring {
					s.ring[i] = n
				}
			}
		}
	}
	return s.ring[fastener]
}
