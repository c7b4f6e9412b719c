package trace

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
)

// sizeStepMm parts sizes: no scan sees one hole's diameter worse than that.
const sizeStepMm = 0.3

// sort groups the round shapes by their diameters and says what each group is
// for. A slot is one only where a fastener goes through it. It notes what sizes
// were taken for where that may surprise: where a range that was named for bolts
// leaves out another size, and where a few smaller holes count as bolts because
// nobody spoke of dowels.
func (f *Found) sort(rule holes.Rule) {
	var round []*Shape
	var diameters []float64
	for i := range f.Shapes {
		if s := &f.Shapes[i]; s.Round() {
			round, diameters = append(round, s), append(diameters, s.DiameterMm)
		}
	}
	common := 0.0 // the most common size of bolts
	sizes := rule.Sort(diameters, sizeStepMm)
	if unsure, found := rule.Unsure(sizes); found {
		f.Taken = append(f.Taken, unsure)
	}
	for g, size := range sizes {
		f.GroupsMm = append(f.GroupsMm, size.DiameterMm)
		role, count := size.Use, 0
		if role == holes.Other {
			role = Port
		}
		for _, i := range size.Of {
			if s := round[i]; s.slot && role != Fastener {
				s.Group, s.Role = -1, Port
			} else {
				s.Group, s.Role = g, role
				count++
			}
		}
		if count == 0 {
			continue
		}
		if common == 0 && role == Fastener {
			common = size.DiameterMm
		}
		values := finding.Values{"holes": count, "diameter": unit.Length(size.DiameterMm), "bolts": rule.Fasteners.String()}
		switch {
		case rule.Fasteners.IsSet() && role == Bore && !rule.Bores.IsSet():
			f.Taken = append(f.Taken, finding.Noted(TakenForBores, values))
		case role == Port:
			f.Taken = append(f.Taken, finding.Noted(TakenForPorts, values))
		case role == Fastener && !rule.Dowels.IsSet() && !rule.Fasteners.IsSet() && count < holes.ManyHoles && size.DiameterMm < common:
			f.Taken = append(f.Taken, finding.Noted(PerhapsDowels, values))
		}
	}
}
