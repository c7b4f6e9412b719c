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
	GroovedMetal    Gasket = "grooved metal" // with soft layers
	Graphite        Gasket = "graphite"      // sheet with a metal insert
	PTFE            Gasket = "PTFE"          // filled sheet
)

// gaskets holds the stiffness on loading per area, in MPa/mm. All are
// engineering estimates, except that fibre sheet and cork-rubber follow from
// the compressibility of ASTM F36 type tests, with the usual ranges of data
// sheets (from memory).
var gaskets = []struct {
	kind Gasket
	band bounds.Band
}{
	{NoGasket, bounds.Band{}},
	{"liquid sealant", bounds.Band{}},
	{"O-ring", bounds.Band{}}, // in a groove: the faces touch, as without a gasket
	{MultiLayerSteel, bounds.Band{Low: 100, Nominal: 300, High: 1000}},
	{Composite, bounds.Band{Low: 50, Nominal: 120, High: 250}},
	{FibreSheet, bounds.Band{Low: 150, Nominal: 300, High: 600}},
	{ThickFibreSheet, bounds.Band{Low: 100, Nominal: 170, High: 330}},
	{CorkRubber, bounds.Band{Low: 3, Nominal: 8, High: 15}},
	{SpiralWound, bounds.Band{Low: 30, Nominal: 80, High: 200}},
	{GroovedMetal, bounds.Band{Low: 60, Nominal: 120, High: 300}},
	{Graphite, bounds.Band{Low: 30, Nominal: 50, High: 120}},
	{PTFE, bounds.Band{Low: 50, Nominal: 150, High: 400}},
}

// Gaskets lists the kinds by name.
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
	switch plain(text) { // the usual names in the workshop
	case "paper", "compressed fibre":
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

// StiffnessMPaPerMm returns the stiffness on loading; all 0 if the faces touch
// and only the parts deflect.
func (g Gasket) StiffnessMPaPerMm() (bounds.Band, error) {
	for _, known := range gaskets {
		if known.kind == g {
			return known.band, nil
		}
	}
	return bounds.Band{}, Misuse("gasket", string(g), "known")
}

// BlockDoubt is the factor of uncertainty of the foundation of bare faces, in
// both directions (engineering estimate).
const BlockDoubt = 2

// FoundationMPaPerMm combines a gasket with the block under it. A gasket of 0
// leaves only the block: bare faces, a liquid sealant, and an O-ring, whose
// groove lets the faces touch, give the same result on the same part. Compared
// with a thicker part with bare faces, a thin cover on its O-ring still has a
// stiffer foundation; that depends on the part, see BlockMPaPerMm.
func FoundationMPaPerMm(gasket bounds.Band, blockMPaPerMm float64) bounds.Band {
	if gasket == (bounds.Band{}) {
		return bounds.Band{Low: blockMPaPerMm / BlockDoubt, Nominal: blockMPaPerMm, High: blockMPaPerMm * BlockDoubt}
	}
	return bounds.Band{Low: InSeries(gasket.Low, blockMPaPerMm), Nominal: InSeries(gasket.Nominal, blockMPaPerMm), High: InSeries(gasket.High, blockMPaPerMm)}
}
