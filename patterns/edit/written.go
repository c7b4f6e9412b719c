package edit

import (
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// written returns a value on one line. Inside brackets more signs need quotes.
func written(v Value, flow bool) string { return writtenAs(v, flow, 0) }

// writtenAs keeps the quotes of the text that it replaces.
func writtenAs(v Value, flow bool, style yaml.Style) string {
	var parts []string
	switch v.Kind {
	case Nothing:
		return ""
	case Scalar:
		return scalar(v.Text, flow, style)
	case List:
		for _, item := range v.Of {
			parts = append(parts, written(item, true))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	for i, key := range v.Keys {
		parts = append(parts, scalar(key, true, 0)+": "+written(v.Of[i], true))
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

func scalar(text string, flow bool, style yaml.Style) string {
	single := "'" + strings.ReplaceAll(text, "'", "''") + "'"
	switch {
	case style&yaml.DoubleQuotedStyle == 0 && style&yaml.SingleQuotedStyle == 0 && readsBack(text, text, flow):
		return text
	case style&yaml.SingleQuotedStyle != 0 && readsBack(single, text, flow):
		return single
	}
	quoted, err := yaml.Marshal(&yaml.Node{Kind: yaml.ScalarNode, Value: text, Style: yaml.DoubleQuotedStyle})
	if err != nil {
		return strconv.Quote(text)
	}
	return strings.TrimSuffix(string(quoted), "\n")
}

// readsBack reports whether a notation on one line reads as a text, both as a
// value and as a key.
func readsBack(notation, text string, flow bool) bool {
	if strings.ContainsAny(notation, "\r\n\u0085\u2028\u2029") {
		return false
	}
	whole := "k: " + notation + "\n"
	if flow {
		whole = "k: [{" + notation + ": 1}, " + notation + "]\n"
	}
	var document yaml.Node
	if err := yaml.Unmarshal([]byte(whole), &document); err != nil {
		return false
	}
	v := valueOf(document.Content[0], map[*yaml.Node]bool{})
	if flow {
		return v.equal(Value{}.With("k", Value{Kind: List, Of: []Value{Value{}.With(text, Text("1")), Text(text)}}))
	}
	return v.equal(Value{}.With("k", Text(text)))
}
