package setup

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/gasket"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/tension/strength"
)

// kernel returns the model of the shape of part and gasket.
func (s *settledSetup) kernel() compliance.Kernel {
	switch {
	case s.stated.Preview:
		return compliance.InfinitePlate{RigidityNmm: s.rigidity()}
	case s.shape == rowShape:
		return s.row()
	case s.shape == flangeShape:
		return s.flange()
	case s.shape == piecesShape:
		return s.pieces()
	}
	return s.plate()
}

// rigidity is that of the part combined with its counterpart if the thickness
// of that is stated, or with an equal part for through bolts.
func (s *settledSetup) rigidity() float64 {
	if other, ok := s.counterpart(); ok {
		return compliance.Facing(s.Part.RigidityNmm(), other.RigidityNmm())
	}
	return s.Part.RigidityNmm()
}

// counterpart is the part that bends underneath; false if it is a block.
func (s *settledSetup) counterpart() (compliance.Part, bool) {
	switch {
	case s.other.Thickness > 0:
		return s.other, true
	case s.through:
		s.assume(EqualParts, nil)
		return s.Part, true
	}
	return compliance.Part{}, false
}

// edgeShare is how far the part extends beyond its outer bolts, in diameters of
// the thread (common practice, no source: 1.5).
const edgeShare = 1.5

func (s *settledSetup) edgeMm() float64 {
	widest := 0.0
	for _, k := range s.plan.Kinds {
		if k.Thread != nil {
			widest = math.Max(widest, k.Thread.MajorMm)
		}
	}
	if widest == 0 {
		widest = 10
	}
	return edgeShare * widest
}

func (s *settledSetup) row() compliance.Row {
	if s.stated.Row != nil {
		return *s.stated.Row
	}
	row := s.rowOver(s.At)
	s.assume(RowSize, finding.Values{"width": unit.Length(row.WidthMm), "length": unit.Length(row.LengthMm)})
	return row
}

// rowOver is a beam over a row of bolts, with the default edges.
func (s *settledSetup) rowOver(at []geometry.Point) compliance.Row {
	first, last := compliance.RowEnds(at)
	edge := s.edgeMm()
	bending := s.Part.BendingNmm2(unit.Length(2 * edge))
	if other, ok := s.counterpart(); ok {
		bending = compliance.Facing(bending, other.BendingNmm2(unit.Length(2*edge)))
	}
	return compliance.Row{BendingNmm2: bending, WidthMm: 2 * edge, LengthMm: first.Distance(last) + 2*edge, StartMm: edge}
}

func (s *settledSetup) pieces() compliance.Kernel {
	place := s.plan.Joint.Index()
	var pieces compliance.Separate
	for _, c := range s.plan.Joint.Clusters {
		var piece compliance.Piece
		var at []geometry.Point
		for _, id := range c.Of {
			piece.Fasteners, at = append(piece.Fasteners, place[id]), append(at, s.At[place[id]])
		}
		piece.Kernel = s.rowOver(at)
		pieces = append(pieces, piece)
	}
	s.assume(SeparateParts, finding.Values{"parts": len(pieces), "width": unit.Length(2 * s.edgeMm())})
	return pieces
}

// flangeOuter and flangeBore are the default diameters of a round flange, in
// diameters of the thread outside and inside the bolt circle (common practice,
// no source).
const flangeOuter, flangeBore = 2.2, 4

func (s *settledSetup) flange() compliance.Flange {
	disc := geometry.Enclose(s.At)
	var f compliance.Flange
	if s.stated.Flange != nil {
		f = *s.stated.Flange
	}
	f.Part, f.Pair = s.Part, s.through && (s.plan.Clamped.Flange == nil || !s.plan.Clamped.Flange.Single)
	if f.BoltCircle == 0 {
		f.Centre, f.BoltCircle = disc.Centre, unit.Length(2*disc.Radius)
	}
	thread := unit.Length(s.edgeMm() / edgeShare)
	if f.Outer == 0 {
		f.Outer = f.BoltCircle + flangeOuter*thread
		s.assume(FlangeAcross, finding.Values{"outer": f.Outer})
	}
	if f.Bore == 0 {
		if bore := s.centralBore(disc); bore != nil {
			f.Bore = unit.Length(bore.Diameter)
		} else {
			f.Bore = max(f.BoltCircle-flangeBore*thread, f.BoltCircle/4)
			s.assume(FlangeBore, finding.Values{"bore": f.Bore})
		}
	}
	if f.FullFace() {
		s.assume(GasketWhole, finding.Values{"why": "ring"})
	}
	return f
}

func (s *settledSetup) plate() compliance.Kernel {
	p := compliance.Plate{RigidityNmm: s.rigidity(), Poisson: s.Part.Poisson}
	outline := s.plan.Joint.Outline
	if corners := slices.Concat(outline...); len(corners) > 0 {
		p.Box = geometry.Bounds(corners)
		p.Part = compliance.Inside(outline)
	} else {
		p.Box = geometry.Bounds(s.At).Grown(2 * s.edgeMm())
		s.assume(Outline, finding.Values{"width": unit.Length(p.Box.Width()), "height": unit.Length(p.Box.Height())})
		outline = [][]geometry.Point{{p.Box.Min, {X: p.Box.Max.X, Y: p.Box.Min.Y}, p.Box.Max, {X: p.Box.Min.X, Y: p.Box.Max.Y}}}
	}
	p.Part = p.Part.Without(compliance.Openings(s.plan.Joint.Bores))
	p.Gasket = p.Part.Without(compliance.Bores(s.plan.Joint.Bores))
	if g := s.plan.Clamped.Gasket; g.Ring() {
		p.NarrowestMm = float64(g.Outside-g.Inside) / 2
		p.Gasket = p.Gasket.And(compliance.Between(geometry.Enclose(s.At).Centre, g.Inside, g.Outside))
		return p
	}
	if strip := s.strip(outline); strip > 0 {
		p.NarrowestMm = strip
		p.Gasket = p.Gasket.And(compliance.StripAlong(outline, strip))
	}
	return p
}

