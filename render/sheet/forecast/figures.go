package forecast

import (
	"fmt"
	"math"

	"drawdown/sequence/interaction"
)

// span prints a band of percentages: 86–94–98, or one figure where all are the
// same.
func span(b interaction.Band) string { return banded(b, "%.0f") }

// millimetres prints a band of lengths to a hundredth, as a feeler gauge tells.
func millimetres(b interaction.Band) string { return banded(b, "%.2f") }

// figures prints a band to two significant figures, since nobody knows better.
func figures(b interaction.Band) string {
	rounded := func(v float64) float64 {
		if v == 0 {
			return 0
		}
		scale := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
		return math.Round(v/scale) * scale
	}
	return banded(interaction.Band{Low: rounded(b.Low), Nominal: rounded(b.Nominal), High: rounded(b.High)}, "%g")
}

func banded(b interaction.Band, format string) string {
	low, nominal, high := fmt.Sprintf(format, b.Low), fmt.Sprintf(format, b.Nominal), fmt.Sprintf(format, b.High)
	if low == high {
		return nominal
	}
	return low + "–" + nominal + "–" + high
}
