package job

import (
	"drawdown/render/sheet/handout"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
)

// whyFigures are the figures of the page that tells why; nil where the joint lacks
// what the model needs.
func whyFigures(p plan.Plan) *interaction.Reason {
	r, ok := interaction.ReasonOf(p, handout.IsCircle(p))
	if !ok {
		return nil
	}
	return &r
}
