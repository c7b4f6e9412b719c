package plan

import "slices"

// defaultLoosening stands in where the file gives no stages of loosening: a
// quarter turn breaks each fastener loose before any is taken out, so that the
// joint relaxes evenly. Common practice, no source.
var defaultLoosening = []StageInput{{Do: TurnBack, Angle: 90}, {Do: Remove}}

// loosening gives the loosening stages. Where none says what it covers, the
// groups come off one after another, the last finished first.
func (p *Plan) loosening(given []StageInput) []StageInput {
	if len(given) == 0 {
		given = defaultLoosening
	}
	var stages []StageInput
	for _, g := range slices.Backward(p.Groups) {
		for _, s := range given {
			if len(s.Of) > 0 {
				return given
			}
			s.Of = g.Kinds
			stages = append(stages, s)
		}
	}
	return stages
}
