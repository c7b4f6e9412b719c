package plan

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/stiffness"
)

// judged gives what the figures of the plan come to, kind by kind.
func (p Plan) judged() []finding.Finding {
	bolts := make([]figures.Bolt, len(p.Kinds))
	for i, k := range p.Kinds {
		bolts[i] = k.Figures()
		for _, s := range p.Tighten.Stages {
			if do, tightens := acts[s.Do]; tightens && slices.Contains(s.Kinds, k.Name) {
				bolts[i].Stages = append(bolts[i].Stages, figures.Stage{Number: s.Number, Do: do, Torque: s.Torque, Angle: s.Angle})
			}
		}
	}
	return figures.Judge(bolts)
}

// acts are the stages that change how tight a fastener is.
var acts = map[Action]figures.Action{Tighten: figures.Tighten, Advance: figures.Advance, BackOff: figures.BackOff}

// Figures describes a fastener of the kind, without its stages, to be judged.
func (k Kind) Figures() figures.Bolt {
	b := figures.Bolt{Kind: k.Name, Bolt: k.Bolt(), Reuse: string(k.Reuse)}
	b.Grip = stiffness.Grip{TappedIn: k.Into, Engagement: k.Engagement, BoltLength: k.Length}
	if k.Grip > 0 {
		b.Grip.Layers = stiffness.Simple(k.Grip).Layers
	}
	return b
}
