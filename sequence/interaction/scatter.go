package interaction

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/procedure"
)

// Scatter is the work done again and again, each time with a friction of its own
// for each bolt, on the nominal gasket.
type Scatter struct {
	Draws    int
	Seed     uint64
	Friction procedure.Friction
	Elastic  procedure.Scattered // without it: what the bolts do to each other alone
	Together procedure.Scattered
}

func (a *Answer) scatter(work procedure.Work, friction procedure.Friction, ask Question) (*Scatter, error) {
	s := Scatter{Draws: ask.Draws, Seed: ask.Seed, Friction: friction}
	joint, targets := a.Nominal.Joint, a.Nominal.TargetsN
	still := procedure.FrictionScatter{SDPercent: make([]float64, joint.Len()), Draws: 1, Stick: ask.Stick}
	var err error
	if s.Elastic, err = procedure.ScatterByFriction(joint, work.Passes, targets, still); err != nil {
		return nil, err
	}
	s.Together, err = procedure.ScatterByFriction(joint, work.Passes, targets, procedure.FrictionScatter{SDPercent: friction.ByFastener, Draws: s.Draws, Seed: s.Seed, Stick: ask.Stick})
	return &s, err
}

// OnScatter says which of friction and cross-talk is worth work; nothing where it
// was not asked.
func (a Answer) OnScatter() []finding.Finding {
	s := a.Scatter
	if s == nil {
		return nil
	}
	sd := advice.Scatters{Friction: s.Friction.SDPercent, Elastic: s.Elastic.SD, Both: s.Together.SD}
	return advice.OnScatter(sd, a.Advice.AsksForRepeat(), a.Forecast.OnAngle())
}
