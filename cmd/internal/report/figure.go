package report

import "strconv"

// Figure is a worked-out figure, printed without binary dust: 0.9 is not
// 0.9000000000000001.
type Figure float64

// MarshalJSON prints twelve figures, far more than any of them is worth.
func (f Figure) MarshalJSON() ([]byte, error) {
	tidy, err := strconv.ParseFloat(strconv.FormatFloat(float64(f), 'g', 12, 64), 64)
	if err != nil {
		return nil, err
	}
	return strconv.AppendFloat(nil, tidy, 'f', -1, 64), nil
}

// Span is a range beside its nominal figure.
type Span struct {
	Low     Figure `json:"low"`
	Nominal Figure `json:"nominal"`
	High    Figure `json:"high"`
}

// SpanOf puts the figures at the two ends of the friction in order.
func SpanOf[T ~float64](atLow, nominal, atHigh T) Span {
	return Span{Figure(min(atLow, nominal, atHigh)), Figure(nominal), Figure(max(atLow, nominal, atHigh))}
}

// Listed keeps an empty list a list.
func Listed[T any](list []T) []T { return append([]T{}, list...) }
