package strength

import (
	"drawdown/geometry/unit"
)

// shearRatios holds the shear strength of a bolt thread over the tensile
// strength by the name that the sheets print: VDI 2230-1:2015, table 7 (values
// from memory).
var shearRatios = map[string]float64{
	"class 4.6": 0.70, "class 5.6": 0.70, "class 8.8": 0.65, "class 10.9": 0.62, "class 12.9": 0.60,
	"A2-50": 0.80, "A4-50": 0.80, "A2-70": 0.72, "A4-70": 0.72, "A2-80": 0.68, "A4-80": 0.68,
}

// leastShearRatio is taken for the other classes: that of the hardest bolts.
const leastShearRatio = 0.60

// Shear gives the shear strength of the bolt's thread; 0 where the tensile
// strength is unknown.
func (s Class) Shear() unit.Stress {
	return unit.Stress(s.shearRatio()) * s.Tensile // VDI 2230-1, section 5.5.5: τB/Rm
}

func (s Class) shearRatio() float64 {
	if ratio, ok := shearRatios[s.Name]; ok {
		return ratio
	}
	return leastShearRatio
}
