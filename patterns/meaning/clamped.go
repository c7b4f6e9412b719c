package meaning

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/strength"
)

// readClamped reads the block joint: what is known of the clamped parts. It
// comes after the fasteners, whose places a row and a flange must fit.
func (r *reader) readClamped(file form.Fields) {
	f, ok := file.Map("joint", "joint", "part", "counterpart", "gasket", "row", "flange", "bolt flexibility")
	if !ok {
		return
	}
	c := &r.input.Clamped
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
}

func (r *reader) clampedPart(file form.Fields, key string) plan.ClampedPart {
	f, ok := file.Map(key, finding.Term("the "+key), "material", "thickness")
	if !ok {
		return plan.ClampedPart{}
	}
	return plan.ClampedPart{Material: r.material(f, "material", nil, finding.Error), Thickness: f.Length("thickness", unit.Sensible.Thickness)}
}

// checkThickness warns of a part that is much thicker than what any fastener
// clamps, or much thinner. A head may be let in, so half as much again passes, and
// sleeves may stand on sheet metal (common practice, no source).
func (r *reader) checkThickness(f form.Fields) {
	const letIn, thinPart = 1.5, 1. / 8
	thickness, grip := r.input.Clamped.Part.Thickness, unit.Length(0)
	for _, k := range r.input.Kinds {
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

// checkInto warns of kinds that are tapped into another material than that of the
// part below.
func (r *reader) checkInto() {
	below, err := strength.ParseMaterial(r.input.Clamped.Counterpart.Material)
	if err != nil {
		return
	}
	for _, k := range r.input.Kinds {
		if into, err := strength.ParseMaterial(k.Into); err == nil && !alike(into.Name, below.Name) {
			r.Warn(r.kinds.at[k.Name], IntoOther, finding.Values{"kind": k.Name, "into": into.Term(), "counterpart": below.Term()})
		}
	}
}

// alike says whether two materials are of one family: cast aluminium and aluminium.
func alike(a, b string) bool {
	family := func(name string) string { return name[strings.LastIndex(name, " ")+1:] }
	return family(a) == family(b)
}

// gasket reads its kind, or its stiffness, or what a data sheet says of it.
func (r *reader) gasket(n *nodes.Node) plan.Gasket {
	f, ok := r.Fields(n, finding.Term("the gasket"), "kind", "stiffness", "strip", "squeezed", "at", "thickness")
	if !ok {
		return plan.Gasket{}
	}
	g := plan.Gasket{Strip: f.Length("strip", unit.Sensible.Strip)}
	if f.Has("stiffness") && f.Has("squeezed") {
		r.Fail(n, StiffnessTwice, nil)
		return g
	}
	if at := f.Get("kind"); at != nil {
		text, _ := r.Text(at, "kind")
		kind, err := compliance.ParseGasket(text)
		if err != nil {
			r.Unreadable(at, finding.Error, nil, err)
		}
		g.Kind = string(kind)
	}
	if at := f.Get("stiffness"); at != nil {
		g.Stiffness, _ = form.Parsed(r.Reader, at, "stiffness", unit.ParseAreaStiffness)
	}
	if f.Has("squeezed") {
		g.Stiffness = r.dataSheet(f)
	} else if f.Has("at") || f.Has("thickness") {
		f.Refuse(GoesWithSqueezed, "at", "thickness")
	}
	return g
}

// dataSheet reads how much of its thickness a gasket is squeezed at a pressure.
func (r *reader) dataSheet(f form.Fields) (stiffness unit.Span[unit.AreaStiffness]) {
	const example = "{squeezed: 7-17 %, at: 34.5 MPa, thickness: 1.5 mm}"
	squeezed, at, thick := f.Get("squeezed"), f.Need("at", "34.5 MPa, as in "+example), f.Need("thickness", "1.5 mm, as in "+example)
	if squeezed == nil || at == nil || thick == nil {
		return stiffness
	}
	least, most, ok := r.percents(squeezed, "squeezed")
	pressure, okPressure := form.Parsed(r.Reader, at, "at", unit.Within(unit.Sensible.Squeeze, unit.ParseStress))
	thickness, okThickness := r.LengthMm(thick, "thickness", unit.Sensible.Thickness)
	if !ok || !okPressure || !okThickness {
		return stiffness
	}
	stiffness.Low = unit.AreaStiffness(compliance.GasketMPaPerMm(float64(pressure), most, thickness))
	stiffness.High = unit.AreaStiffness(compliance.GasketMPaPerMm(float64(pressure), least, thickness))
	stiffness.Nominal = unit.AreaStiffness(math.Sqrt(float64(stiffness.Low * stiffness.High)))
	return stiffness
}

// percents reads 10 % or 7-17 %.
func (r *reader) percents(n *nodes.Node, what string) (least, most float64, ok bool) {
	low, high, found := strings.Cut(strings.ReplaceAll(strings.TrimSuffix(strings.TrimSpace(n.Text), "%"), "–", "-"), "-")
	if !found {
		high = low
	}
	read := func(text string) float64 {
		v, err := unit.ParseLength(strings.TrimSuffix(strings.TrimSpace(text), "%"), "mm") // a bare number, with either decimal sign
		if err != nil || strings.Contains(text, "m") {
			return 0
		}
		return float64(v)
	}
	least, most = read(low), read(high)
	if n.Shape != nodes.Scalar || !strings.Contains(n.Text, "%") || !(least > 0 && least <= most && most < 100) {
		r.Fail(n, NoShare, finding.Values{"what": what, "found": n.Called()})
		return 0, 0, false
	}
	return least, most, true
}

func (r *reader) clampedRow(n *nodes.Node) *plan.Row {
	f, ok := r.Fields(n, finding.Term("the row"), "bending", "foundation", "length", "start")
	if !ok {
		return nil
	}
	bending, foundation, length := f.Need("bending", "2.0e8 N·mm²"), f.Need("foundation", "900 N/mm²"), f.Need("length", "380 mm")
	if bending == nil || foundation == nil || length == nil {
		return nil
	}
	row := &plan.Row{}
	var okBending, okLength bool
	row.Bending, okBending = form.Parsed(r.Reader, bending, "bending", unit.Within(unit.Sensible.Bending, unit.ParseBendingStiffness))
	row.Foundation, _ = form.Parsed(r.Reader, foundation, "foundation", unit.ParseLineStiffness)
	long, okLength := r.LengthMm(length, "length", unit.Sensible.Distance)
	row.Length = unit.Length(long)
	if !okBending || !okLength || !row.Foundation.Stated() {
		return nil
	}
	r.rowFits(n, f, row)
	return row
}

// rowFits holds a row against its fasteners. Without a start they stand in the
// middle of it.
func (r *reader) rowFits(n *nodes.Node, f form.Fields, row *plan.Row) {
	at := r.input.Joint.Points()
	if len(at) == 0 || !r.fasteners.placed() {
		return
	}
	first, last := compliance.RowEnds(at)
	span := unit.Length(first.Distance(last))
	row.Start = (row.Length - span) / 2
	if at := f.Get("start"); at != nil {
		start, ok := r.CoordinateMm(at, "start")
		if !ok {
			return
		}
		row.Start = unit.Length(start)
	}
	if !compliance.InLine(at) {
		r.Fail(n, RowOffLine, nil)
		return
	}
	if row.Start < 0 || row.Start+span > row.Length*(1+1e-9) {
		r.Fail(n, RowTooShort, finding.Values{"length": row.Length, "span": span, "start": row.Start})
	}
}

func (r *reader) roundFlange(n *nodes.Node) *plan.Flange {
	f, ok := r.Fields(n, finding.Term("the flange"), "outer", "bore", "face", "gasket inner", "gasket outer", "pipe wall", "pipe radius", "pair")
	if !ok {
		return nil
	}
	flange := &plan.Flange{
		Outer: f.Length("outer", unit.Sensible.Bore), Bore: f.Length("bore", unit.Sensible.Bore),
		GasketInner: f.Length("gasket inner", unit.Sensible.Bore), GasketOuter: f.Length("gasket outer", unit.Sensible.Bore),
		PipeWall: f.Length("pipe wall", unit.Sensible.Thickness), PipeRadius: f.Length("pipe radius", unit.Sensible.Bore),
	}
	flange.Single = f.No("pair")
	r.face(f, flange)
	if f.Has("pipe wall") != f.Has("pipe radius") && !f.Mistyped("pipe wall", "pipe radius") {
		r.Fail(n, HalfPipe, nil)
	}
	r.flangeFits(n, flange)
	return flange
}

// face checks that a raised face has its gasket's diameters, and a full one
// none.
func (r *reader) face(f form.Fields, flange *plan.Flange) {
	raised := f.Has("gasket inner") || f.Has("gasket outer")
	at := f.Get("face")
	if at != nil {
		word, ok := form.Choice(r.Reader, at, "face", "full", "raised")
		if !ok {
			return
		}
		if word == "full" && raised {
			r.Fail(at, FullFace, finding.Values{"allowed": []string{"raised"}})
			return
		}
		raised = word == "raised"
	}
	if !raised {
		return
	}
	inner, outer := f.Need("gasket inner", "330 mm"), f.Need("gasket outer", "370 mm")
	if inner != nil && outer != nil && flange.GasketInner > 0 && flange.GasketOuter > 0 && flange.GasketInner >= flange.GasketOuter {
		r.Fail(outer, GasketInsideOut, finding.Values{"inner": flange.GasketInner, "outer": flange.GasketOuter})
	}
}

// flangeFits holds a flange against its fasteners.
func (r *reader) flangeFits(n *nodes.Node, flange *plan.Flange) {
	at := r.input.Joint.Points()
	if len(at) < 3 || !r.fasteners.placed() {
		return
	}
	if !compliance.OnCircle(at) {
		r.Fail(n, FlangeOffCircle, nil)
		return
	}
	circle := unit.Length(2 * geometry.Enclose(at).Radius)
	around := []unit.Length{flange.Bore, circle, flange.Outer}
	around = slices.DeleteFunc(around, func(l unit.Length) bool { return l == 0 })
	if !slices.IsSorted(around) {
		r.Fail(n, FlangeOrder, finding.Values{"circle": circle, "bore": flange.Bore, "outer": flange.Outer})
	}
	if pipe := flange.PipeRadius; pipe > 0 && flange.Bore > 0 && (pipe < 0.4*flange.Bore || pipe > 0.75*flange.Bore) {
		r.Warn(n, PipeUnfit, finding.Values{"radius": pipe, "bore": flange.Bore})
	}
	if flange.Outer > 0 && flange.GasketOuter > flange.Outer {
		r.Fail(n, GasketStandsOut, finding.Values{"gasket": flange.GasketOuter, "flange": flange.Outer})
	}
}
