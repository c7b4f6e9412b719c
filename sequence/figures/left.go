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

// Left is the preload that tightening leaves in a bolt, over its range: the
// least at the highest friction.
type Left struct{ Low, Nominal, High Held }

// LeftBy returns the preload after the stages up to a number. It is unknown
// before the first torque, and for an angle without a grip.
func (a Answer) LeftBy(stage int) (left Left, known bool) {
	for _, after := range a.EachStage {
		if after.Stage.Number <= stage {
			left, known = a.leftBetween(after.Low, after.Nominal, after.High), after.Known && after.Nominal > 0
		}
	}
	return left, known
}

// leftBetween adds the friction: the highest leaves least.
func (a Answer) leftBetween(low, nominal, high unit.Force) Left {
	f := a.Result.Friction.Thread
	return Left{Held{low, f.High}, Held{nominal, f.Nominal}, Held{high, f.Low}}
}

// Left returns the preload that an answer is about: after the stages of the
// file, after a torque, an angle or a stretch that was asked for, or at the aim.
func (a Answer) Left() (Left, bool) {
	switch {
	case a.OfStages():
		return a.LeftBy(a.Stages[len(a.Stages)-1].Number)
	case a.Stretched != nil:
		return a.leftBetween(a.Stretched.Low, a.Stretched.Nominal, a.Stretched.High), true
	case a.Turned != nil:
		of := func(end stiffness.AfterAngle) unit.Force { return end.Preload }
		t := a.Turned
		return a.leftBetween(min(of(t.Low), of(t.Nominal), of(t.High)), of(t.Nominal), max(of(t.Low), of(t.Nominal), of(t.High))), !t.Nominal.Breaks
	}
	of := func(at screw.AtFriction) Held { return Held{at.Borne, at.Thread} }
	return Left{of(a.Result.High), of(a.Result.Nominal), of(a.Result.Low)}, true
}
