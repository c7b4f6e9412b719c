package trace

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace/rings"
	"drawdown/geometry/unit"
)

// Limits between what both routes see and what only one does (common practice, no
// source).
const (
	widestRingMm   = 42.0 // what is wider, one threshold finds
	mostCandidates = 60
	agreedShare    = 0.1 // of the diameter that two routes may differ by
	ringPixels     = 6.0 // of the radius: smaller rings are not looked for
	leastRingMm    = 0.5
	bayRound       = 0.55 // of the way round that a ring at another edge has to be seen
	// neckRound: the round end of an opening is seen for half of the way and some
	// more; a hole torn into one for more than that.
	neckRound = 0.7
	onLineMm  = 0.4
	// A ring is whole that is seen nearly all the way, and clearly for most of it. The
	// edge of a shape that lies on it for about half of the way is the same edge.
	wholeRound = 0.9
	clearRound = 0.65
	halfWay    = 0.45
	cleanMm    = 0.12
	clearWay   = 0.6 // of a ring that lies along a line
	tornShare  = 0.7 // of the diameter of a shape that a hole with a tear has
)

// ring is a circle that the second route saw, in millimetres on the glass.
type ring struct {
	circle
	rings.Ring
	edge []geometry.Point
	side float64 // of a pixel there, in mm
	hole bool    // its inside is the tone of the ground
}

// secondRoute looks for circles by their edges alone and compares them with the
// shapes that the threshold found. A narrower edge inside a hole is taken for the
// hole: what is round it is a chamfer or sealant. What only this route sees
// becomes a candidate.
func (t *tracer) secondRoute(found *Found, outer edge) {
	confirmed := make([]bool, len(found.Shapes))
	var left []ring
	for _, r := range t.rings(outer) {
		if !t.compared(r, found.Shapes, confirmed) {
			left = append(left, r)
		}
	}
	for i := range found.Shapes {
		s := &found.Shapes[i]
		if s.Round() && !s.slot && !confirmed[i] && s.DiameterMm < 0.9*widestRingMm && s.DiameterMm/2/outer.side > 1.5*ringPixels {
			s.doubt(OneRoute, nil)
		}
	}
	for _, r := range left {
		if len(found.candidates()) < mostCandidates && t.isCandidate(r, found.Shapes, outer) {
			found.Shapes = append(found.Shapes, r.candidate(OnlyEdge))
		}
	}
}

// rings lists the circles in the picture, laid through their edges in millimetres.
func (t *tracer) rings(outer edge) []ring {
	smallest := max(ringPixels, t.options.SmallestMm/2/outer.side)
	var all []ring
	for _, seen := range rings.Find(t.picture, smallest, widestRingMm/2/outer.side) {
		if r, ok := t.ring(seen); ok && 2*r.radius >= t.options.SmallestMm {
			all = append(all, r)
		}
	}
	return all
}

func (t *tracer) ring(seen rings.Ring) (ring, bool) {
	r := ring{Ring: seen, side: t.frame.pixelMm(seen.Centre.X, seen.Centre.Y), hole: seen.Bright == (t.mask.tone == ToneDark)}
	r.edge = mapped(seen.Edge, func(p geometry.Point) geometry.Point { return t.frame.Mm(p.X, p.Y) })
	ok := false
	r.circle, ok = fitCircle(r.edge)
	return r, ok
}

// compared finds the shape that a ring is the edge of, or lies in, and notes what
// that says of the shape. False means that the ring is none of a shape's.
func (t *tracer) compared(r ring, shapes []Shape, confirmed []bool) bool {
	for i := range shapes {
		s := &shapes[i]
		off, d := s.At.Distance(r.centre), 2*r.radius
		switch {
		case r.tornIn(*s):
			s.torn(r)
			confirmed[i] = true
			return true
		case off > 0.3*max(d, s.DiameterMm)/2+r.side || s.Role == Port && s.DiameterMm >= surePortMm:
			continue
		case s.Round() && math.Abs(d-s.DiameterMm) <= max(leastRingMm, agreedShare*s.DiameterMm):
			confirmed[i] = confirmed[i] || r.hole
			if s.Kept < soundShare && r.follows(*s) {
				s.completed(r)
			}
			return true
		case d > s.DiameterMm && r.whole() && r.follows(*s):
			s.completed(r)
			confirmed[i] = true
			return true
		case d < s.DiameterMm && !r.hole:
			if s.Round() && d > 0.4*s.DiameterMm {
				s.doubt(Filled, finding.Values{"inner": unit.Length(d)})
				confirmed[i] = true
			}
			return true
		case d < s.DiameterMm && d > 0.4*s.DiameterMm && r.Round > roundShare:
			s.narrowed(r)
			confirmed[i] = true
			return true
		case d > s.DiameterMm && s.Round() && s.DiameterMm > 0.4*d:
			return true // the rim of a chamfer, or of sealant
		}
	}
	return false
}

