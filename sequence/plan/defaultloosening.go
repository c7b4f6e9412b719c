package plan

import "slices"

// defaultLoosening stands in where the file gives no stages of loosening: a
// quarter turn breaks each fastener loose before any is taken out, so that the
// joint relaxes evenly. Common practice, no source. Where springs press, rounds
// take its place.
var defaultLoosening = []StageInput{{Do: TurnBack, Angle: 90}, {Do: Remove}}

// loosening returns the loosening stages. Where none says what it covers, the
// groups come off one after another, the last finished first; but before a part
// comes off under which springs press, all of its groups are turned back.
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
