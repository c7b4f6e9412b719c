package figures

import (
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// Held is a preload, and the friction in the thread at which it results.
type Held struct {
	Force  unit.Force
	Thread float64
}

// Left is the preload that tightening leaves in a bolt, over the range of its
// friction: the least at the highest friction.
type Left struct{ Low, Nominal, High Held }

// LeftBy returns the preload after the stages up to a number. It is unknown
// before the first torque, and for an angle without a grip. A friction without
// a range is taken over its class.
func (b Bolt) LeftBy(stage int) (Left, bool) {
	j := judge{Bolt: b, asked: b.Bolt}
	if !j.hasThread() {
		return Left{}, false
	}
	j.complete()
	var t turn
	for _, s := range b.Stages {
		switch {
		case s.Number > stage:
		case s.Do == Tighten && (t.angle > 0 || s.Torque.Nm() > t.snug.Nm()):
			t = turn{snug: s.Torque}
		case s.Do == Advance:
			t.angle += s.Angle
		case s.Do == BackOff:
			t = turn{}
		}
	}
	if t.snug.Value == 0 {
		return Left{}, false
	}
	return j.left(t)
}

// LastStage is the number of the last stage of the bolt; 0 if it has none.
func (b Bolt) LastStage() int {
	if len(b.Stages) == 0 {
		return 0
	}
	return b.Stages[len(b.Stages)-1].Number
}

// left calculates a torque, and the angle after it if there is one.
func (j *judge) left(t turn) (Left, bool) {
	bolt := j.Bolt.Bolt
	r, err := screw.AtTorque(bolt, t.snug.Nm())
	if err != nil {
		return Left{}, false
	}
	if spread := r.Friction.Spread(); spread != r.Friction {
		bolt.Friction, bolt.NutFactor, bolt.Lubricant = &spread, 0, ""
		if r, err = screw.AtTorque(bolt, t.snug.Nm()); err != nil {
			return Left{}, false
		}
	}
	if t.angle == 0 {
		of := func(at screw.AtFriction) Held { return Held{at.Borne, at.Thread} }
		return Left{of(r.High), of(r.Nominal), of(r.Low)}, !r.Nominal.Breaks()
	}
	turned, err := stiffness.TurnOn(stiffness.TorqueAngle{Bolt: bolt, Grip: j.Grip, Snug: t.snug.Nm(), Angle: min(t.angle, mostTurns)})
	if err != nil {
		return Left{}, false
	}
	return leftTurned(turned), !turned.Nominal.Breaks
}

// leftTurned sorts the ends: past yield the lowest friction can leave less than
// the nominal one.
func leftTurned(t stiffness.Turned) Left {
	of := func(at stiffness.AfterAngle) Held { return Held{at.Preload, at.Thread} }
	l := Left{of(t.High), of(t.Nominal), of(t.Low)}
	if l.Low.Force > l.High.Force {
		l.Low, l.High = l.High, l.Low
	}
	if l.Nominal.Force < l.Low.Force {
		l.Low = l.Nominal
	}
	if l.Nominal.Force > l.High.Force {
		l.High = l.Nominal
	}
	return l
}

// Left returns the preload that an answer is about: after the stages of the
// file, after a torque or an angle that was asked for, or at the aim.
func (a Answer) Left() (Left, bool) {
	if a.OfStages() {
		return a.Bolt.LeftBy(a.Bolt.LastStage())
	}
	if a.Turned != nil {
		return leftTurned(*a.Turned), !a.Turned.Nominal.Breaks
	}
	of := func(at screw.AtFriction) Held { return Held{at.Borne, at.Thread} }
	return Left{of(a.Result.High), of(a.Result.Nominal), of(a.Result.Low)}, true
}
