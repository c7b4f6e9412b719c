package plan

import (
	"slices"

	"drawdown/sequence/figures"
	"drawdown/sequence/tension/stiffness"
)

// Bolts returns the kinds of the plan with their stages, for the judge of
// figures.
func (p Plan) Bolts() []figures.Bolt {
	bolts := make([]figures.Bolt, len(p.Kinds))
	for i, k := range p.Kinds {
		bolts[i] = p.Bolt(k)
	}
	return bolts
}

// Bolt describes a fastener of the kind in the joint, with its stages.
func (p Plan) Bolt(k Kind) figures.Bolt {
	b := k.Figures()
	b.Under = p.Clamped.Part.Material
	for i := range b.Grip.Layers {
		b.Grip.Layers[i].Material = b.Under
	}
	for _, s := range p.Tighten.Stages {
		if do, tightens := acts[s.Do]; tightens && slices.Contains(s.Kinds, k.Name) {
			b.Stages = append(b.Stages, figures.Stage{Number: s.Number, Do: do, Torque: s.Torque, Angle: s.Angle, Stretch: s.Stretch})
		}
	}
	return b
}

// acts maps the stages that change how tight a fastener is.
var acts = map[Action]figures.Action{Tighten: figures.Tighten, Advance: figures.Advance, Lengthen: figures.Lengthen, BackOff: figures.BackOff}

// Figures describes a fastener of the kind without the joint.
func (k Kind) Figures() figures.Bolt {
	b := figures.Bolt{Kind: k.Name, Bolt: k.Bolt(), Reuse: string(k.Reuse), NutAcross: k.NutAcross, Stud: k.Stud() || k.CalledStud(), Boss: k.Boss}
	b.Grip = stiffness.Grip{TappedIn: k.Into, Engagement: k.Engagement, BoltLength: k.Length, FullThread: k.FullThread, Thread: k.Threaded, Shank: k.Sections}
	if k.Grip > 0 {
		b.Grip.Layers = stiffness.Simple(k.Grip).Layers
	}
	return b
}
