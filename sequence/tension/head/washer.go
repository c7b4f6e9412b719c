package head

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// Washer is the washer between the head and the part.
type Washer string

const (
	NoWasher     Washer = "none"   // the default
	NormalWasher Washer = "normal" // plain, normal series, ISO 7089
)

// Washers lists the valid washers.
var Washers = []Washer{NoWasher, NormalWasher}

// WasherSize holds the dimensions of a washer.
type WasherSize struct{ Hole, Outer, Thickness unit.Length }

// normalWashers holds the nominal dimensions of ISO 7089, tables 1 and 2, by
// the nominal diameter of the thread (values from memory).
var normalWashers = map[float64]WasherSize{
	1.6: {1.7, 4, 0.3}, 2: {2.2, 5, 0.3}, 2.5: {2.7, 6, 0.5}, // values from memory
	3: {3.2, 7, 0.5}, 3.5: {3.7, 8, 0.5}, 4: {4.3, 9, 0.8}, 5: {5.3, 10, 1}, 6: {6.4, 12, 1.6}, 8: {8.4, 16, 1.6},
	10: {10.5, 20, 2}, 12: {13, 24, 2.5}, 14: {15, 28, 2.5}, 16: {17, 30, 3}, 18: {19, 34, 3}, 20: {21, 37, 3},
	22: {23, 39, 3}, 24: {25, 44, 4}, 27: {28, 50, 4}, 30: {31, 56, 4}, 33: {34, 60, 5}, 36: {37, 66, 5},
	39: {42, 72, 6}, 42: {45, 78, 8}, 45: {48, 85, 8}, 48: {52, 92, 8}, 52: {56, 98, 8}, 56: {62, 105, 10},
	60: {66, 110, 10}, 64: {70, 115, 10},
}

// NormalWasherSize returns the plain washer for the thread, or an error if the
// standard has none of that size.
func NormalWasherSize(t thread.Thread) (size WasherSize, standard string, err error) {
	size, ok := normalWashers[t.MajorMm]
	if t.Unified() || !ok {
		return WasherSize{}, "", finding.Failed(NoStandardWasher, finding.Values{"thread": t.Name})
	}
	return size, "ISO 7089 " + sizeName(t), nil
}

// outerTolerances are those of ISO 7089 with the figures of ISO 286-1: h14 to
// 56 mm, h15 above.
var outerTolerances = []step{{10, 0.36}, {18, 0.43}, {30, 0.52}, {50, 0.62}, {56, 0.74}, {80, 1.2}, {120, 1.4}}

func (w WasherSize) leastOuter() unit.Length { return w.Outer - at(outerTolerances, w.Outer) }

// spread returns the diameter to which a washer spreads the load of a bearing
// face.
func (w WasherSize) spread(face unit.Length) unit.Length {
	return min(face+1.6*w.Thickness, w.leastOuter()) // VDI 2230-1, section 5.5.4: dWa = dW + 1.6 hS (value from memory)
}

// washerHardness returns the hardness class that a bolt of the strength needs:
// ISO 7089, clause 1, 200 HV to class 8.8 and 300 HV to class 10.9 (value from
// memory). beyond reports that the bolt is stronger than the standard covers.
func washerHardness(s strength.Class) (hardness string, beyond bool) {
	const ofClass88, ofClass109 = 660, 940 // yield stress in MPa, ISO 898-1, table 3
	if s.Yield <= ofClass88 {
		return "200 HV", false
	}
	return "300 HV", s.Yield > ofClass109
}
