package report

import (
	"bytes"
	"encoding/json"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/render/words"
)

// Found is one finding as data: its code, its words and what it is about.
type Found struct {
	Code finding.Code `json:"code"`
	Text string       `json:"text"`
	IDs  []string     `json:"ids,omitempty"`
}

func foundJSON(c *words.Catalogue, list ...finding.Finding) []Found {
	out := []Found{}
	for _, f := range list {
		out = append(out, Found{f.Code, c.Say(f), f.At.IDs})
	}
	return out
}

// JSON writes a value for other programs.
func JSON(v any) ([]byte, error) {
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	err := encoder.Encode(v)
	return text.Bytes(), err
}

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
