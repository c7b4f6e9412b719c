package screw

import (
	"cmp"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/strength"
)

// Bolt is what is known about a fastener. Zero values are unknown, and are
// replaced by an assumption that the result reports.
type Bolt struct {
	Thread          thread.Thread
	Class           string      // as written: 10.9, grade 8, A2-70, 830 MPa; required
	Shank           unit.Length // least diameter of the shank; 0: unknown, the thread is the smallest section
	Lubricant       string      // as written; ignored if Friction is given
	Friction        *Friction   // nil: from the lubricant
	HeadForm        head.Form   // "": Hexagon
	HeadAcross      unit.Length // of a hexagon head
	WasherFace      unit.Length // outer diameter of the bearing face; overrides HeadForm and HeadAcross
	Washer          head.Washer // under the head; "": NoWasher
	Hole            unit.Length
	Equation        Equation // "": Exact
	NutFactor       float64  // K of the short equation; replaces Lubricant and Friction
	NutFactorSpread float64  // by so much the lowest and the highest K differ from it

	// The aim, one of these; none: 0.9 of the yield stress.
	YieldShare float64    // of the yield stress, by tension and torsion together
	ProofShare float64    // of the proof load
	Preload    unit.Force // stated
}

// FrictionOpen reports that nothing is stated about the friction.
func (b Bolt) FrictionOpen() bool {
	return strings.TrimSpace(b.Lubricant) == "" && b.Friction == nil && b.NutFactor == 0
}

// UsualYieldShare is ν of VDI 2230 Part 1, section 5.4.3.
const UsualYieldShare = 0.9

// Completed is a bolt with nothing left open.
type Completed struct {
	Thread     thread.Thread
	Strength   strength.Class
	Shank      unit.Length // least diameter of the shank; 0: unknown
	Friction   Friction
	HeadForm   head.Form
	Bearing    head.Bearing
	yieldShare float64
	aim        unit.Force // 0: by yieldShare
	Equation   Equation
	Assumed    []finding.Finding

	byNutFactor bool // the friction replaces a stated K
}

// Complete combines what the bolt states with assumptions for the rest. The
// error says what is missing or does not fit, and what is allowed.
func Complete(b Bolt) (Completed, error) {
	s := Completed{Thread: b.Thread}
	for _, step := range []func(Bolt) error{s.checkThread, s.settleShank, s.settleStrength, s.settleFriction, s.settleHead, s.settleAim, s.settleShare, s.settleEquation, s.settleNutFactor} {
		if err := step(b); err != nil {
			return Completed{}, err
		}
	}
	return s, nil
}

func (s *Completed) checkThread(b Bolt) error {
	if t := b.Thread; !(t.PitchMm > 0 && t.MajorMm > 2*t.PitchMm) {
		return finding.Failed(NoThread, nil)
	}
	return nil
}

func (s *Completed) settleStrength(b Bolt) error {
	if strings.TrimSpace(b.Class) == "" {
		return strength.Missing(b.Thread)
	}
	class, err := strength.ParseClass(b.Class, b.Thread)
	s.Strength = class
	s.assume(class.Assumed...)
	return err
}

func (s *Completed) settleHead(b Bolt) error {
	s.HeadForm = cmp.Or(b.HeadForm, head.Hexagon)
	under, err := head.Complete(b.Thread, s.Strength, head.Stated{
		Form: b.HeadForm, Across: b.HeadAcross, WasherFace: b.WasherFace, Washer: b.Washer, Hole: b.Hole,
	})
	s.Bearing = under
	s.assume(under.Assumed...)
	return err
}

func (s *Completed) settleShare(b Bolt) error {
	s.yieldShare = cmp.Or(b.YieldShare, UsualYieldShare)
	if b.YieldShare == 0 && s.aim == 0 {
		s.assume(finding.Noted(YieldShareAssumed, finding.Values{"share": UsualYieldShare}).From("VDI 2230-1, section 5.4.3"))
	}
	if !(s.yieldShare > 0 && s.yieldShare <= 1) {
		return finding.Failed(YieldShareRange, finding.Values{"share": b.YieldShare})
	}
	return nil
}

func (s *Completed) settleEquation(b Bolt) error {
	s.Equation = cmp.Or(b.Equation, Exact)
	if !slices.Contains(Equations, s.Equation) {
		return finding.Failed(NoSuchEquation, finding.Values{"written": string(b.Equation), "allowed": head.Names(Equations)})
	}
	return nil
}

func (s *Completed) assume(some ...finding.Finding) { s.Assumed = append(s.Assumed, some...) }

// settleFriction uses the stated figures, otherwise those of the lubricant,
// otherwise the whole range from oiled to dry.
func (s *Completed) settleFriction(b Bolt) error {
	if b.NutFactor != 0 {
		if b.Friction != nil || strings.TrimSpace(b.Lubricant) != "" {
			return finding.Failed(FactorWithFriction, finding.Values{"factor": b.NutFactor})
		}
		return nil
	}
	if b.Friction != nil {
		s.Friction = *b.Friction
		if !s.Friction.scatters() {
			s.assume(finding.Noted(ExactFriction, nil))
		}
		return s.Friction.check()
	}
	if b.FrictionOpen() {
		unknown := Between(classB.Low, classC.High)
		if s.Strength.Austenitic {
			unknown = Between(classB.Low, highestAustenitic)
		}
		s.Friction = Same(unknown)
		s.assume(finding.Noted(AnyFrictionAssumed, finding.Values{"low": unknown.Low, "high": unknown.High}).From("VDI 2230-1, table A5, classes B to D"))
		return nil
	}
	l, err := findLubricant(b.Lubricant)
	if err != nil {
		return err
	}
	span := l.class
	if s.Strength.Austenitic {
		span = l.onAustenitic()
	}
	s.Friction = Same(span)
	s.assume(finding.Noted(FrictionAssumed, finding.Values{
		"low": span.Low, "high": span.High, "lubricant": finding.Term(l.names[0]), "standard": "VDI 2230",
	}).From("VDI 2230-1, table A5"))
	return nil
}
