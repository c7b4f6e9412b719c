package interaction

import (
	"fmt"
	"math"
	"strings"
)

// Band is a figure that is known within bounds only.
type Band struct{ Low, Nominal, High float64 }

// bandOf takes the bounds of three figures and keeps the middle one as nominal.
func bandOf(soft, nominal, stiff float64) Band {
	return Band{math.Min(nominal, math.Min(soft, stiff)), nominal, math.Max(nominal, math.Max(soft, stiff))}
}

// Gasket is a kind of gasket.
type Gasket string

const (
	NoGasket        Gasket = "none"
	LiquidSealant   Gasket = "liquid sealant"
	ORing           Gasket = "O-ring" // in a groove: the faces meet, and it is as if there were no gasket
	MultiLayerSteel Gasket = "multi-layer steel"
	Composite       Gasket = "composite"
	FibreSheet      Gasket = "fibre sheet"        // about 0.8 mm
	ThickFibreSheet Gasket = "fibre sheet 1.5 mm" // or thicker
	CorkRubber      Gasket = "cork-rubber"
	SpiralWound     Gasket = "spiral-wound"
)

// gaskets holds the stiffness on loading for each area, in MPa/mm. All are
// engineering estimates, except that fibre sheet and cork-rubber follow from
// the compressibility of ASTM F36 type tests, whose usual spans are recalled
// from data-sheet practice.
var gaskets = []struct {
	kind Gasket
	band Band
}{
	{NoGasket, Band{}},
	{LiquidSealant, Band{}},
	{ORing, Band{}},
	{MultiLayerSteel, Band{100, 300, 1000}},
	{Composite, Band{50, 120, 250}},
	{FibreSheet, Band{150, 300, 600}},
	{ThickFibreSheet, Band{100, 170, 330}},
	{CorkRubber, Band{3, 8, 15}},
	{SpiralWound, Band{30, 80, 200}},
}

// Gaskets lists the kinds that can be named.
func Gaskets() []Gasket {
	list := make([]Gasket, len(gaskets))
	for i, g := range gaskets {
		list[i] = g.kind
	}
	return list
}

// ParseGasket reads the kind of a gasket. The error lists the kinds.
func ParseGasket(text string) (Gasket, error) {
	plain := func(s string) string {
		return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == '-' || r == '_' }), " ")
	}
	if plain(text) == "paper" { // as the shop calls it
		return FibreSheet, nil
	}
	var names []string
	for _, g := range gaskets {
		if plain(string(g.kind)) == plain(text) {
			return g.kind, nil
		}
		names = append(names, string(g.kind))
	}
	return "", fmt.Errorf("gasket %q is not known; allowed: %s", text, strings.Join(names, ", "))
}

// StiffnessMPaPerMm gives the stiffness on loading; all 0 where the faces meet
// and the parts alone give way.
func (g Gasket) StiffnessMPaPerMm() (Band, error) {
	for _, known := range gaskets {
		if known.kind == g {
			return known.band, nil
		}
	}
	return Band{}, fmt.Errorf("gasket %q is not known", g)
}

// blockDoubt is what the foundation of bare faces is known within, either way
// (engineering estimate).
const blockDoubt = 2

// FoundationMPaPerMm puts a gasket on the block under it. A gasket of 0 leaves
// the block alone: bare faces, a liquid sealant, and an O-ring, whose groove
// lets the faces meet, come to the same on the same part. Beside a thicker part
// with bare faces a thin cover on its O-ring stands on the stiffer seat all the
// same: that goes with the part, as BlockMPaPerMm says.
func FoundationMPaPerMm(gasket Band, blockMPaPerMm float64) Band {
	if gasket == (Band{}) {
		return Band{blockMPaPerMm / blockDoubt, blockMPaPerMm, blockMPaPerMm * blockDoubt}
	}
	return Band{InSeries(gasket.Low, blockMPaPerMm), InSeries(gasket.Nominal, blockMPaPerMm), InSeries(gasket.High, blockMPaPerMm)}
}
