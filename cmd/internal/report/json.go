package report

import (
	"bytes"
	"encoding/json"

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
