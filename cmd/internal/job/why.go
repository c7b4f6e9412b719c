package job

import (
	"drawdown/render/sheet/handout"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
)

// whyFigures are the figures of the page that tells why; nil where the joint lacks
// what the model needs.
func whyFigures(p plan.Plan) *handout.Figures {
	r, ok := interaction.ReasonOf(p, handout.IsCircle(p))
	if !ok {
		return nil
	}
	return &handout.Figures{
		LowestPercent: [2]handout.Band{handout.Band(r.LowestPercent[0]), handout.Band(r.LowestPercent[1])},
		UnevenMm:      [2]handout.Band{handout.Band(r.UnevenMm[0]), handout.Band(r.UnevenMm[1])},
		TellsLowest:   r.TellsLowest, TellsUneven: r.TellsUneven,
	}
}
