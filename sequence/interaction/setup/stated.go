package setup

import (
	"fmt"
	"slices"

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
		// For each millimetre of the row, so that its width is a millimetre.
		s.Row = &compliance.Row{BendingNmm2: float64(r.Bending), WidthMm: 1, LengthMm: float64(r.Length), StartMm: float64(r.Start)}
	}
	if f := c.Flange; f != nil {
		s.Flange = &compliance.Flange{
			Outer: f.Outer, Bore: f.Bore, GasketInner: f.GasketInner, GasketOuter: f.GasketOuter,
			PipeWall: f.PipeWall, PipeRadius: f.PipeRadius, Pair: !f.Single && ThroughBolted(p),
		}
	}
	return s
}

// ThroughBolted says whether every fastener has a nut, and not a tapped hole.
func ThroughBolted(p plan.Plan) bool {
	return !slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Into != "" })
}

func bandOfSpan[T unit.AreaStiffness | unit.LineStiffness](s unit.Span[T]) bounds.Band {
	return bounds.Band{Low: float64(s.Low), Nominal: float64(s.Nominal), High: float64(s.High)}
}

// over lays what is stated over what the file states, field by field. What
// excludes each other goes together: a gasket stated here leaves nothing of the
// file's, and a row of the file, whose figures hold the part and its gasket,
// falls away where either is stated here.
func (s Setup) over(file Setup) (both Setup, assumed []string) {
	both = s
	statesGasket := s.Gasket != "" || s.Stiffness != (bounds.Band{}) || s.Foundation != (bounds.Band{})
	statesPart := s.Material != "" || s.Thickness != 0 || s.Counterpart != "" || s.CounterpartThickness != 0
	if s.Row == nil && file.Row != nil && (statesGasket || statesPart || s.Preview) {
		assumed = append(assumed, "the row of the file left aside, as part or gasket is stated anew")
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

// words say what is stated.
func (s Setup) words() (list []string) {
	say := func(stated bool, format string, values ...any) {
		if stated {
			list = append(list, fmt.Sprintf(format, values...))
		}
	}
	say(s.Material != "", "part of %s", s.Material)
	say(s.Thickness != 0, "part bends as a plate of %v", s.Thickness)
	say(s.Counterpart != "", "on %s", s.Counterpart)
	say(s.CounterpartThickness != 0, "counterpart bends as a plate of %v", s.CounterpartThickness)
	say(s.Gasket != "" && s.Stiffness == (bounds.Band{}), "gasket: %s", s.Gasket)
	say(s.Stiffness != (bounds.Band{}), "gasket of %s MPa/mm", bandWords(s.Stiffness))
	say(s.Foundation != (bounds.Band{}) && s.Row == nil, "foundation of %s MPa/mm", bandWords(s.Foundation))
	say(s.Strip != 0, "gasket %v wide along the edge", s.Strip)
	say(s.Own != 0, "bolt and members give way by %.3g mm/N", float64(s.Own))
	if r := s.Row; r != nil {
		say(true, "row of %.3g N·mm² on %s N/mm², %.4g mm long, first bolt at %.4g mm", r.BendingNmm2, bandWords(s.Foundation), r.LengthMm, r.StartMm)
	}
	if f := s.Flange; f != nil {
		say(f.Outer != 0, "flange %v across", f.Outer)
		say(f.Bore != 0, "bore %v", f.Bore)
		say(!f.FullFace(), "raised face, gasket from %v to %v", f.GasketInner, f.GasketOuter)
		say(f.PipeWall != 0, "pipe or hub with a wall of %v at a radius of %v", f.PipeWall, f.PipeRadius)
	}
	return list
}

// bandWords write the figures from low to high; one where they are the same.
func bandWords(b bounds.Band) string {
	if b.Low == b.High {
		return fmt.Sprintf("%.3g", b.Nominal)
	}
	return fmt.Sprintf("%.3g–%.3g–%.3g", b.Low, b.Nominal, b.High)
}

// orFile takes the file's value where none is stated.
func orFile[T comparable](stated *T, file T) {
	if *stated == *new(T) {
		*stated = file
	}
}

// flangeOver lays the measures of a flange over those of the file.
func flangeOver(f, file *compliance.Flange) *compliance.Flange {
	if f == nil || file == nil {
		if f == nil {
			return file
		}
		return f
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
