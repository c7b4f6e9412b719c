package head

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// Washer is what lies between the head and the part.
type Washer string

const (
	NoWasher     Washer = "none"   // the default
	NormalWasher Washer = "normal" // plain, normal series, ISO 7089
)

// Washers lists the washers that can be named.
var Washers = []Washer{NoWasher, NormalWasher}

// WasherSize holds the measures of a washer.
type WasherSize struct{ Hole, Outer, Thickness unit.Length }

// normalWashers holds the nominal measures of ISO 7089, tables 1 and 2, by the
// nominal diameter of the thread (values from memory).
var normalWashers = map[float64]WasherSize{
	3: {3.2, 7, 0.5}, 3.5: {3.7, 8, 0.5}, 4: {4.3, 9, 0.8}, 5: {5.3, 10, 1}, 6: {6.4, 12, 1.6}, 8: {8.4, 16, 1.6},
	10: {10.5, 20, 2}, 12: {13, 24, 2.5}, 14: {15, 28, 2.5}, 16: {17, 30, 3}, 18: {19, 34, 3}, 20: {21, 37, 3},
	22: {23, 39, 3}, 24: {25, 44, 4}, 27: {28, 50, 4}, 30: {31, 56, 4}, 33: {34, 60, 5}, 36: {37, 66, 5},
	39: {42, 72, 6}, 42: {45, 78, 8}, 45: {48, 85, 8}, 48: {52, 92, 8}, 52: {56, 98, 8}, 56: {62, 105, 10},
	60: {66, 110, 10}, 64: {70, 115, 10},
}

// NormalWasherSize gives the plain washer of the thread, or an error where the
// standard has none of that size.
func NormalWasherSize(t thread.Thread) (size WasherSize, standard string, err error) {
	size, ok := normalWashers[t.MajorMm]
	if t.Unified() || !ok {
		return WasherSize{}, "", fmt.Errorf("%s has no washer of ISO 7089; allowed: M3 to M64, or state the diameter of the bearing face and the washer as a layer of the grip", t.Name)
	}
	return size, "ISO 7089 " + sizeName(t), nil
}

// leastOuter gives the outer diameter less its tolerance, by ISO 7089 with the
// figures of ISO 286-1: h14 to 56 mm, h15 above.
func (w WasherSize) leastOuter() unit.Length {
	switch {
	case w.Outer <= 10:
		return w.Outer - 0.36
	case w.Outer <= 18:
		return w.Outer - 0.43
	case w.Outer <= 30:
		return w.Outer - 0.52
	case w.Outer <= 50:
		return w.Outer - 0.62
	case w.Outer <= 56:
		return w.Outer - 0.74
	case w.Outer <= 80:
		return w.Outer - 1.2
	}
	return w.Outer - 1.4
}

// spread gives how far across a washer passes on what a bearing face presses
// on it.
func (w WasherSize) spread(face unit.Length) unit.Length {
	return min(face+1.6*w.Thickness, w.leastOuter()) // VDI 2230-1, section 5.5.4: dWa = dW + 1.6 hS (value from memory)
}

// washerHardness gives the hardness class that a bolt of the strength needs:
// ISO 7089, clause 1, 200 HV to class 8.8 and 300 HV to class 10.9 (value from
// memory).
func washerHardness(s strength.Class) string {
	const ofClass88, ofClass109 = 660, 940 // yield stress in MPa, ISO 898-1, table 3
	switch {
	case s.Yield <= ofClass88:
		return "200 HV"
	case s.Yield <= ofClass109:
		return "300 HV"
	}
	return "300 HV, which the standard means for bolts up to class 10.9"
}
