package cli

import (
	"strconv"

	"drawdown/cmd/internal/job"
)

// figureOut is a worked-out figure, printed without binary dust: 0.9 is not
// 0.9000000000000001.
type figureOut float64

// MarshalJSON prints twelve figures, far more than any of them is worth.
func (f figureOut) MarshalJSON() ([]byte, error) {
	tidy, err := strconv.ParseFloat(strconv.FormatFloat(float64(f), 'g', 12, 64), 64)
	if err != nil {
		return nil, err
	}
	return strconv.AppendFloat(nil, tidy, 'f', -1, 64), nil
}

// spanOut is a range beside its nominal figure.
type spanOut struct {
	Low     figureOut `json:"low"`
	Nominal figureOut `json:"nominal"`
	High    figureOut `json:"high"`
}

func spanJSON[T ~float64](atLow, nominal, atHigh T) spanOut {
	s := job.SpanOf(atLow, nominal, atHigh)
	return spanOut{figureOut(s.Low), figureOut(s.Nominal), figureOut(s.High)}
}
