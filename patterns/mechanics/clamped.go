package mechanics

import (
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/strength"
)

// Clamped reads the block joint: what is known about the clamped parts. A row
// and a flange must fit the places of the fasteners, if any are given.
func Clamped(from *form.Reader, file form.Fields, at []geometry.Point) (c plan.Clamped) {
	f, ok := file.Map("joint", "joint", "part", "counterpart", "gasket", "row", "flange", "bolt flexibility",
		"pressure", "sealed", "load", "load introduction", "temperature")
	if !ok {
		return c
	}
	r := placed{reader{from}, at}
	c.Part = r.clampedPart(f, "part")
	c.Counterpart = r.clampedPart(f, "counterpart")
	c.Gasket = form.Opt(f, "gasket", r.gasket)
	if f.Has("row") && f.Has("flange") {
		r.Fail(f.Node, RowAndFlange, nil)
	} else {
		c.Row, c.Flange = form.Opt(f, "row", r.clampedRow), form.Opt(f, "flange", r.roundFlange)
	}
	if at := f.Get("bolt flexibility"); at != nil {
		c.BoltFlexibility, _ = form.Parsed(r.Reader, at, "bolt flexibility", unit.Within(unit.Sensible.Giving, unit.ParseFlexibility))
	}
	c.Service = r.service(f, c)
	return c
}

func (r *reader) clampedPart(file form.Fields, key string) plan.ClampedPart {
	f, ok := file.Map(key, finding.Term("the "+key), "material", "thickness")
	if !ok {
		return plan.ClampedPart{}
	}
	return plan.ClampedPart{Material: r.material(f, "material", nil, finding.Error), Thickness: f.Length("thickness", unit.Sensible.Thickness)}
}

// CheckParts checks the clamped parts against the kinds, which the file states
// at these nodes.
func CheckParts(from *form.Reader, file form.Fields, c plan.Clamped, kinds []plan.Kind, at map[string]*nodes.Node) {
	r := reader{from}
	r.checkThickness(file, c.Part.Thickness, kinds)
	r.checkInto(c.Counterpart, kinds, at)
	r.checkGrips(c, kinds, at)
}

// checkThickness warns about a part that is much thicker than what any fastener
// clamps, or much thinner. Heads may be recessed, so a quarter more is
// accepted, and sleeves may be on sheet metal (common practice, no source).
func (r *reader) checkThickness(f form.Fields, thickness unit.Length, kinds []plan.Kind) {
	const letIn, thinPart = 1.25, 1. / 8
	grip := unit.Length(0)
	for _, k := range kinds {
		if k.Grip == 0 {
			return
		}
		grip = max(grip, k.Grip)
	}
	if thickness == 0 {
		return
	}
	at := f.Node.Get("joint").Get("part").Get("thickness")
	switch {
	case grip > 0 && thickness > letIn*grip:
		r.Warn(at, PartThick, finding.Values{"thickness": thickness, "grip": grip})
	case thickness < thinPart*grip:
		r.Warn(at, PartThin, finding.Values{"thickness": thickness, "grip": grip})
	}
}

// checkGrips warns about through bolts that clamp less than the two parts are thick.
func (r *reader) checkGrips(c plan.Clamped, kinds []plan.Kind, at map[string]*nodes.Node) {
	const share = 0.9 // heads may be recessed a little
	both := c.Part.Thickness + c.Counterpart.Thickness
	if c.Part.Thickness == 0 || c.Counterpart.Thickness == 0 {
		return
	}
	for _, k := range kinds {
		if k.NutAcross > 0 && k.Into == "" && k.Grip > 0 && k.Grip < share*both {
			r.Warn(at[k.Name], GripShort, finding.Values{"kind": k.Name, "grip": k.Grip, "both": both})
		}
	}
}

// checkInto warns about kinds that are tapped into another material than that
// of the part below.
func (r *reader) checkInto(counterpart plan.ClampedPart, kinds []plan.Kind, at map[string]*nodes.Node) {
	below, err := strength.ParseMaterial(counterpart.Material)
	if err != nil {
		return
	}
	for _, k := range kinds {
		if into, err := strength.ParseMaterial(k.Into); err == nil && !alike(into.Name, below.Name) {
			r.Warn(at[k.Name], IntoOther, finding.Values{"kind": k.Name, "into": into.Term(), "counterpart": below.Term()})
		}
	}
}

// alike reports whether two materials are of one family: cast aluminium and
// aluminium.
func alike(a, b string) bool {
	family := func(name string) string { return name[strings.LastIndex(name, " ")+1:] }
	return family(a) == family(b)
}
