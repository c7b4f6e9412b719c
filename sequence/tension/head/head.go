package head

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// metricAcross holds the widths across flats of hexagon heads by nominal
// diameter: ISO 4014 and ISO 4017, table 1.
var metricAcross = map[float64]unit.Length{
	1.6: 3.2, 2: 4, 2.5: 5, 3: 5.5, 3.5: 6, 4: 7, 5: 8, 6: 10, 8: 13, 10: 16, 12: 18, 14: 21, 16: 24, 18: 27, 20: 30,
	22: 34, 24: 36, 27: 41, 30: 46, 33: 50, 36: 55, 39: 60, 42: 65, 45: 70, 48: 75, 52: 80, 56: 85, 60: 90, 64: 95,
}

// inchAcross holds the widths across flats of hexagon cap screws in sixteenths
// of an inch, by nominal diameter in sixteenths: ASME B18.2.1.
var inchAcross = map[float64]float64{
	4: 7, 5: 8, 6: 9, 7: 10, 8: 12, 9: 13, 10: 15, 12: 18, 14: 21, 16: 24, 18: 27, 20: 30, 22: 33, 24: 36, 28: 42, 32: 48,
	36: 54, 40: 60, 44: 66, 48: 72, 52: 78, 56: 84, 60: 90, 64: 96, // values from memory: 1.5 times the diameter
}

// furtherAcross holds the widths across flats of the sizes that ISO 4014 does
// not have: ISO 272 (values from memory).
var furtherAcross = map[float64]unit.Length{7: 11, 68: 100, 72: 105, 76: 110, 80: 115, 85: 120, 90: 130, 95: 135, 100: 145}

const sixteenth unit.Length = 25.4 / 16

// HexagonAcross returns the width across flats of the standard hexagon head and
// its standard, or an error if the standard has no head of that size.
func HexagonAcross(t thread.Thread) (across unit.Length, standard string, err error) {
	if !t.Unified() {
		if s, ok := metricAcross[t.MajorMm]; ok {
			return s, HexagonStandard(t) + " " + sizeName(t), nil
		}
		if s, ok := furtherAcross[t.MajorMm]; ok {
			return s, "ISO 272 " + sizeName(t), nil
		}
	} else if s, ok := inchAcross[sixteenths(t)]; ok {
		return unit.Length(s) * sixteenth, "ASME B18.2.1 " + sizeName(t), nil
	}
	return 0, "", finding.Failed(NoHexagon, finding.Values{"thread": t.Name})
}

// socketKey holds the widths across flats of the hexagon sockets of socket head
// cap screws by nominal diameter: s of ISO 4762, table 1 (values from memory).
var socketKey = map[float64]unit.Length{
	3: 2.5, 4: 3, 5: 4, 6: 5, 8: 6, 10: 8, 12: 10, 14: 12, 16: 14, 20: 17, 24: 19, 30: 22, 36: 27,
}

// KeyAcross returns the width across flats of the hexagon key for a socket head
// cap screw and its standard, or an error if the table has no such size.
func KeyAcross(t thread.Thread) (across unit.Length, standard string, err error) {
	if s, ok := socketKey[t.MajorMm]; ok && !t.Unified() {
		return s, "ISO 4762 " + sizeName(t), nil
	}
	return 0, "", finding.Failed(NoSocket, finding.Values{"thread": t.Name, "allowed": sizesIn(socketKey)})
}

// HexagonStandard is the standard for metric hexagon heads; fine pitch has a
// separate standard for the same head.
func HexagonStandard(t thread.Thread) string {
	if t.Series == thread.MetricFine {
		return "ISO 8765"
	}
	return "ISO 4014"
}

// BearingFace returns the least outer diameter of the bearing face under a
// hexagon head with the given width across flats.
func BearingFace(across unit.Length, unified bool) unit.Length {
	if unified {
		return 0.90 * across // ASME B18.2.1: washer face, width across flats less 0 to 10 %
	}
	least := across - at(acrossTolerances, across)
	if across <= 18 {
		return least - at(faceTolerances, across) // ISO 4759-1: dw min = s min − IT16, to s = 18 mm
	}
	return 0.95 * least // ISO 4759-1: dw min = 0.95 s min, above
}

// step is a figure that applies up to a size.
type step struct{ upTo, is unit.Length }

// at returns the figure of the first step that reaches the size.
func at(steps []step, size unit.Length) unit.Length {
	for _, s := range steps {
		if size <= s.upTo {
			return s.is
		}
	}
	return steps[len(steps)-1].is
}

// acrossTolerances are tolerances of widths across flats, ISO 4759-1 (h13 to 30
// mm, h14 in product grade A above; grade B, for bolts over M24, h15 and from
// 60 mm h16), with the figures of ISO 286-1.
var acrossTolerances = []step{{6, 0.18}, {10, 0.22}, {18, 0.27}, {30, 0.33}, {36, 0.62}, {50, 1.0}, {60, 1.2}, {80, 1.9}, {120, 2.2}, {180, 2.5}}

// faceTolerances holds IT16 of ISO 286-1.
var faceTolerances = []step{{6, 0.75}, {10, 0.90}, {18, 1.10}}
