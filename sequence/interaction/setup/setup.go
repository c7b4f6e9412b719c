// Package setup completes a joint: what the file states, what flags state, and
// what is assumed for the rest. It may import compliance and the plan.
package setup

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// Setup is what is stated about a joint. Zero values are unknown, and are
// replaced by an assumption that the model reports.
type Setup struct {
	Material  string      // of the part, as written; "": cast aluminium, or steel for a round flange
	Thickness unit.Length // the thickness that bends
	// CounterpartThickness is the thickness of the counterpart that bends too;
	// 0: a block, or an equal part for through bolts.
	CounterpartThickness unit.Length
	Counterpart          string // material under the part; "": that of the tapped holes, or of the part

	Gasket    compliance.Gasket
	Stiffness bounds.Band // of the gasket per area, MPa/mm; takes precedence over Gasket
	Strip     unit.Length // width of a gasket that follows the edge; 0: default

	Own        stiffness.Resilience // of every bolt and its members; 0: from the kinds
	Row        *compliance.Row      // raw values of a row
	Foundation bounds.Band          // of gasket and counterpart, MPa/mm; takes precedence over both
	Flange     *compliance.Flange   // dimensions of a round flange; Part may be left out
	Preview    bool                 // plate without edges, for a quick preview
}

// shape is the shape of a joint by the layout of its fasteners.
type shape string

const (
	plateShape  shape = "plate"
	rowShape    shape = "row"
	flangeShape shape = "round flange"
	piecesShape shape = "separate caps"
)

// settledSetup is a setup with nothing left open.
type settledSetup struct {
	Settled
	plan     plan.Plan
	stated   Setup
	shape    shape
	block    compliance.Part // under the part
	other    compliance.Part // the same if it bends too; otherwise without thickness
	material string          // of the part
	through  bool            // bolts with nuts: two equal parts
}

// Settled is a joint as far as it is known, with a range for the stiffness of
// the gasket.
type Settled struct {
	At         []geometry.Point
	Kernel     compliance.Kernel
	Part       compliance.Part // the part that bends; without thickness if a row states its stiffness
	Foundation bounds.Band     // MPa/mm, gasket and counterpart in series
	Own        []stiffness.Resilience

	Stated  []finding.Finding // facts from the file or the user
	Assumed []finding.Finding // facts that were not stated
}

// Settle fills in what is not stated about a plan's joint. The error says what
// does not fit and what is allowed.
func Settle(p plan.Plan, stated Setup) (Settled, error) {
	s := &settledSetup{plan: p, Settled: Settled{At: p.Joint.Points()}}
	if len(s.At) == 0 {
		return Settled{}, finding.Failed(compliance.NoFasteners, nil)
	}
	s.stated, s.Assumed = stated.over(SetupOf(p))
	s.Stated = s.stated.facts()
	if s.stated.Flange != nil && !compliance.OnCircle(s.At) {
		return Settled{}, finding.Failed(NotRound, nil)
	}
	s.shape = s.shapeOf()
	s.through = throughBolted(p)
	if err := s.settlePart(); err != nil {
		return Settled{}, err
	}
	if err := s.settleCounterpart(); err != nil {
		return Settled{}, err
	}
	s.Kernel = s.kernel()
	if _, plate := s.Kernel.(compliance.Plate); stated.Strip > 0 && !plate {
		return Settled{}, finding.Failed(NoEdge, nil)
	}
	var err error
	if s.Foundation, err = s.foundation(); err != nil {
		return Settled{}, err
	}
	s.Own, err = s.own()
	return s.Settled, err
}

func (s *settledSetup) shapeOf() shape {
	switch {
	case s.stated.Row != nil:
		return rowShape
	case s.stated.Flange != nil:
		return flangeShape
	case s.inPieces():
		return piecesShape
	case compliance.InLine(s.At):
		return rowShape
	case s.onCircle():
		return flangeShape
	}
	return plateShape
}

// inPieces reports whether every fastener belongs to a cluster.
func (s *settledSetup) inPieces() bool {
	count := 0
	for _, c := range s.plan.Joint.Clusters {
		count += len(c.Of)
	}
	return count == len(s.At) && len(s.plan.Joint.Clusters) > 1
}

// onCircle reports whether the fasteners are around a bore, or so many are on a
// circle that it must be one.
func (s *settledSetup) onCircle() bool {
	if len(s.plan.Joint.Outline) > 0 || len(s.At) < 4 || !compliance.OnCircle(s.At) {
		return false
	}
	return len(s.At) > 6 || s.centralBore(geometry.Enclose(s.At)) != nil
}

