// Package report prints results on a terminal, or as JSON for other programs:
// text tables, rounded figures, and the shapes of the JSON, each defined once. It
// calculates nothing and knows no flags; findings are worded by the catalogue of
// the call, render/words. It may import what it reports on: job with the rooms
// below.
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

// JSON writes a value for other programs.
func JSON(v any) ([]byte, error) {
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	err := encoder.Encode(v)
	return text.Bytes(), err
}

// object is an object of JSON with its keys in this order. A field whose value
// is nil is left out.
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

// given leaves a field out where its value is zero or an empty list.
func given(value any) any {
	v := reflect.ValueOf(value)
	return when(!v.IsZero() && (v.Kind() != reflect.Slice || v.Len() > 0), value)
}

// when leaves a field out where it has no meaning.
func when(is bool, value any) any {
	if is {
		return value
	}
	return nil
}

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

// Stated is a figure that is there, beside those that are not.
func Stated[T ~float64](v T) *Figure {
	f := Figure(v)
	return &f
}

// Listed keeps an empty list a list.
func Listed[T any](list []T) []T { return append([]T{}, list...) }

func texts[T ~string](words []T) []string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = string(w)
	}
	return all
}
