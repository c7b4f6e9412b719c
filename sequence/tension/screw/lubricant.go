package screw

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// Friction classes of VDI 2230 Part 1, table A5: guide values for both the thread
// and the bearing face.
var (
	classA = Between(0.04, 0.10)
	classB = Between(0.08, 0.16)
	classC = Between(0.14, 0.24)
	classD = Between(0.20, 0.35)
	classE = Between(0.30, unit.Sensible.Friction.Most)
)

// highestAustenitic is the upper end of class D, to which VDI 2230 assigns
// oiled austenitic steel (value from memory).
const highestAustenitic = 0.35

// ClassOf returns the friction class of VDI 2230 Part 1, table A5, that
// contains a figure, and its letter: B or C if they contain it, the one with
// the nearer middle, like the bolts of that table.
func ClassOf(friction float64) (letter string, class Range) {
	switch {
	case friction < classB.Low:
		return "A", classA
	case friction < (classB.Nominal+classC.Nominal)/2:
		return "B", classB
	case friction < (classC.Nominal+classD.Nominal)/2:
		return "C", classC
	case friction < classD.High:
		return "D", classD
	}
	return "E", classE
}

// lubricant is a condition of the surfaces by name, and its friction class.
type lubricant struct {
	names []string // the first is used in lists
	class Range    // of friction
	solid bool     // contains a solid lubricant or wax
}

// lubricants assigns the words to the classes of VDI 2230 Part 1, table A5. If
// a word could be in two classes, it has the one with the lower friction, so
// that the bolt is not overloaded.
var lubricants = []lubricant{
	{[]string{"engine oil", "oil", "oiled", "motor oil", "machine oil", "light oil", "lightly oiled", "oiled threads"}, classB, false},
	{[]string{"grease", "greased"}, classB, false},
	{[]string{"molybdenum disulfide paste", "molybdenum disulphide paste", "molybdenum disulfide", "molybdenum disulphide", "molybdenum disulfide grease", "molybdenum disulphide grease",
		"molybdenum paste", "mos2 paste", "mos₂ paste", "mos2", "mos₂", "mos2 grease", "moly paste", "moly grease", "moly", "assembly paste"}, classA, true},
	{[]string{"graphite paste", "graphite"}, classA, true},
	{[]string{"wax", "waxed"}, classA, true},
	{[]string{"PTFE coating", "ptfe", "dry film lubricant", "dry film"}, classA, true},
	// Not in VDI 2230; like greases with solids (common practice, no source).
	{[]string{"anti-seize", "antiseize", "anti seize", "copper paste", "copper grease", "nickel paste"}, classB, true},
	// Not in VDI 2230; both are liquid while the bolt is turned and lubricate
	// about as well as oil (common practice, no source).
	{threadLockers, classB, false},
	{threadSealants, classB, false},
	{[]string{"as delivered", "as supplied", "as received", "phosphated", "phosphate", "black", "black oxide"}, classC, false},
	{nothingOnTheThread, classC, false},
	{[]string{"zinc plated", "zinc", "zinc plated dry", "zinc flake"}, classC, false},
	{[]string{"zinc plated and oiled", "zinc plated oiled", "zinc plated with oil", "zinc plated oil", "phosphated and oiled", "phosphate and oil", "phosphated oiled"}, classB, false},
}

// Lubricants lists the words that FrictionOf knows, one for each condition.
func Lubricants() []string {
	list := make([]string, len(lubricants))
	for i, l := range lubricants {
		list[i] = l.names[0]
	}
	return list
}

// FrictionOf returns the range of friction for a lubricant or a condition of
// the surfaces, on steel bolts: VDI 2230 Part 1, table A5. The error lists the
// known words.
func FrictionOf(text string) (Friction, error) {
	l, err := findLubricant(text)
	return Same(l.class), err
}

func findLubricant(text string) (lubricant, error) {
	if l, ok := tension.Named(lubricants, func(l lubricant) []string { return l.names }, text); ok {
		return l, nil
	}
	return lubricant{}, finding.Failed(NoSuchLubricant, finding.Values{"written": text, "allowed": Lubricants()})
}

// HoldsSolid reports whether the word names a solid lubricant or wax.
func HoldsSolid(text string) bool {
	l, err := findLubricant(text)
	return err == nil && l.solid
}

// onAustenitic returns the range of a lubricant on stainless steel. VDI 2230
// Part 1, table A5: class B with a solid lubricant or wax. Otherwise the
// friction may reach class D, while the low end is that of steel, to be on the
// safe side.
func (l lubricant) onAustenitic() Range {
	if l.solid {
		return classB
	}
	return Between(l.class.Low, highestAustenitic)
}
