package tension

import (
	"fmt"
	"strings"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// Bolt is what is known about a fastener. Zero values are unknown, and are
// replaced by an assumption that the result names.
type Bolt struct {
	Thread     thread.Thread
	Class      string      // as written: 10.9, grade 8, A2-70, 830 MPa; required
	Lubricant  string      // as written; not read where Friction is given
	Friction   *Friction   // nil: by the lubricant
	HeadForm   HeadForm    // empty: HexagonHead
	HeadAcross unit.Length // of a hexagon head
	WasherFace unit.Length // outer diameter of the bearing face; goes before HeadForm and HeadAcross
	Washer     Washer      // under the head; empty: NoWasher
	Hole       unit.Length
	Equation   Equation // empty: Exact
	NutFactor  float64  // K of the short equation; goes in place of Lubricant and Friction

	// The aim, one of these; none: 0.9 of the yield stress.
	YieldShare float64    // of the yield stress, by tension and torsion together
	ProofShare float64    // of the proof load
	Preload    unit.Force // stated
}

// UsualYieldShare is ν of VDI 2230 Part 1, section 5.4.3.
const UsualYieldShare = 0.9

// settled is a bolt with nothing left open.
type settled struct {
	thread     thread.Thread
	strength   Strength
	friction   Friction
	headForm   HeadForm
	bearing    bearing
	yieldShare float64
	aim        unit.Force // 0: by yieldShare
	equation   Equation
	assumed    []Assumption

	byNutFactor bool // the friction stands for a stated K
}

func settle(b Bolt) (settled, error) {
	s := settled{thread: b.Thread}
	for _, step := range []func(Bolt) error{s.checkThread, s.settleStrength, s.settleFriction, s.settleHead, s.settleAim, s.settleShare, s.settleEquation, s.settleNutFactor} {
		if err := step(b); err != nil {
			return settled{}, err
		}
	}
	return s, nil
}

func (s *settled) checkThread(b Bolt) error {
	if t := b.Thread; !(t.PitchMm > 0 && t.MajorMm > 2*t.PitchMm) {
		return fmt.Errorf("the thread is missing; write for example M10 or 3/8-16 UNC")
	}
	return nil
}

func (s *settled) settleStrength(b Bolt) error {
	if strings.TrimSpace(b.Class) == "" {
		return fmt.Errorf("the class is missing; allowed for %s: %s", b.Thread.Name, allowedClasses(b.Thread))
	}
	strength, err := ParseClass(b.Class, b.Thread)
	s.strength = strength
	if strength.assumed.What != "" {
		s.assume(strength.assumed)
	}
	return err
}

func (s *settled) settleHead(b Bolt) error {
	s.headForm = b.HeadForm
	if b.HeadForm == "" {
		s.headForm = HexagonHead
	}
	if err := s.headForm.check(); err != nil {
		return err
	}
	under, err := settleBearing(b, s.headForm, s.strength)
	s.bearing = under
	s.assume(under.assumed...)
	return err
}

func (s *settled) settleShare(b Bolt) error {
	s.yieldShare = b.YieldShare
	if b.YieldShare == 0 {
		s.yieldShare = UsualYieldShare
		if s.aim == 0 {
			s.assume(Assumption{What: AssumedYieldShare, Percent: UsualYieldShare * 100})
		}
	}
	if !(s.yieldShare > 0 && s.yieldShare <= 1) {
		return fmt.Errorf("yield share %g; allowed: above 0 up to 1", b.YieldShare)
	}
	return nil
}

func (s *settled) settleEquation(b Bolt) error {
	s.equation = b.Equation
	switch b.Equation {
	case "":
		s.equation = Exact
	case Exact, Linear:
	default:
		return fmt.Errorf("equation %q is not known; allowed: %s, %s", b.Equation, Exact, Linear)
	}
	return nil
}

func (s *settled) assume(some ...Assumption) { s.assumed = append(s.assumed, some...) }

// settleFriction takes the stated figures, else those of the lubricant, else
// the whole span from oiled to dry.
func (s *settled) settleFriction(b Bolt) error {
	if b.NutFactor != 0 {
		if b.Friction != nil || strings.TrimSpace(b.Lubricant) != "" {
			return fmt.Errorf("a nut factor K of %g stands beside the friction or the lubricant; allowed: one of them", b.NutFactor)
		}
		return nil
	}
	if b.Friction != nil {
		s.friction = *b.Friction
		if !s.friction.scatters() {
			s.assume(Assumption{What: AssumedExact})
		}
		return s.friction.check()
	}
	if strings.TrimSpace(b.Lubricant) == "" {
		unknown := Between(classB.Low, classC.High)
		s.friction = Same(unknown)
		s.assume(Assumption{What: AssumedAnyFriction, Low: unknown.Low, High: unknown.High})
		return nil
	}
	l, err := findLubricant(b.Lubricant)
	if err != nil {
		return err
	}
	span, source := l.class.Range, "VDI 2230 class "+l.class.name
	if s.strength.Austenitic {
		span, source = l.onAustenitic(), "VDI 2230, austenitic steel"
	}
	s.friction = Same(span)
	s.assume(Assumption{What: AssumedFriction, Low: span.Low, High: span.High, Lubricant: l.names[0], Standard: source})
	return nil
}