func (s *settledSetup) centralBore(disc geometry.Disc) *geometry.Bore {
	for _, b := range s.plan.Joint.Bores {
		if b.Centre.Distance(disc.Centre) < 0.05*disc.Radius && b.Diameter < 2*disc.Radius {
			return &b
		}
	}
	return nil
}

// thickGrip is the grip from which a part with tapped bolts is taken as a
// ribbed or hollow block, such as a cylinder head.
const thickGrip = 40

func (s *settledSetup) settlePart() error {
	word := s.stated.Material
	if word == "" {
		word = "cast aluminium"
		if s.shape == flangeShape {
			word = "steel"
		}
		if s.stated.Row == nil || s.stated.Own == 0 { // otherwise it is not used
			s.assume(PartMaterial, finding.Values{"material": materialTerm(word)})
		}
	}
	material, err := strength.ParseMaterial(word)
	if err != nil {
		return finding.Failed(PartUnknown, finding.Values{"why": err})
	}
	thickness, err := s.thickness()
	if err != nil {
		return err
	}
	s.material = word
	s.Part = compliance.PartOf(material, thickness)
	return s.Part.Check()
}

func (s *settledSetup) thickness() (unit.Length, error) {
	if s.stated.Thickness != 0 {
		return s.stated.Thickness, nil
	}
	if s.stated.Row != nil {
		return 1, nil // not used: the row states its stiffness
	}
	grip := s.grip()
	thickness, by := grip, "grip"
	switch {
	case grip == 0:
		return 0, finding.Failed(ThicknessUnknown, nil)
	case s.through:
		thickness, by = grip/2, "half"
	case grip > thickGrip:
		thickness, by = grip*compliance.HeadBendingShare, "height"
	}
	s.assume(PartThickness, finding.Values{"thickness": thickness, "by": by})
	return thickness, nil
}

// grip is that of the kind with the most bolts, or the first of these.
func (s *settledSetup) grip() unit.Length {
	most, grip := 0, unit.Length(0)
	for _, k := range s.plan.Kinds {
		if n := s.plan.Count(k.Name); n > most && k.Grip > 0 {
			most, grip = n, k.Grip
		}
	}
	return grip
}

// own returns the compliance of each bolt and its members.
func (s *settledSetup) own() ([]stiffness.Resilience, error) {
	if s.stated.Own != 0 {
		return slices.Repeat([]stiffness.Resilience{s.stated.Own}, len(s.At)), nil
	}
	own := make([]stiffness.Resilience, len(s.At))
	byKind := map[string]stiffness.Resilience{}
	for i, f := range s.plan.Joint.Fasteners {
		if _, done := byKind[f.Kind]; !done {
			r, err := s.ownOf(s.plan.KindOf(i))
			if err != nil {
				return nil, err
			}
			byKind[f.Kind] = r
		}
		own[i] = byKind[f.Kind]
	}
	return own, nil
}

// layers are what a bolt clamps: the part, and under a bolt with a nut its
// counterpart too, if both are stated.
func (s *settledSetup) layers(grip unit.Length) []stiffness.Layer {
	if !s.through || s.stated.Counterpart == "" || s.other.Thickness == 0 {
		return []stiffness.Layer{{Thickness: grip, Material: s.material}}
	}
	ofPart := grip * s.Part.Thickness / (s.Part.Thickness + s.other.Thickness)
	return []stiffness.Layer{{Thickness: ofPart, Material: s.material}, {Thickness: grip - ofPart, Material: s.stated.Counterpart}}
}

func (s *settledSetup) ownOf(kind plan.Kind) (stiffness.Resilience, error) {
	bolt, err := procedure.BoltOf(kind)
	if err != nil {
		return 0, finding.Failed(FlexibilityUnknown, finding.Values{"why": err})
	}
	grip := kind.Grip
	if grip == 0 {
		grip = s.Part.Thickness
		if s.through {
			grip *= 2
		}
		s.assumeOf(kind, KindGrip, finding.Values{"grip": grip})
	}
	held := kind.Figures().Grip
	held.Layers = s.layers(grip)
	joint, err := stiffness.Of(bolt, held)
	if err != nil && kind.Length > grip {
		held.BoltLength, held.FullThread = 0, true // a stud, or a screw threaded up to its head
		s.assumeOf(kind, KindThread, finding.Values{})
		joint, err = stiffness.Of(bolt, held)
	}
	if err != nil {
		return 0, finding.Failed(StiffnessUnknown, finding.Values{"kind": kind.Name, "why": err}).About(finding.Place{Kind: kind.Name})
	}
	for _, a := range joint.Assumptions {
		s.assumeOf(kind, KindStiffness, finding.Values{"why": a})
	}
	return joint.Bolt.Resilience() + joint.Members.Resilience(), nil
}
