package report

import (
	"bytes"
	"encoding/json"
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
