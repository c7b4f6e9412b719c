package figures

import (
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// AfterStage is a bolt after one of its stages. Preloads are over the range of
// friction, or of lengths and modulus after a stretch; the other figures are
// nominal. What cannot be calculated is 0.
type AfterStage struct {
	Stage
	Known              bool       // the preload can be calculated
	Low, Nominal, High unit.Force // preload
	YieldUsed          float64    // by tension and torsion together; above 1 it hardens
	Stretch            unit.Length
	Breaks             bool       // at some friction
	Margin             float64    // the torque that breaks the bolt at the lowest friction, divided by that of the stage
	Further            unit.Angle // further turn until the bolt breaks, at the friction that leaves least
}

// eachStage calculates the bolt after each of its stages.
func (a *Answer) eachStage() error {
	stretching, err := stiffness.Stretch(a.Bolt.Bolt, a.Grip)
	bolt := a.Bolt
	bolt.Bolt.YieldShare, bolt.Bolt.ProofShare, bolt.Bolt.Preload = 1, 0, 0
	s := stageByStage{bolt: bolt, stretching: stretching, hasGrip: err == nil, friction: a.Result.Friction.Thread.Nominal}
	for _, stage := range a.Stages {
		s.take(stage)
		s.now.Stage = stage
		a.EachStage = append(a.EachStage, s.now)
	}
	return nil
}

// stageByStage is a bolt on its way through its stages.
type stageByStage struct {
	bolt       Bolt
	stretching stiffness.Stretching
	hasGrip    bool
	friction   float64 // in the thread, nominal

	snug   unit.Torque // since the bolt was last slackened
	turned unit.Angle  // after it
	now    AfterStage
}

func (s *stageByStage) take(stage Stage) {
	switch stage.Do {
	case Tighten:
		s.tighten(stage.Torque.Nm())
	case Advance:
		s.turned += stage.Angle
		s.advance()
	case Lengthen:
		s.snug, s.turned = 0, 0
		s.lengthen(stage.Stretch)
	default:
		s.snug, s.turned, s.now = 0, 0, AfterStage{}
	}
}

// tighten leaves a bolt as it is that is tighter already.
func (s *stageByStage) tighten(torque unit.Torque) {
	r, err := screw.AtTorque(s.bolt.Bolt, torque)
	if err != nil {
		s.now = AfterStage{}
		return
	}
	if r.Nominal.Borne <= s.now.Nominal && s.now.Known {
		return
	}
	s.snug, s.turned = torque, 0
	s.now = AfterStage{
		Known: true, Low: min(r.Low.Borne, r.High.Borne), Nominal: r.Nominal.Borne, High: max(r.Low.Borne, r.High.Borne),
		YieldUsed: r.Nominal.YieldShare, Breaks: r.Low.Breaks() || r.Nominal.Breaks() || r.High.Breaks(),
		Margin: float64(min(r.Low.BreakTorque, r.Nominal.BreakTorque, r.High.BreakTorque) / torque),
	}
	s.stretch()
}

func (s *stageByStage) advance() {
	if !s.hasGrip || s.snug == 0 {
		s.now = AfterStage{}
		return
	}
	r, err := stiffness.TurnOn(stiffness.TorqueAngle{Bolt: s.bolt.Bolt, Grip: s.bolt.Grip, Snug: s.snug, Angle: min(s.turned, mostTurns)})
	if err != nil {
		s.now = AfterStage{}
		return
	}
	left := min(r.Low.AngleToBreak, r.Nominal.AngleToBreak, r.High.AngleToBreak) - s.turned
	s.now = AfterStage{
		Known: true, Low: min(r.Low.Preload, r.Nominal.Preload, r.High.Preload), Nominal: r.Nominal.Preload, High: max(r.Low.Preload, r.Nominal.Preload, r.High.Preload),
		YieldUsed: r.Nominal.YieldUsed, Breaks: r.Low.Breaks || r.Nominal.Breaks || r.High.Breaks,
		Further: unit.Angle(math.Max(float64(left), 0)),
	}
	s.stretch()
}

func (s *stageByStage) lengthen(stretch unit.Length) {
	s.now = AfterStage{}
	if !s.hasGrip {
		return
	}
	low, nominal, high, err := s.stretching.Preload(stretch)
	if err != nil {
		return
	}
	s.now = AfterStage{Known: true, Low: low, Nominal: nominal, High: high, YieldUsed: s.stretching.YieldUsed(nominal), Stretch: stretch}
}

// stretch adds how much longer the bolt is at its nominal preload.
func (s *stageByStage) stretch() {
	if s.hasGrip && !s.now.Breaks {
		_, s.now.Stretch, _ = s.stretching.OfPreload(s.now.Nominal, s.friction)
	}
}
