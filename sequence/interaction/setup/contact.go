package setup

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
)

// Contact is the face that the gasket covers.
type Contact struct {
	AreaMm2 float64 // without the holes of the fasteners
	Assumed []finding.Finding
}

// ContactOf returns the face of a plan's gasket; false if it is unknown: a row
// that only states its stiffness.
func ContactOf(p plan.Plan) (Contact, bool) {
	s := &settledSetup{plan: p, Settled: Settled{At: p.Joint.Points()}}
	if len(s.At) == 0 {
		return Contact{}, false
	}
	s.stated, _ = Setup{}.over(SetupOf(p))
	s.shape, s.through = s.shapeOf(), throughBolted(p)
	if g := p.Clamped.Gasket; g.Ring() {
		centre := geometry.Enclose(s.At).Centre
		return Contact{AreaMm2: ringMm2(g.Inside, g.Outside) - s.holesMm2(compliance.Between(centre, g.Inside, g.Outside))}, true
	}
	area, known := s.areaOf(s.kernel())
	return Contact{area, faceFacts(s.Assumed)}, known && area > 0
}

// faceFacts selects the assumptions about the size of the face.
func faceFacts(assumed []finding.Finding) (list []finding.Finding) {
	for _, f := range assumed {
		switch f.Code {
		case GasketStrip, GasketWhole, FlangeAcross, FlangeBore, RowSize, SeparateParts, Outline:
			list = append(list, f)
		}
	}
	return list
}

func (s *settledSetup) areaOf(k compliance.Kernel) (areaMm2 float64, known bool) {
	switch k := k.(type) {
	case compliance.Flange:
		inside, outside := k.GasketInner, k.GasketOuter
		if k.FullFace() {
			inside, outside = k.Bore, k.Outer
		}
		return ringMm2(inside, outside) - s.holesMm2(compliance.Between(k.Centre, inside, outside)), true
	case compliance.Plate:
		return k.Gasket.AreaMm2(k.Box) - s.holesMm2(k.Gasket), true
	case compliance.Row:
		return k.WidthMm*k.LengthMm - s.holesMm2(nil), s.stated.Row == nil
	case compliance.Separate:
		for _, piece := range k {
			row, _ := piece.Kernel.(compliance.Row)
			areaMm2 += row.WidthMm * row.LengthMm
		}
		return areaMm2 - s.holesMm2(nil), true
	}
	return 0, false
}

func ringMm2(inside, outside unit.Length) float64 {
	return math.Pi / 4 * float64(outside*outside-inside*inside)
}

// usualHole is the ratio of a hole to its bolt (ISO 273, medium series).
const usualHole = 1.1

// holesMm2 is the area of the holes of the fasteners that a region covers.
func (s *settledSetup) holesMm2(region compliance.Region) (areaMm2 float64) {
	for i, at := range s.At {
		if !region.Covers(at) {
			continue
		}
		kind := s.plan.KindOf(i)
		hole := kind.Hole
		if hole == 0 {
			hole = unit.Length(usualHole * kind.SizeMm())
		}
		areaMm2 += ringMm2(0, hole)
	}
	return areaMm2
}
