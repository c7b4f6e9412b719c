package unit_test

import (
	"math"

	"drawdown/render/words"
)

// said words an error as the user sees it.
func said(err error) string { return words.English().Error(err) }

// near allows for the rounding of two products in floating point.
func near(got, want float64) bool { return math.Abs(got-want) <= 1e-14*math.Abs(want) }
