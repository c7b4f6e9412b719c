package screw

import (
	"fmt"
	"math"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// Spread is a preload from low to high.
type Spread struct {
	Low, Nominal, High unit.Force
	Scatter            float64 // to either side, as a share of Nominal
	Factor             float64 // αA of VDI 2230: High over Low
	Source             string
}

// method is a way to tighten, with the tightening factor it has at best and at
// worst.
type method struct {
	names []string // the first is the one that lists show
	alpha Range
}

// methods holds tightening factors αA: VDI 2230-1 (2003 and 2015), table A8
// (values from memory).
var methods = []method{
	{[]string{"elongation", "length measured", "elongation controlled"}, Range{Low: 1.1, High: 1.5}},
	{[]string{"yield", "yield controlled"}, Range{Low: 1.2, High: 1.4}},
	{[]string{"angle", "torque and angle", "angle controlled"}, Range{Low: 1.2, High: 1.4}},
	{[]string{"torque found by test", "torque, found by test"}, Range{Low: 1.4, High: 1.6}},
	{[]string{"torque", "torque wrench", "torque, friction estimated"}, Range{Low: 1.6, High: 2.0}},
	{[]string{"impact driver", "impact", "impulse driver", "impact wrench"}, Range{Low: 2.5, High: 4.0}},
}

// Methods lists the ways to tighten that ScatterOf knows.
func Methods() []string {
	list := make([]string, len(methods))
	for i, m := range methods {
		list[i] = m.names[0]
	}
	return list
}

// TighteningFactor gives αA of a way to tighten at best (Low) and at worst
// (High): VDI 2230-1, table A8. The error lists the ways.
func TighteningFactor(way string) (Range, error) {
	for _, m := range methods {
		for _, name := range m.names {
			if tension.PlainWords(name) == tension.PlainWords(way) {
				return Between(m.alpha.Low, m.alpha.High), nil
			}
		}
	}
	return Range{}, fmt.Errorf("tightening by %q is not known; allowed: %s", way, strings.Join(Methods(), ", "))
}

// ScatterOfFactor gives the scatter to either side of the mean preload.
func ScatterOfFactor(alpha float64) float64 {
	return (alpha - 1) / (alpha + 1) // VDI 2230-1, table A8: αA = FMmax/FMmin
}

// LeastPreload gives the preload that is left at worst where the greatest is
// known.
func LeastPreload(greatest unit.Force, alpha float64) unit.Force {
	return greatest / unit.Force(alpha) // VDI 2230-1, section 5.4.3: FMmin = FMmax/αA
}

// ScatterOf spreads a nominal preload by the way to tighten, at the worst of
// its factors.
func ScatterOf(nominal unit.Force, way string) (Spread, error) {
	alpha, err := TighteningFactor(way)
	if err != nil {
		return Spread{}, err
	}
	return spread(nominal, ScatterOfFactor(alpha.High), "VDI 2230-1, table A8")
}

// flangeScatter is a row of EN 1591-1:2001, table B.1 (values from memory):
// scatter = base + share µ.
type flangeScatter struct {
	way         string
	base, share float64
}

var flangeScatters = []flangeScatter{
	{"feel", 0.3, 0.5},
	{"impact wrench", 0.2, 0.5},
	{"torque wrench", 0.1, 0.5},
	{"hydraulic tensioner", 0.4, 0},
	{"elongation", 0.15, 0},
	{"turn of nut", 0.10, 0},
	{"torque and turn", 0.07, 0},
}

// FlangeMethods lists the ways that FlangeScatter knows.
func FlangeMethods() []string {
	list := make([]string, len(flangeScatters))
	for i, f := range flangeScatters {
		list[i] = f.way
	}
	return list
}

// FlangeScatter spreads the nominal preload of one flange bolt: EN 1591-1:2001,
// Annex B, table B.1. The friction is not read where the way has none in it;
// the hydraulic tensioner stands with the worse of its figures.
func FlangeScatter(nominal unit.Force, way string, friction float64) (Spread, error) {
	if err := Same(Range{friction, friction, friction}).check(); err != nil {
		return Spread{}, err
	}
	for _, f := range flangeScatters {
		if tension.PlainWords(f.way) == tension.PlainWords(way) {
			return spread(nominal, f.base+f.share*friction, "EN 1591-1, table B.1") // EN 1591-1, table B.1: ε = a + 0.5 µ
		}
	}
	return Spread{}, fmt.Errorf("tightening by %q is not known; allowed: %s", way, strings.Join(FlangeMethods(), ", "))
}

func spread(nominal unit.Force, scatter float64, source string) (Spread, error) {
	if !(nominal > 0 && !math.IsInf(float64(nominal), 1)) {
		return Spread{}, fmt.Errorf("preload %.4g N; allowed: above 0", float64(nominal))
	}
	s := unit.Force(scatter)
	return Spread{Low: nominal * (1 - s), Nominal: nominal, High: nominal * (1 + s), Scatter: scatter, Factor: (1 + scatter) / (1 - scatter), Source: source}, nil
}
