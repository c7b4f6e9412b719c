package writing

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/trace"
)

// Traced returns the pattern file of what was found in a picture. Doubts stand
// in it as comments, and those about a bolt's hole on the card too. Notes say
// where the picture came from.
func Traced(title, machine string, found trace.Found, notes []finding.Finding) Draft {
	d := Draft{Title: title, Machine: machine, HolesMm: map[string]float64{}, Notes: notes}
	if len(found.Outline) > 2 {
		d.Joint.Outline = append(d.Joint.Outline, tracedPath(found.Outline))
	}
	for _, doubt := range found.Doubts {
		d.Notes = append(d.Notes, finding.Noted(Look, finding.Values{"found": doubt}))
	}
	for _, taken := range found.Taken {
		if taken.Code == trace.NotNumbered { // whoever has the card before him must know
			d.Cautions = append(d.Cautions, finding.Noted(SizeLeftOut, taken.Values))
		}
	}
	doubtful := 0
	for _, s := range found.Shapes {
		for _, doubt := range s.Doubts {
			if doubt.Code == trace.SizeOpen {
				continue // said of the size as a whole
			}
			d.Notes = append(d.Notes, finding.Noted(LookAt, finding.Values{
				"id": s.ID, "diameter": Number(tenth(s.DiameterMm)), "place": Place(tracedPlace(s.At)), "found": doubt,
			}))
		}
		code, unsure := caution[s.Role]
		if unsure && len(s.Doubts) > 0 {
			if doubtful++; doubtful <= mostTracedCautions {
				row, column := whereabouts(s.At, found)
				d.Cautions = append(d.Cautions, finding.Noted(code, finding.Values{"id": s.ID, "row": row, "column": column}))
			}
		}
		d.addTraced(s, found)
	}
	if more := doubtful - mostTracedCautions; more > 0 {
		d.Cautions = append(d.Cautions, finding.Noted(HolesUnsure, finding.Values{"n": more}))
	}
	d.Offer = TracedOffer(found)
	return d
}

// whereabouts says in which third of the part a place lies, both ways: top or
// bottom, left or right, empty in the middle. An id alone is hard to find on a
// card.
func whereabouts(at geometry.Point, found trace.Found) (row, column string) {
	places := append([]geometry.Point{}, found.Outline...)
	for _, s := range found.Shapes {
		places = append(places, s.At)
	}
	box := geometry.Bounds(places)
	third := func(v, from, to float64, low, high string) string {
		switch {
		case v < from+(to-from)/3:
			return low
		case v > to-(to-from)/3:
			return high
		}
		return ""
	}
	return third(at.Y, box.Min.Y, box.Max.Y, "bottom", "top"), third(at.X, box.Min.X, box.Max.X, "left", "right")
}

// caution is what the card says of a doubtful shape, by its role.
var caution = map[trace.Role]finding.Code{trace.Fastener: HoleUnsure, trace.Candidate: PlaceUnsure}

// mostTracedCautions keeps the card's cautions short.
const mostTracedCautions = 4

func (d *Draft) addTraced(s trace.Shape, found trace.Found) {
	at := tracedPlace(s.At)
	switch s.Role {
	case trace.Fastener:
		kind := TracedKind(found, s.Group)
		d.HolesMm[kind] = tenth(found.GroupsMm[s.Group])
		d.Joint.Fasteners = append(d.Joint.Fasteners, geometry.Fastener{ID: s.ID, Kind: kind, At: at})
	case trace.Dowel:
		d.Joint.Dowels = append(d.Joint.Dowels, geometry.Dowel{Centre: at, Diameter: tenth(s.DiameterMm)})
	case trace.Bore:
		d.Joint.Bores = append(d.Joint.Bores, geometry.Bore{Centre: at, Diameter: tenth(s.DiameterMm)})
	case trace.Port, trace.Hole:
		if len(s.Edge) > 2 {
			d.Joint.Outline = append(d.Joint.Outline, tracedPath(s.Edge))
		}
	}
}

// TracedKind names the kind of a group of holes by their diameter.
func TracedKind(found trace.Found, group int) string {
	return "hole " + Number(tenth(found.GroupsMm[group]))
}

// TracedOffer returns the regular layout that the holes for fasteners come near
// to; nil for none, and where they are of several sizes.
func TracedOffer(found trace.Found) *Layout {
	var points []geometry.Point
	group := -1
	for _, s := range found.Shapes {
		if s.Role != trace.Fastener {
			continue
		}
		if group >= 0 && s.Group != group {
			return nil
		}
		group = s.Group
		points = append(points, s.At)
	}
	const nearMm, accuracyMm = 0.4, 0.05
	regular, ok := survey.Recognise(points, nearMm, accuracyMm, survey.MillimetreSteps)
	if !ok {
		return nil
	}
	regular.OffMm = max(regular.OffMm, 0.01) // no scan tells better
	return &Layout{Regular: regular, Kind: TracedKind(found, group), ID: RegularIDs[regular.Shape]}
}

func tenth(mm float64) float64 { return math.Round(mm*10) / 10 }

// tracedPlace rounds to a hundredth of a millimetre: more was not seen.
func tracedPlace(p geometry.Point) geometry.Point {
	return geometry.Point{X: math.Round(p.X*100)/100 + 0, Y: math.Round(p.Y*100)/100 + 0}
}

func tracedPath(line []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(line))
	for i, p := range line {
		out[i] = tracedPlace(p)
	}
	return out
}
