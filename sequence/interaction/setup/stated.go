package setup

import (
	"cmp"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/stiffness"
)

// SetupOf is what the file of a plan states about its joint.
func SetupOf(p plan.Plan) Setup {
	c := p.Clamped
	s := Setup{
		Material: c.Part.Material, Thickness: c.Part.Thickness,
		Counterpart: c.Counterpart.Material, CounterpartThickness: c.Counterpart.Thickness,
		Gasket: compliance.Gasket(c.Gasket.Kind), Stiffness: bandOfSpan(c.Gasket.Stiffness), Strip: c.Gasket.Strip,
		Own: stiffness.Resilience(c.BoltFlexibility),
	}
	if r := c.Row; r != nil {
		s.Foundation = bandOfSpan(r.Foundation)
		// Per millimetre of the row, so its width is 1 mm.
		s.Row = &compliance.Row{BendingNmm2: float64(r.Bending), WidthMm: 1, LengthMm: float64(r.Length), StartMm: float64(r.Start)}
	}
	if f := c.Flange; f != nil {
		s.Flange = &compliance.Flange{
			Outer: f.Outer, Bore: f.Bore, GasketInner: f.GasketInner, GasketOuter: f.GasketOuter,
			PipeWall: f.PipeWall, PipeRadius: f.PipeRadius,
		}
	}
	if c.Gasket.Ring() && (s.Flange != nil || roundWithoutOutline(p)) {
		if s.Flange == nil {
			s.Flange = &compliance.Flange{}
		}
		s.Flange.GasketInner, s.Flange.GasketOuter = c.Gasket.Inside, c.Gasket.Outside
	}
	return s
}

// roundWithoutOutline reports whether the fasteners are on a circle and nothing
// says that the part is not round.
func roundWithoutOutline(p plan.Plan) bool {
	return p.Clamped.Row == nil && len(p.Joint.Outline) == 0 && len(p.Joint.Fasteners) > 2 && compliance.OnCircle(p.Joint.Points())
}

// throughBolted reports whether every fastener has a nut instead of a tapped
// hole.
func throughBolted(p plan.Plan) bool {
	return !slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Into != "" })
}

func bandOfSpan[T unit.AreaStiffness | unit.LineStiffness](s unit.Span[T]) bounds.Band {
	return bounds.Band{Low: float64(s.Low), Nominal: float64(s.Nominal), High: float64(s.High)}
}

// over combines what is stated with the file, field by field; stated values
// take precedence. Conflicting values are replaced together: a stated gasket
// replaces everything about the file's gasket. A row in the file, whose figures
// include part and gasket, is dropped if either is stated.
func (s Setup) over(file Setup) (both Setup, assumed []finding.Finding) {
	both = s
	statesGasket := s.Gasket != "" || s.Stiffness != (bounds.Band{}) || s.Foundation != (bounds.Band{})
	statesPart := s.Material != "" || s.Thickness != 0 || s.Counterpart != "" || s.CounterpartThickness != 0
	if s.Row == nil && file.Row != nil && (statesGasket || statesPart || s.Preview) {
		assumed = append(assumed, finding.Noted(RowLeft, nil))
		file.Row, file.Foundation = nil, bounds.Band{}
	}
	if !statesGasket {
		both.Gasket, both.Stiffness, both.Foundation = file.Gasket, file.Stiffness, file.Foundation
	}
	orFile(&both.Material, file.Material)
	orFile(&both.Thickness, file.Thickness)
	orFile(&both.Counterpart, file.Counterpart)
	orFile(&both.CounterpartThickness, file.CounterpartThickness)
	orFile(&both.Strip, file.Strip)
	orFile(&both.Own, file.Own)
	orFile(&both.Row, file.Row)
	both.Flange = flangeOver(s.Flange, file.Flange)
	return both, assumed
}

// orFile uses the file's value if none is stated.
func orFile[T comparable](stated *T, file T) {
	if *stated == *new(T) {
		*stated = file
	}
}

// flangeOver combines the dimensions of a flange with those of the file.
func flangeOver(f, file *compliance.Flange) *compliance.Flange {
	if f == nil || file == nil {
		return cmp.Or(f, file)
	}
	both := *f
	orFile(&both.Outer, file.Outer)
	orFile(&both.Bore, file.Bore)
	if f.FullFace() {
		both.GasketInner, both.GasketOuter = file.GasketInner, file.GasketOuter
	}
	if f.PipeWall == 0 {
		both.PipeWall, both.PipeRadius = file.PipeWall, file.PipeRadius
	}
	return &both
}
