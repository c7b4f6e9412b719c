package mechanics

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// shank reads the diameter of the shank, or its sections from the head down.
func (r *reader) shank(f form.Fields, k *plan.Kind) {
	if f.Has("shank") && f.Has("sections") {
		r.Fail(f.Node.KeyNode("sections"), ShankAndSections, nil)
		return
	}
	at := f.Get("shank")
	if at != nil {
		k.Shank = r.shankDiameter(f, "shank", k)
	}
	for section := range f.Maps("sections", "[{diameter: 8 mm, length: 40 mm}]", finding.Term("the section"), "diameter", "length") {
		at = section.Node
		diameter, length := section.Need("diameter", "8 mm"), section.Need("length", "40 mm")
		if diameter == nil || length == nil {
			continue
		}
		part := stiffness.Section{Diameter: r.shankDiameter(section, "diameter", k), Length: section.Length("length", unit.Sensible.BoltLength)}
		if part.Diameter == 0 || part.Length == 0 {
			continue
		}
		k.Sections = append(k.Sections, part)
		if k.Shank == 0 || part.Diameter < k.Shank {
			k.Shank = part.Diameter
		}
	}
	r.shankFits(at, k)
}

// shankDiameter reads one diameter, which must be one of a bolt with the thread.
func (r *reader) shankDiameter(f form.Fields, key string, k *plan.Kind) unit.Length {
	d := f.Length(key, unit.Sensible.BoltFace)
	if d == 0 || k.Thread == nil {
		return d
	}
	if err := screw.CheckShank(*k.Thread, d); err != nil {
		r.Unreadable(f.Get(key), finding.Error, nil, err)
		return 0
	}
	return d
}

// shankFits reports a shank beside a thread up to the head, and sections that
// are longer than the bolt.
func (r *reader) shankFits(at *nodes.Node, k *plan.Kind) {
	if at == nil || k.Shank == 0 {
		return
	}
	if k.FullThread {
		r.Unreadable(at, finding.Error, nil, finding.Failed(stiffness.ShankOnFullThread, finding.Values{"shank": k.Shank}))
	}
	var sum unit.Length
	for _, s := range k.Sections {
		sum += s.Length
	}
	if k.Length > 0 && sum > k.Length {
		r.Fail(at, SectionsTooLong, finding.Values{"sections": sum, "length": k.Length})
	}
}

// boss reads the outer diameter round a tapped hole.
func (r *reader) boss(f form.Fields, k plan.Kind) unit.Length {
	boss := f.Length("boss", unit.Sensible.BoltFace)
	if boss == 0 || k.Thread == nil {
		return boss
	}
	if err := strength.CheckBoss(*k.Thread, boss); err != nil {
		r.Unreadable(f.Get("boss"), finding.Error, nil, err)
		return 0
	}
	return boss
}
