package trace

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
)

// sizeStepMm parts sizes: no scan sees one hole's diameter worse than that.
const sizeStepMm = 0.3

// sort groups the round shapes by their diameters and says what each group is
// for. A slot is one only where a fastener goes through it.
func (f *Found) sort(rule holes.Rule) {
	var round []*Shape
	var diameters []float64
	for i := range f.Shapes {
		if s := &f.Shapes[i]; s.Round() {
			round, diameters = append(round, s), append(diameters, s.DiameterMm)
		}
	}
	for g, size := range rule.Sort(diameters, sizeStepMm) {
		f.GroupsMm = append(f.GroupsMm, size.DiameterMm)
		for _, i := range size.Of {
			s := round[i]
			s.Group, s.Role = g, size.Use
			if s.Role == holes.Other {
				s.Role = Port
			}
			if s.slot && s.Role != Fastener {
				s.Group, s.Role = -1, Port
			}
		}
	}
}

// taken says what the sizes of hole were taken for where that may surprise:
// where a range that was named for bolts leaves out another size, and where a
// few smaller holes count as bolts because nobody spoke of dowels.
func (f Found) taken(rule holes.Rule) []finding.Finding {
	count, role := map[int]int{}, map[int]Role{}
	common := -1 // the most common size of bolts
	for _, s := range f.Shapes {
		if s.Round() {
			count[s.Group]++
			role[s.Group] = s.Role
		}
	}
	var all []finding.Finding
	for g, mm := range f.GroupsMm {
		if count[g] == 0 {
			continue
		}
		if common < 0 && role[g] == Fastener {
			common = g
		}
		size := finding.Values{"holes": count[g], "diameter": unit.Length(mm), "bolts": rule.Fasteners.String()}
		switch {
		case rule.Fasteners.IsSet() && role[g] == Bore && !rule.Bores.IsSet():
			all = append(all, finding.Noted(TakenForBores, size))
		case role[g] == Port:
			all = append(all, finding.Noted(TakenForPorts, size))
		case role[g] == Fastener && g != common && !rule.Dowels.IsSet() && !rule.Fasteners.IsSet() &&
			count[g] < holes.ManyHoles && mm < f.GroupsMm[common]:
			all = append(all, finding.Noted(PerhapsDowels, size))
		}
	}
	return all
}
