package stiffness

import (
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// mostLayers is more than any bolt clamps.
const mostLayers = 50

// ParseLayers reads what a bolt clamps, from the head down: "95 mm", or "steel
// 20mm, aluminium 45mm". A thickness needs its unit.
func ParseLayers(text string) ([]Layer, error) {
	var layers []Layer
	for _, part := range parts(text) {
		l, err := parseLayer(part)
		if err != nil {
			return nil, err
		}
		layers = append(layers, l)
	}
	if len(layers) > mostLayers {
		return nil, finding.Failed(TooManyLayers, finding.Values{"layers": len(layers), "most": mostLayers})
	}
	return layers, nil
}

// parts splits at commas, semicolons and plus signs, but not at a decimal
// comma.
func parts(text string) []string {
	var cut []string
	from := 0
	for i := range len(text) {
		inNumber := text[i] == ',' && i > 0 && i+1 < len(text) && isDigit(text[i-1]) && isDigit(text[i+1])
		if strings.IndexByte(",;+", text[i]) >= 0 && !inNumber {
			cut = append(cut, text[from:i])
			from = i + 1
		}
	}
	return append(cut, text[from:])
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// parseLayer finds the thickness at the end or the start of the words; the rest
// is the material.
func parseLayer(text string) (Layer, error) {
	words := strings.Fields(text)
	for cut := range len(words) {
		if l, err := unit.ParseLength(strings.Join(words[cut:], " "), ""); err == nil {
			return newLayer(l, strings.Join(words[:cut], " "), text)
		}
	}
	for cut := len(words) - 1; cut > 0; cut-- {
		if l, err := unit.ParseLength(strings.Join(words[:cut], " "), ""); err == nil {
			return newLayer(l, strings.Join(words[cut:], " "), text)
		}
	}
	return Layer{}, finding.Failed(LayerUnreadable, finding.Values{"written": strings.TrimSpace(text)})
}

func newLayer(thickness unit.Length, material, text string) (Layer, error) {
	if err := unit.Sensible.Grip.Check(strings.TrimSpace(text), float64(thickness)); err != nil {
		return Layer{}, err
	}
	if material != "" {
		if _, err := strength.ParseMaterial(material); err != nil {
			return Layer{}, err
		}
	}
	return Layer{Thickness: thickness, Material: material}, nil
}
