package compliance

import (
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/bounds"
)

// Gasket is a kind of gasket.
type Gasket string

const (
	NoGasket        Gasket = "none"
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
	band bounds.Band
}{
	{NoGasket, bounds.Band{}},
	{"liquid sealant", bounds.Band{}},
	{"O-ring", bounds.Band{}}, // in a groove: the faces meet, and it is as if there were no gasket
	{MultiLayerSteel, bounds.Band{Low: 100, Nominal: 300, High: 1000}},
	{Composite, bounds.Band{Low: 50, Nominal: 120, High: 250}},
	{FibreSheet, bounds.Band{Low: 150, Nominal: 300, High: 600}},
	{ThickFibreSheet, bounds.Band{Low: 100, Nominal: 170, High: 330}},
	{CorkRubber, bounds.Band{Low: 3, Nominal: 8, High: 15}},
	{SpiralWound, bounds.Band{Low: 30, Nominal: 80, High: 200}},
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
	return "", finding.Failed(GasketUnknown, finding.Values{"written": text, "allowed": names})
}

// StiffnessMPaPerMm returns the stiffness on loading; all 0 where the faces meet
// and the parts alone give way.
func (g Gasket) StiffnessMPaPerMm() (bounds.Band, error) {
	for _, known := range gaskets {
		if known.kind == g {
			return known.band, nil
		}
	}
	return bounds.Band{}, Misuse("gasket", string(g), "known")
}

// BlockDoubt is what the foundation of bare faces is known within, either way
// (engineering estimate).
const BlockDoubt = 2

// FoundationMPaPerMm puts a gasket on the block under it. A gasket of 0 leaves
// the block alone: bare faces, a liquid sealant, and an O-ring, whose groove
// lets the faces meet, come to the same on the same part. Beside a thicker part
// with bare faces a thin cover on its O-ring stands on the stiffer seat all the
// same: that goes with the part, as BlockMPaPerMm says.
func FoundationMPaPerMm(gasket bounds.Band, blockMPaPerMm float64) bounds.Band {
	if gasket == (bounds.Band{}) {
		return bounds.Band{Low: blockMPaPerMm / BlockDoubt, Nominal: blockMPaPerMm, High: blockMPaPerMm * BlockDoubt}
	}
	return bounds.Band{Low: InSeries(gasket.Low, blockMPaPerMm), Nominal: InSeries(gasket.Nominal, blockMPaPerMm), High: InSeries(gasket.High, blockMPaPerMm)}
}
