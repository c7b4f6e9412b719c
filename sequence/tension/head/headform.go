package head

import (
	"maps"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// Form is the form of the head. It determines the bearing face if none is
// stated, and the compliance of the head.
type Form string

const (
	Hexagon Form = "hexagon" // ISO 4014, ISO 4017, with fine pitch ISO 8765, or ASME B18.2.1; the default
	Socket  Form = "socket"  // hexagon socket head cap screw, ISO 4762
	Flange  Form = "flange"  // hexagon with flange, small series, ISO 4162
)

// Forms lists the valid forms.
var Forms = []Form{Hexagon, Socket, Flange}

// Names returns names from the file format as strings.
func Names[T ~string](names []T) []string {
	list := make([]string, len(names))
	for i, name := range names {
		list[i] = string(name)
	}
	return list
}

func (f Form) check() error {
	if !slices.Contains(Forms, f) {
		return finding.Failed(NoSuchForm, finding.Values{"written": string(f), "allowed": Names(Forms)})
	}
	return nil
}

// socketFace holds the least outer diameter of the bearing face of socket heads
// by nominal diameter: dw of ISO 4762, table 1 (values from memory).
var socketFace = map[float64]unit.Length{
	3: 5.07, 4: 6.53, 5: 8.03, 6: 9.38, 8: 12.33, 10: 15.33, 12: 17.23, 14: 20.17, 16: 23.17, 20: 28.87,
	24: 34.81, 30: 43.61, 36: 52.54, 42: 61.34, 48: 70.34, 56: 82.26, 64: 94.26,
}

// flangeFace holds the same of flanges: dw of ISO 4162, table 1 (values from
// memory).
var flangeFace = map[float64]unit.Length{
	5: 9.4, 6: 11.6, 8: 14.9, 10: 18.7, 12: 22.5, 14: 26.4, 16: 30.6,
}

// Face returns the least outer diameter of the bearing face under the standard
// head of a form and its standard, or an error if the standard has no head of
// that size.
func Face(t thread.Thread, form Form) (face unit.Length, standard string, err error) {
	if err := form.check(); err != nil {
		return 0, "", err
	}
	if form == Hexagon {
		across, standard, err := HexagonAcross(t)
		if err != nil {
			return 0, "", err
		}
		return BearingFace(across, t.Unified()), standard, nil
	}
	faces, standard := socketFace, "ISO 4762"
	if form == Flange {
		faces, standard = flangeFace, "ISO 4162"
	}
	face, ok := faces[t.MajorMm]
	if t.Unified() || !ok {
		return 0, "", finding.Failed(NoHeadOfForm, finding.Values{"thread": t.Name, "form": finding.Term(form), "standard": standard, "allowed": sizesIn(faces)})
	}
	return face, standard + " " + sizeName(t), nil
}

// sizesIn lists the metric sizes of a table, smallest first.
func sizesIn(table map[float64]unit.Length) []string {
	var sizes []string
	for _, d := range slices.Sorted(maps.Keys(table)) {
		sizes = append(sizes, "M"+strconv.FormatFloat(d, 'g', -1, 64))
	}
	return sizes
}
