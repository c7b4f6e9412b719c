package tension

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"drawdown/geometry/unit"
)

// decimal is a plain number with a decimal point or comma.
const decimal = `[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)`

var (
	oneNumber   = regexp.MustCompile(`^` + decimal + `$`)
	frictionOne = regexp.MustCompile(`^(` + decimal + `)(?:\s*(?:-|–|—|\.\.|to)\s*(` + decimal + `))?$`)
	frictionTwo = regexp.MustCompile(`^(thread|head)\s*[=:]\s*(.+?)\s*[,;]\s*(thread|head)\s*[=:]\s*(.+)$`)
)

// figureOf reads what oneNumber matches.
func figureOf(s string) float64 {
	v, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(s), 64)
	if err != nil {
		return math.NaN() // beyond all figures; every check of a range refuses it
	}
	return v
}

// ParseFriction reads coefficients of friction as people write them: "0.12",
// "0.10-0.14", or "thread=0.10-0.14, head=0.12". The middle of a span is its
// nominal figure.
func ParseFriction(text string) (Friction, error) {
	s := strings.ToLower(strings.TrimSpace(text))
	if m := frictionTwo.FindStringSubmatch(s); m != nil && m[1] != m[3] {
		first, okFirst := parseRange(m[2])
		second, okSecond := parseRange(m[4])
		if m[1] == "head" {
			first, second = second, first
		}
		f := Friction{Thread: first, Head: second}
		if okFirst && okSecond {
			return f, f.check()
		}
	} else if r, ok := parseRange(s); ok {
		f := Same(r)
		return f, f.check()
	}
	return Friction{}, fmt.Errorf("friction %q is not known; allowed: 0.12, 0.10-0.14 or thread=0.10-0.14,head=0.12", text)
}

func parseRange(s string) (Range, bool) {
	m := frictionOne.FindStringSubmatch(s)
	if m == nil {
		return Range{}, false
	}
	low := figureOf(m[1])
	if m[2] == "" {
		return Range{low, low, low}, true
	}
	return Between(low, figureOf(m[2])), true
}

// ParseShare reads a share above 0 up to 1: "90%", "90 %", "0.9".
func ParseShare(text string) (float64, error) {
	s := strings.TrimSpace(text)
	digits, percent := strings.CutSuffix(s, "%")
	digits = strings.TrimSpace(digits)
	if !oneNumber.MatchString(digits) {
		return 0, fmt.Errorf("share %q is not a number; allowed: above 0%% up to 100%%, such as 90%% or 0.9", text)
	}
	v := figureOf(digits)
	if percent {
		v /= 100
	}
	if !(v > 0 && v <= 1) {
		return 0, fmt.Errorf("share %q; allowed: above 0%% up to 100%%, such as 90%% or 0.9", text)
	}
	return v, nil
}

// ParseNutFactor reads a nut factor K: "0.2".
func ParseNutFactor(text string) (float64, error) {
	s := strings.TrimSpace(text)
	if v := figureOf(s); oneNumber.MatchString(s) && v > 0 && v <= mostNutFactor {
		return v, nil
	}
	return 0, fmt.Errorf("nut factor K %q; allowed: a number above 0 up to %d, such as %.1f", text, mostNutFactor, UnknownNutFactor)
}

// mostLayers is more than any bolt clamps.
const mostLayers = 50

// ParseLayers reads what a bolt clamps, from the head down: "95 mm", or
// "steel 20mm, aluminium 45mm". A thickness carries its unit.
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
		return nil, fmt.Errorf("%d layers; allowed: up to %d", len(layers), mostLayers)
	}
	return layers, nil
}

// parts cuts at commas, semicolons and plus signs, but not at a decimal comma.
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

// parseLayer finds the thickness at the end or the start of the words; what is
// left is the material.
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
	return Layer{}, fmt.Errorf("layer %q has no thickness with a unit; write for example steel 20 mm or 95 mm", strings.TrimSpace(text))
}

func newLayer(thickness unit.Length, material, text string) (Layer, error) {
	if !(thickness > 0) {
		return Layer{}, fmt.Errorf("layer %q is %v thick; allowed: above 0", strings.TrimSpace(text), thickness)
	}
	if material != "" {
		if _, err := ParseMaterial(material); err != nil {
			return Layer{}, err
		}
	}
	return Layer{Thickness: thickness, Material: material}, nil
}
