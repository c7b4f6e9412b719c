package unit

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// Flexibility is the elongation of a bolt per newton, in mm/N.
type Flexibility float64

// BendingStiffness of a beam, E·I, in N·mm².
type BendingStiffness float64

// AreaStiffness is the pressure of a foundation or a gasket per millimetre of
// compression, in MPa/mm, which is N/mm³.
type AreaStiffness float64

// LineStiffness is the same per millimetre of a row's length, in N/mm².
type LineStiffness float64

// Span is a stiffness that is known only within bounds. For a single figure all
// three are equal.
type Span[T AreaStiffness | LineStiffness] struct{ Low, Nominal, High T }

// Stated reports whether the span holds a figure.
func (s Span[T]) Stated() bool { return s.Nominal > 0 }

var flexibilityScales = []scale{
	{"mm/N", []string{"mm/n"}, 1},
	{"µm/kN", []string{"µm/kn", "μm/kn", "um/kn"}, 1e-6}, // with the micro sign or the Greek letter
}

var bendingScales = []scale{
	{"N·mm²", squared("n", "mm"), 1},
	{"N·m²", squared("n", "m"), 1e6},
	{"kN·m²", squared("kn", "m"), 1e9},
	{"lbf·in²", append(squared("lbf", "in"), squared("lb", "in")...), NewtonsPerPound * millimetresPerInch * millimetresPerInch},
}

// squared returns the spellings of force times length squared, without the sign
// between.
func squared(force, length string) []string {
	return []string{force + length + "²", force + length + "2", force + length + "^2"}
}

var areaScales = []scale{
	{"MPa/mm", []string{"mpa/mm", "n/mm³", "n/mm3", "n/mm^3"}, 1},
	{"GPa/mm", []string{"gpa/mm", "kn/mm³", "kn/mm3", "kn/mm^3"}, 1000},
	{"ksi/in", []string{"ksi/in"}, 1000 * NewtonsPerPound / (millimetresPerInch * millimetresPerInch * millimetresPerInch)},
}

var lineScales = []scale{
	{"N/mm²", []string{"n/mm²", "n/mm2", "n/mm^2", "mpa"}, 1},
	{"kN/mm²", []string{"kn/mm²", "kn/mm2", "kn/mm^2", "gpa"}, 1000},
	{"ksi", []string{"ksi"}, 1000 * NewtonsPerPound / (millimetresPerInch * millimetresPerInch)},
}

// ParseFlexibility reads "4.2e-6 mm/N" or "4.2 µm/kN". The unit is required.
func ParseFlexibility(s string) (Flexibility, error) {
	return parse[Flexibility](s, "", flexibilityScales, "4.2e-6 mm/N")
}

// ParseBendingStiffness reads "2.0e8 N·mm²", "2e8 N mm^2" or "200 N·m²". The unit
// is required.
func ParseBendingStiffness(s string) (BendingStiffness, error) {
	number, name := split(s)
	if v, err := parse[BendingStiffness](number+" "+halfSigns.Replace(name), "", bendingScales); err == nil {
		return v, nil
	}
	return parse[BendingStiffness](s, "", bendingScales, "2.0e8 N·mm²") // the error quotes what was written
}

// ParseAreaStiffness reads "120 MPa/mm", a range "50-250 MPa/mm", or a range
// with its middle, "50-120-250 MPa/mm". The default middle is the geometric
// mean, because the uncertainty is a factor. The unit is required; the figures
// must be from 0.01 to a million, ascending.
func ParseAreaStiffness(s string) (Span[AreaStiffness], error) {
	return parseSpan[AreaStiffness](s, areaScales, "120 MPa/mm", "50-250 MPa/mm")
}

// ParseLineStiffness reads "900 N/mm²" or a range, like ParseAreaStiffness.
func ParseLineStiffness(s string) (Span[LineStiffness], error) {
	return parseSpan[LineStiffness](s, lineScales, "900 N/mm²", "450-1800 N/mm²")
}

const leastStiffness, mostStiffness = 0.01, 1e6

func parseSpan[T AreaStiffness | LineStiffness](s string, scales []scale, one, two string) (Span[T], error) {
	var figures []T
	for _, part := range parts(s) {
		v, err := parse[T](part, "", scales, one, two)
		if err != nil {
			if len(figures) > 0 || strings.TrimSpace(part) != strings.TrimSpace(s) {
				err = unreadable(s, err)
			}
			return Span[T]{}, err
		}
		if v < leastStiffness || v > mostStiffness {
			return Span[T]{}, finding.Failed(NoStiffness, finding.Values{
				"written": s, "least": leastStiffness, "most": mostStiffness, "unit": scales[0].sign, "examples": []string{one, two},
			})
		}
		figures = append(figures, v)
	}
	switch len(figures) {
	case 1:
		figures = slices.Repeat(figures, 3)
	case 2:
		figures = slices.Insert(figures, 1, T(math.Sqrt(float64(figures[0])*float64(figures[1]))))
	}
	if len(figures) > 3 {
		return Span[T]{}, finding.Failed(TooManyFigures, finding.Values{"written": s, "example": two})
	}
	if !slices.IsSorted(figures) {
		return Span[T]{}, finding.Failed(FallingFigures, finding.Values{"written": s, "example": two})
	}
	return Span[T]{figures[0], figures[1], figures[2]}, nil
}

// parts splits a range at its dashes and gives each figure the unit of the
// last. A dash after an e belongs to a power of ten.
func parts(s string) []string {
	list := []string{""}
	last := rune(0)
	for _, r := range strings.Replace(s, " to ", "-", 1) {
		isDash := r == '-' || r == '–'
		if isDash && last != 'e' && last != 'E' && strings.TrimSpace(list[len(list)-1]) != "" {
			list = append(list, "")
		} else {
			list[len(list)-1] += string(r)
		}
		last = r
	}
	_, name := split(list[len(list)-1])
	for i := range list[:len(list)-1] {
		if _, own := split(list[i]); own == "" {
			list[i] += " " + name
		}
	}
	return list
}