// follows reports whether a ring goes on where the edge of a shape, by its tone, turns
// inwards: a shadow or dirt in the hole hides the rest from the threshold. A tear goes
// outwards and stays a tear.
func (r ring) follows(s Shape) bool {
	return r.hole && !r.leftBy(s) && r.Round >= clearRound && r.scatter <= max(r.side, cleanMm) && sharedWay(r.edge, s.Edge) > halfWay
}

// leftBy reports whether the edge of a shape goes outwards from a ring.
func (r ring) leftBy(s Shape) bool {
	return slices.ContainsFunc(s.Edge, func(p geometry.Point) bool { return r.off(p) > max(2*r.side, cleanMm) })
}

// tornIn reports whether a shape that is not round is a hole with a tear: a ring is
// most of its edge.
func (r ring) tornIn(s Shape) bool {
	way := r.wayRound(s.Edge, max(1.5*r.side, cleanMm, 2*noticedShare*r.radius))
	return r.hole && s.Role == Port && s.DiameterMm < surePortMm && 2*r.radius > tornShare*s.DiameterMm && min(r.Round, way) > neckRound && r.leftBy(s)
}

// torn takes a ring for the hole that a tear runs into.
func (s *Shape) torn(r ring) {
	s.completed(r)
	s.Kept, s.Doubts = r.Round, nil
	s.doubt(Torn, finding.Values{"round": r.Round})
}

// whole reports whether a ring is seen nearly all the way, however faintly.
func (r ring) whole() bool { return r.Faint >= wholeRound }

// completed takes a ring for the edge of a shape. Nothing about that is in doubt
// where the ring is whole.
func (s *Shape) completed(r ring) {
	s.At, s.DiameterMm, s.ScatterMm = r.centre, 2*r.radius, r.scatter
	s.Edge, s.Role, s.Group, s.slot = r.edge, "", 0, false
	if !r.whole() {
		return
	}
	s.Kept = r.Faint
	s.Doubts = slices.DeleteFunc(s.Doubts, func(f finding.Finding) bool {
		return f.Code == Torn || f.Code == NotRound || f.Code == Long || f.Code == PerhapsPort
	})
}

// narrowed takes the inner edge of a shape for the hole. The first ring is the
// surest.
func (s *Shape) narrowed(r ring) {
	if finding.Has(s.Doubts, InnerEdge) {
		return
	}
	outer := s.DiameterMm
	s.At, s.DiameterMm, s.ScatterMm, s.Kept = r.centre, 2*r.radius, r.scatter, r.Round
	s.Edge, s.Role, s.Group, s.slot = r.edge, "", 0, false
	s.Doubts = nil
	s.doubt(InnerEdge, finding.Values{"inner": unit.Length(2 * r.radius), "outer": unit.Length(outer)})
}

// isCandidate reports whether a ring may be a hole of the part that the threshold
// missed: it lies on the part, or at its rim, and is no piece of another edge.
func (t *tracer) isCandidate(r ring, shapes []Shape, outer edge) bool {
	for _, s := range shapes {
		near := s.At.Distance(r.centre)
		if s.Role == Candidate && near < max(r.radius, s.DiameterMm/2) {
			return false
		}
		if s.Role != Port && !(s.Round() && s.DiameterMm > 2*r.radius) {
			continue
		}
		along := sharedWay(r.edge, s.Edge)
		if along > clearWay && (!r.hole || r.Round < neckRound || 2*r.radius > 0.7*s.DiameterMm) {
			return false
		}
		if along < clearWay && geometry.Inside(r.centre, s.Edge) {
			return false // dirt on what lies under the part
		}
	}
	if sharedWay(r.edge, outer.mm) > 0.2 && (!r.hole || r.Round < bayRound) {
		return false
	}
	return geometry.Inside(r.centre, outer.mm) || r.hole && sharedWay(r.edge, outer.mm) > clearWay
}

// sharedWay is the share of some points that lie near a line.
func sharedWay(points, line []geometry.Point) float64 {
	step := max(1, len(line)/2000)
	n := 0
	for _, p := range points {
		for i := 0; i < len(line); i += step {
			if p.Distance(line[i]) < onLineMm {
				n++
				break
			}
		}
	}
	return float64(n) / max(float64(len(points)), 1)
}

// candidate is the shape of a place where only an edge was seen.
func (r ring) candidate(code finding.Code) Shape {
	s := Shape{Role: Candidate, Group: -1, At: r.centre, DiameterMm: 2 * r.radius, ScatterMm: r.scatter, Kept: r.Round, Edge: r.edge}
	s.doubt(code, finding.Values{"diameter": unit.Length(2 * r.radius), "round": r.Round, "levels": int(math.Round(r.Step))})
	return s
}

func (f Found) candidates() []Shape {
	return keep(f.Shapes, func(i int) bool { return f.Shapes[i].Role == Candidate })
}
