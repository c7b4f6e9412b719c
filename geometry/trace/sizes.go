package trace

import "drawdown/geometry/holes"

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
	roles := map[holes.Use]Role{holes.Fastener: Fastener, holes.Dowel: Dowel, holes.Bore: Bore, holes.Other: Port}
	for g, size := range rule.Sort(diameters, sizeStepMm) {
		f.GroupsMm = append(f.GroupsMm, size.DiameterMm)
		for _, i := range size.Of {
			round[i].Group, round[i].Role = g, roles[size.Use]
			if round[i].slot && size.Use != holes.Fastener {
				round[i].Group, round[i].Role = -1, Port
			}
		}
	}
}
