package diagram

import "drawdown/render/scene"

// pathLimit is the largest number of fasteners with arrows. With more, they
// tangle.
const pathLimit = 24

// paths reports whether arrows may show the order. A section has none, because
// its numbers are not consecutive.
func (s *sketch) paths() bool {
	return s.req.Show == Numbers && s.count() <= pathLimit && s.req.piece == nil && !s.req.NoArrows
}

// planPath routes the arrows from each number to the next: all of them or none.
// A path with gaps, or with an arrow that is hard to see, misleads.
func (s *sketch) planPath() []scene.Item {
	if !s.paths() || s.out.Led {
		return nil
	}
	routes, ok := s.routes(s.legs())
	if !ok || len(routes) == 0 {
		return nil
	}
	s.out.Path = true
	for _, r := range routes {
		for k := 1; k < len(r.points); k++ {
			s.space.TakeLine(r.points[k-1], r.points[k])
		}
		s.space.TakeBox(r.head().Path.Bounds())
	}
	return drawRoutes(routes)
}

// legs lists the pairs of successive numbers.
func (s *sketch) legs() []leg {
	var legs []leg
	for k := 1; k < len(s.req.Order); k++ {
		legs = append(legs, leg{from: s.req.Order[k-1], to: s.req.Order[k]})
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
