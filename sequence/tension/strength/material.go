package strength

import (
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// Material is the material of a clamped part, a nut or a tapped part. Zero
// values are unknown.
type Material struct {
	Name             string // name in a file; render/words has it in each language
	Elastic          unit.Stress
	Tensile, Shear   unit.Stress // least strengths
	LimitingPressure unit.Stress // under a head
	Source           string
}

const (
	vdiA9      = "VDI 2230-1:2015, table A9"
	iso898Nuts = "ISO 898-2, ISO 18265"
	noStandard = finding.CommonPractice
)

type namedMaterial struct {
	names []string // the first is used in lists
	Material
}

// materials holds elastic moduli, least tensile and shear strengths and
// limiting surface pressures in MPa. The rows of VDI 2230 are values from
// memory of its table A9. The general words mean the weakest common member of
// their group, so that a result is on the safe side.
var materials = []namedMaterial{
	of("steel", vdiA9+", S235", 205e3, 340, 200, 490, "mild steel", "structural steel", "s235", "s235jr", "st37", "carbon steel"),
	of("steel E295", vdiA9, 205e3, 470, 280, 710, "e295", "st50"),
	of("steel C45 hardened", vdiA9, 205e3, 700, 460, 630, "c45", "heat treated steel", "hardened steel", "forged steel"),
	of("steel 34CrNiMo6", vdiA9, 205e3, 1200, 720, 1080, "34crnimo6"),
	of("steel 16MnCr5", vdiA9, 205e3, 1000, 650, 900, "16mncr5", "case hardened steel"),
	// ISO 898-2, least hardness (200, 272, 295 HV), tensile strength by ISO 18265,
	// shear strength 0.6 of it (values from memory).
	of("nut class 8", iso898Nuts, 205e3, 640, 384, 630, "class 8 nut"),
	of("nut class 10", iso898Nuts, 205e3, 870, 522, 870, "class 10 nut"),
	of("nut class 12", iso898Nuts, 205e3, 950, 570, 950, "class 12 nut"),
	of("hardened washer", noStandard, 205e3, 900, 580, 900, "washer", "hardened steel washer", "washer 300 hv"),
	of("stainless steel", vdiA9+", X5CrNiMo17-12-2", 200e3, 510, 410, 460, "stainless", "austenitic steel", "304", "316"),
	of("grey cast iron", vdiA9+", GJL-250", 110e3, 250, 300, 850, "cast iron", "grey iron", "gray iron", "gray cast iron", "gjl-250", "gg25", "iron"),
	of("ductile iron", vdiA9+", GJS-400", 169e3, 400, 360, 600, "ductile cast iron", "nodular iron", "spheroidal graphite iron", "gjs-400", "ggg40", "cast steel"),
	of("ductile iron GJS-600", vdiA9, 169e3, 600, 540, 900, "gjs-600", "ggg60"),
	of("cast aluminium", vdiA9+", AC-AlSi9Cu3", 75e3, 180, 110, 220, "cast aluminum", "aluminium", "aluminum", "aluminium alloy", "aluminum alloy", "aluminium casting", "aluminum casting", "alsi9cu3"),
	of("die-cast aluminium", vdiA9+", GD-AlSi9Cu3", 75e3, 240, 140, 290, "die cast aluminum", "pressure die cast aluminium"),
	of("wrought aluminium", vdiA9+", AlMgSi1 F28", 70e3, 260, 150, 230, "wrought aluminum", "6082", "6061", "aluminium plate", "aluminum plate", "billet aluminium", "billet aluminum", "almgsi1"),
	of("high-strength aluminium", vdiA9+", AlZnMgCu1.5", 72e3, 540, 310, 410, "high strength aluminum", "7075", "alznmgcu1.5"),
	of("magnesium", vdiA9+", AZ91", 45e3, 200, 120, 180, "magnesium alloy", "cast magnesium", "az91"),
	of("titanium", vdiA9+", TiAl6V4", 110e3, 890, 600, 890, "titanium alloy", "tial6v4"),
	of("brass", noStandard, 100e3, 340, 200, 300, "cuzn39pb3"),
	of("bronze", noStandard, 105e3, 240, 150, 240, "cast bronze", "gunmetal"),
	of("copper", noStandard, 120e3, 200, 130, 130),
}

func of(name string, source string, elastic, tensile, shear, pressure unit.Stress, others ...string) namedMaterial {
	return namedMaterial{append([]string{name}, others...),
		Material{Name: name, Elastic: elastic, Tensile: tensile, Shear: shear, LimitingPressure: pressure, Source: source}}
}

// Materials lists the words that ParseMaterial knows, one for each material.
func Materials() []string {
	list := make([]string, len(materials))
	for i, m := range materials {
		list[i] = m.Name
	}
	return list
}

// ParseMaterial reads the name of a material ("grey cast iron", "cast
// aluminium", "7075") or a stated modulus of elasticity ("100 GPa"), with
// unknown strengths. The error lists the names.
func ParseMaterial(text string) (Material, error) {
	if m, ok := tension.Named(materials, func(m namedMaterial) []string { return m.names }, text); ok {
		return m.Material, nil
	}
	if modulus, err := unit.ParseStress(text); err == nil {
		return statedModulus(text, modulus)
	}
	return Material{}, finding.Failed(NoSuchMaterial, finding.Values{"written": text, "allowed": Materials()})
}

// Stated moduli outside this range have a wrong unit (common practice, no
// source: hard plastics are above 1 GPa, hard metal below 700 GPa).
const leastModulus, mostModulus unit.Stress = 1e3, 700e3

// Term returns the material as a term of the trade.
func (m Material) Term() finding.Term { return finding.Term(m.Name) }

func statedModulus(text string, modulus unit.Stress) (Material, error) {
	if !(modulus >= leastModulus && modulus <= mostModulus) {
		return Material{}, finding.Failed(NoPartsModulus, finding.Values{"written": text, "modulus": modulus, "least": leastModulus, "most": mostModulus})
	}
	return Material{Name: strings.Join(strings.Fields(text), " "), Elastic: modulus}, nil
}
