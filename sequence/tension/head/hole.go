package head

import (
	"slices"
	"strings"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// mediumHoles holds the clearance holes of ISO 273, medium series, by nominal
// diameter. Metric threads of other diameters (M9, M11) use a millimetre more
// than the thread, like M8 and M10.
var mediumHoles = map[float64]unit.Length{
	1.6: 1.8, 1.8: 2.1, 2: 2.4, 2.2: 2.6, 2.5: 2.9, // values from memory, like those over M64
	3: 3.4, 3.5: 3.9, 4: 4.5, 4.5: 5, 5: 5.5, 6: 6.6, 7: 7.6, 8: 9, 10: 11, 12: 13.5, 14: 15.5, 16: 17.5, 18: 20, 20: 22,
	22: 24, 24: 26, 27: 30, 30: 33, 33: 36, 36: 39, 39: 42, 42: 45, 45: 48, 48: 52, 52: 56, 56: 62, 60: 66, 64: 70,
	68: 74, 72: 78, 76: 82, 80: 86, 85: 91, 90: 96, 95: 101, 100: 107,
}

// Hole returns the usual clearance hole of the thread and its standard, if there
// is one.
func Hole(t thread.Thread) (hole unit.Length, standard string) {
	major := unit.Length(t.MajorMm)
	if t.Unified() {
		return major + inchClearance(sixteenths(t)), "ASME B18.2.8 normal"
	}
	if hole, ok := mediumHoles[t.MajorMm]; ok {
		return hole, "ISO 273 medium"
	}
	return major + 1, "" // common practice, no source: 1 mm over the thread, like M8 and M10
}

// threadHoles holds the clearance holes of ISO 273 by thread: fine, medium and
// coarse series (values from memory). M18, M22 and other second choices are
// left out, because their holes are also those of a usual size.
var threadHoles = []threadHole{
	{"M3", 3.2, 3.4, 3.6}, {"M4", 4.3, 4.5, 4.8}, {"M5", 5.3, 5.5, 5.8}, {"M6", 6.4, 6.6, 7}, {"M8", 8.4, 9, 10},
	{"M10", 10.5, 11, 12}, {"M12", 13, 13.5, 14.5}, {"M14", 15, 15.5, 16.5}, {"M16", 17, 17.5, 18.5},
	{"M20", 21, 22, 24}, {"M24", 25, 26, 28}, {"M30", 31, 33, 35}, {"M36", 37, 39, 42},
}

type threadHole struct {
	name                 string
	fine, medium, coarse unit.Length
}

// ThreadForHole guesses the metric thread for which a clearance hole was
// drilled: the one with a hole of ISO 273 within a caliper's error of it,
// otherwise the largest that goes through. sure reports which of the two it is.
// The name is "" for a hole below the smallest.
func ThreadForHole(hole unit.Length) (name string, sure bool) {
	const caliper = 0.15
	for _, t := range threadHoles {
		for _, drilled := range []unit.Length{t.fine, t.medium, t.coarse} {
			if hole > drilled-caliper && hole < drilled+caliper {
				return t.name, true
			}
		}
		if t.fine <= hole {
			name = t.name
		}
	}
	return name, false
}

// inchClearance returns the normal clearance of ASME B18.2.8 by the nominal
// diameter in sixteenths of an inch; No. 4 has half that of its neighbours.
func inchClearance(diameter float64) unit.Length {
	switch {
	case diameter < 1.9:
		return sixteenth / 4
	case diameter < 8:
		return sixteenth / 2
	case diameter < 16:
		return sixteenth
	case diameter < 22:
		return sixteenth * 3 / 2
	}
	return sixteenth * 2
}

// sixteenths returns the nominal diameter in sixteenths of an inch, without
// rounding noise.
func sixteenths(t thread.Thread) float64 {
	n := t.MajorMm / float64(sixteenth)
	if whole := float64(int(n + 0.5)); n-whole < 1e-9 && whole-n < 1e-9 {
		return whole
	}
	return n
}

// sizeName returns the diameter as in the name of the thread: M10, 3/8 in.
func sizeName(t thread.Thread) string {
	if t.Unified() {
		size, _, _ := strings.Cut(t.Name, "-")
		return size + " in"
	}
	size, _, _ := strings.Cut(t.Name, "×")
	return size
}

// wideInch is the hole size in diameters from which it is for a larger inch
// thread: those of ASME B18.2.8 go up to 1.25, and so do the oversized ones of
// structures (RCSC, table 3.1).
const wideInch = 1.3

// LargerForHole reports whether a clearance hole is wide enough for a larger
// thread than that of its bolt, and returns that thread if it is metric. Metric
// threads of second choice have no standard holes to compare with.
func LargerForHole(t thread.Thread, hole unit.Length) (larger thread.Thread, wide bool) {
	if t.Unified() {
		return thread.Thread{}, float64(hole) > wideInch*t.MajorMm
	}
	own := slices.IndexFunc(threadHoles, func(h threadHole) bool { return h.name == sizeName(t) })
	name, _ := ThreadForHole(hole)
	larger, err := thread.Parse(name)
	return larger, own >= 0 && err == nil && larger.MajorMm > t.MajorMm
}
