package plan

import "slices"

// defaultLoosening is used if the file gives no loosening stages: a quarter
// turn breaks each fastener loose before any is removed, so that the joint
// relaxes evenly. Common practice, no source. Under spring load, rounds replace
// it.
var defaultLoosening = []StageInput{{Do: TurnBack, Angle: 90}, {Do: Remove}}

// loosening returns the loosening stages. If no stage names its kinds, the
// groups are removed one after another, the last finished first. Before a part
// under spring load comes off, all of its groups are turned back.
func (p *Plan) loosening(given []StageInput) []StageInput {
	if slices.ContainsFunc(given, func(s StageInput) bool { return len(s.Of) > 0 }) {
		return given
	}
	var stages []StageInput
	add := func(list []StageInput, kinds []string, do Action) {
		for _, s := range list {
			if s.Do == do {
				s.Of = kinds
				stages = append(stages, s)
			}
		}
	}
	released := false
	for _, g := range slices.Backward(p.Groups) {
		list, turned := given, g.Kinds
		if g.Sprung {
			turned = p.sprungKinds()
		}
		switch {
		case len(given) > 0:
		case g.Sprung:
			list = p.rounds(turned)
		default:
			list = defaultLoosening
		}
		if !g.Sprung || !released {
			add(list, turned, TurnBack)
		}
		released = released || g.Sprung
		add(list, g.Kinds, Remove)
	}
	return stages
}
