// Package report prints results on a terminal, or as JSON for other programs:
// text tables, rounded figures, and the shapes of the JSON, each defined once.
// It calculates nothing and knows no flags; findings are worded by the
// catalogue of the call, render/words. It may import what it reports on: job
// and the packages below it.
package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/render/words"
)

// JSON encodes a value for other programs.
func JSON(v any) ([]byte, error) {
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	err := encoder.Encode(v)
	return text.Bytes(), err
}

// object is a JSON object with its keys in this order. A field with a nil value
// is left out.
type object []field

type field struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var text bytes.Buffer
	between := "{"
	for _, f := range o {
		if f.value == nil {
			continue
		}
		value, err := JSON(f.value)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&text, "%s%q:%s", between, f.key, value)
		between = ","
	}
	text.WriteString("}")
	return text.Bytes(), nil
}

// given leaves out a field whose value is zero or an empty list.
func given(value any) any {
	v := reflect.ValueOf(value)
	return when(!v.IsZero() && (v.Kind() != reflect.Slice || v.Len() > 0), value)
}

// when leaves out a field unless is is true.
func when(is bool, value any) any {
	if is {
		return value
	}
	return nil
}

// Found is one finding as data: its code, its words and its place.
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

// Figure is a calculated figure, printed without rounding noise: 0.9 is not
// 0.9000000000000001.
type Figure float64

// MarshalJSON prints twelve digits, far more than are significant.
func (f Figure) MarshalJSON() ([]byte, error) {
	tidy, err := strconv.ParseFloat(strconv.FormatFloat(float64(f), 'g', 12, 64), 64)
	if err != nil {
		return nil, err
	}
	return strconv.AppendFloat(nil, tidy, 'f', -1, 64), nil
}

// Span is a range with its nominal figure.
type Span struct {
	Low     Figure `json:"low"`
	Nominal Figure `json:"nominal"`
	High    Figure `json:"high"`
}

// SpanOf orders the figures at the two ends of the friction range.
func SpanOf[T ~float64](atLow, nominal, atHigh T) Span {
	return Span{Figure(min(atLow, nominal, atHigh)), Figure(nominal), Figure(max(atLow, nominal, atHigh))}
}

// Stated returns a figure that is present, unlike nil.
func Stated[T ~float64](v T) *Figure {
	f := Figure(v)
	return &f
}

// Listed returns an empty list for nil.
func Listed[T any](list []T) []T { return append([]T{}, list...) }

func texts[T ~string](words []T) []string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = string(w)
	}
	return all
}
