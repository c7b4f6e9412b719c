package report

import (
	"fmt"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
)

// inUnits prints the key figures of an answer once more, each in the units
// asked for that fit it.
func (p Report) inUnits(a figures.Answer, units []unit.Asked) {
	if len(units) == 0 {
		return
	}
	fmt.Fprint(p.To, "\nIn the units asked for\n")
	for _, f := range keyFigures(a) {
		var words []string
		for _, u := range units {
			if u.Dimension == f.dimension {
				words = append(words, u.Print(f.inside))
			}
		}
		if len(words) > 0 {
			p.fact(f.name, "%s", strings.Join(words, " · "))
		}
	}
}

// keyFigure is one figure in the unit used inside.
type keyFigure struct {
	name      string
	dimension unit.Dimension
	inside    float64
}

func keyFigures(a figures.Answer) []keyFigure {
	r := a.Result
	figures := []keyFigure{
		{"torque", unit.TorqueDimension, float64(r.Torque)},
		{"preload, low", unit.ForceDimension, float64(r.Low.Borne)},
		{"preload, nominal", unit.ForceDimension, float64(r.Nominal.Borne)},
		{"preload, high", unit.ForceDimension, float64(r.High.Borne)},
		{"proof load", unit.ForceDimension, float64(r.ProofLoad)},
		{"yield stress", unit.StressDimension, float64(r.Strength.Yield)},
		{"tensile strength", unit.StressDimension, float64(r.Strength.Tensile)},
		{"diameter", unit.LengthDimension, a.Bolt.Bolt.Thread.MajorMm},
		{"pitch", unit.LengthDimension, a.Bolt.Bolt.Thread.PitchMm},
		{"bearing face", unit.LengthDimension, float64(r.Face)},
		{"hole", unit.LengthDimension, float64(r.Hole)},
	}
	if a.Turned != nil {
		figures = append(figures, keyFigure{"snug torque", unit.TorqueDimension, float64(a.Snug)},
			keyFigure{"preload after it all", unit.ForceDimension, float64(a.Turned.Nominal.Preload)})
	}
	return figures
}
