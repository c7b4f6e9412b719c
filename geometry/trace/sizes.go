package trace

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
)

const (
	// sizeStepMm parts sizes: no scan sees one hole's diameter worse than that.
	sizeStepMm = 0.3
	// drilledMm is how far the diameters of holes from one drill may lie apart;
	// printed dots lie further.
	drilledMm = 0.6
)

// sort groups the round shapes by their diameters and says what each group is
// for. Slots are never for bolts. Where nobody named the diameters of bolts, only
// one size can be theirs for certain: the holes of the others are left unnumbered.
func (f *Found) sort(rule holes.Rule) {
	var round []*Shape
	var diameters []float64
	for i := range f.Shapes {
		s := &f.Shapes[i]
		if s.slot {
			s.Group, s.Role = -1, Port
		}
		if s.Round() {
			round, diameters = append(round, s), append(diameters, s.DiameterMm)
		}
	}
	sizes := rule.Sort(diameters, sizeStepMm)
	sure := certain(sizes, diameters, rule)
	for g, size := range sizes {
		f.GroupsMm = append(f.GroupsMm, size.DiameterMm)
		role := size.Use
		switch {
		case role == holes.Other:
			role = Port
		case role == Fastener && g != sure && !rule.Fasteners.IsSet():
			role = Hole
		}
		for _, i := range size.Of {
			if round[i].Group, round[i].Role = g, role; role == Hole {
				round[i].doubt(SizeOpen, finding.Values{"diameter": unit.Length(size.DiameterMm)})
			}
		}
	}
	f.Taken = f.taken(rule)
}

// taken says what sizes of holes were taken for, where that may surprise. What a
// person said of a hole surprises nobody. It counts anew the holes of open sizes.
func (f *Found) taken(rule holes.Rule) (taken []finding.Finding) {
	for g, mm := range f.GroupsMm {
		var some []Shape
		for _, s := range f.Shapes {
			if s.Group == g && !s.said {
				some = append(some, s)
			}
		}
		if len(some) == 0 {
			continue
		}
		values := finding.Values{"holes": len(some), "diameter": unit.Length(mm), "bolts": rule.Fasteners.String()}
		switch role := some[0].Role; {
		case rule.Fasteners.IsSet() && role == Bore && !rule.Bores.IsSet():
			taken = append(taken, finding.Noted(TakenForBores, values))
		case role == Port:
			taken = append(taken, finding.Noted(TakenForPorts, values))
		case role == Hole:
			taken = append(taken, finding.Noted(NotNumbered, values))
			recount(some)
		}
	}
	return taken
}

// recount says of each hole of an open size how many there are.
func recount(some []Shape) {
	for _, s := range some {
		for _, d := range s.Doubts {
			if d.Code == SizeOpen {
				d.Values["holes"] = len(some)
			}
		}
	}
}

// Size is how many holes of a diameter there are, and what they are taken for.
type Size struct {
	DiameterMm float64
	Holes      int
	Role       Role
}

// Sizes lists the diameters of the round holes, the most common first.
func (f Found) Sizes() (sizes []Size) {
	for g, mm := range f.GroupsMm {
		size := Size{DiameterMm: mm}
		for _, s := range f.Shapes {
			if s.Group == g {
				size.Holes, size.Role = size.Holes+1, s.Role
			}
		}
		if size.Holes > 0 {
			sizes = append(sizes, size)
		}
	}
	return sizes
}

// certain returns the size that is for bolts where nobody named theirs: the only
// one that could be, or the only one of many holes from one drill. -1 is none.
func certain(sizes []holes.Size, diameters []float64, rule holes.Rule) int {
	var possible, many []int
	for g, size := range sizes {
		if size.Use != Fastener {
			continue
		}
		possible = append(possible, g)
		if len(size.Of) >= holes.ManyHoles && spread(size, diameters) <= drilledMm {
			many = append(many, g)
		}
	}
	switch {
	case len(many) == 1:
		return many[0]
	case len(possible) == 1:
		return possible[0]
	}
	return -1
}

// spread is how far the diameters of a size lie apart.
func spread(size holes.Size, diameters []float64) float64 {
	low, high := size.DiameterMm, size.DiameterMm
	for _, i := range size.Of {
		low, high = min(low, diameters[i]), max(high, diameters[i])
	}
	return high - low
}