// strip is the width of a gasket along the edge: stated, or, for a cover, so
// that its bolts are in its middle. 0: the gasket covers the part.
func (s *settledSetup) strip(outline [][]geometry.Point) float64 {
	if s.stated.Strip != 0 {
		return float64(s.stated.Strip)
	}
	if len(s.plan.Joint.Bores) > 1 {
		s.assume(GasketWhole, nil)
		return 0
	}
	widest := 0.0
	for _, p := range s.At {
		widest = math.Max(widest, 2*compliance.FromEdge(outline, p))
	}
	box := geometry.Bounds(slices.Concat(outline...))
	if widest > math.Min(box.Width(), box.Height())/4 { // a bolt inside: not a cover
		s.assume(GasketWhole, finding.Values{"why": "inside"})
		return 0
	}
	s.assume(GasketStrip, finding.Values{"width": unit.Length(math.Round(widest))})
	return widest
}

// foundation combines the gasket with what is under it.
func (s *settledSetup) foundation() (bounds.Band, error) {
	if s.stated.Foundation != (bounds.Band{}) {
		return checkedBand("foundation stiffness", s.stated.Foundation)
	}
	stiffness := 0.0 // a row with stated stiffness has no thickness for a block
	if s.stated.Row == nil {
		stiffness = compliance.BlockMPaPerMm(s.Part.RigidityNmm(), s.block)
	}
	if s.stated.Stiffness != (bounds.Band{}) {
		band, err := checkedBand("gasket stiffness", s.stated.Stiffness)
		return compliance.FoundationMPaPerMm(s.bounded(band), stiffness), err
	}
	kind := s.stated.Gasket
	if kind == "" {
		kind = s.usualGasket()
		s.assume(Gasket, finding.Values{"gasket": gasketTerm(kind)})
	}
	band, err := kind.StiffnessMPaPerMm()
	if err != nil {
		return bounds.Band{}, err
	}
	if band == (bounds.Band{}) {
		s.assume(FacesMeet, finding.Values{"factor": compliance.BlockDoubt})
	}
	return compliance.FoundationMPaPerMm(s.bounded(band), stiffness), nil
}

// bounded limits the stiffness of the gasket from below, so that the bolts do
// not compress it by more than its thickness allows. Without a stated thickness
// nothing is limited.
func (s *settledSetup) bounded(band bounds.Band) bounds.Band {
	thickness := s.plan.Clamped.Gasket.Thickness
	area, known := s.areaOf(s.Kernel)
	if thickness == 0 || !known || !(area > 0) || band == (bounds.Band{}) {
		return band
	}
	total := 0.0
	for _, target := range s.targetsN() {
		total += target
	}
	behaves := gasket.Of(s.stated.Gasket)
	stiffer := behaves.AtLeast(band, unit.Stress(total/area), thickness)
	if stiffer != band {
		s.assume(GasketBounded, finding.Values{"most": unit.Length(behaves.Squeezed) * thickness, "thickness": thickness})
	}
	return stiffer
}

// targetsN are the preloads at which the bolts end: after an angle at most their
// yield load.
func (s *settledSetup) targetsN() []float64 {
	work, err := procedure.WorkOf(s.plan)
	if err != nil {
		return nil
	}
	for i, target := range work.TargetsN {
		if target == 0 {
			work.TargetsN[i] = procedure.YieldN(s.plan.KindOf(i))
		}
	}
	return work.TargetsN
}

func checkedBand(name finding.Term, b bounds.Band) (bounds.Band, error) {
	if !(b.Low > 0 && b.Low <= b.Nominal && b.Nominal <= b.High) || math.IsInf(b.High, 1) {
		return b, finding.Failed(NotRising, finding.Values{"what": name, "low": b.Low, "nominal": b.Nominal, "high": b.High})
	}
	return b, nil
}

// settleCounterpart finds what is under the part.
func (s *settledSetup) settleCounterpart() error {
	word := s.stated.Counterpart
	if word == "" {
		word = s.material
		for _, k := range s.plan.Kinds {
			if k.Into != "" {
				word = k.Into
				break
			}
		}
		if s.stated.Row == nil {
			s.assume(UnderMaterial, finding.Values{"material": materialTerm(word)})
		}
	}
	material, err := strength.ParseMaterial(word)
	if err != nil {
		return finding.Failed(CounterpartUnknown, finding.Values{"why": err})
	}
	s.block = compliance.PartOf(material, 0)
	if s.stated.CounterpartThickness != 0 {
		s.other = compliance.PartOf(material, s.stated.CounterpartThickness)
		return s.other.Check()
	}
	return nil
}

// usualGasket is the gasket that such a joint most often has (common practice,
// no source).
func (s *settledSetup) usualGasket() compliance.Gasket {
	switch {
	case s.shape == piecesShape:
		return compliance.NoGasket
	case s.shape == flangeShape:
		return compliance.ThickFibreSheet
	case s.shape == plateShape && !s.through && s.grip() > thickGrip:
		return compliance.MultiLayerSteel
	}
	return compliance.FibreSheet
}
