package patterns

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/strength"
)

// readClamped reads the block joint: what is known of the clamped parts. It
// comes after the fasteners, whose places a row and a flange must fit.
func (r *reader) readClamped(file fields) {
	n := file.get("joint")
	if n == nil {
		return
	}
	f, ok := r.fields(n, "joint", "part", "counterpart", "gasket", "row", "flange", "bolt flexibility")
	if !ok {
		return
	}
	c := &r.input.Clamped
	c.Part = r.clampedPart(f, "part")
	c.Counterpart = r.clampedPart(f, "counterpart")
	if at := f.get("gasket"); at != nil {
		c.Gasket = r.gasket(at)
	}
	if f.has("row") && f.has("flange") {
		r.fail(n, "one of row, flange", "joint has row and flange at once")
	} else if at := f.get("row"); at != nil {
		c.Row = r.clampedRow(at)
	} else if at := f.get("flange"); at != nil {
		c.Flange = r.roundFlange(at)
	}
	if at := f.get("bolt flexibility"); at != nil {
		c.BoltFlexibility, _ = quantity(r, at, "bolt flexibility", unit.ParseFlexibility)
	}
}

// quantity reads a figure above 0 by its parser.
func quantity[T ~float64](r *reader, n *node, what string, parse func(string) (T, error)) (T, bool) {
	text, ok := r.quantityText(n, what)
	if !ok {
		return 0, false
	}
	v, err := parse(text)
	if err != nil {
		r.unreadable(n, problem.Error, what, err)
		return 0, false
	}
	if !(v > 0) {
		r.fail(n, "more than 0", "%s: %s is too little", what, quoted(text))
		return 0, false
	}
	return v, true
}

// span reads a stiffness, or its bounds.
func span[T any](r *reader, n *node, what string, parse func(string) (T, error)) (v T) {
	text, ok := r.quantityText(n, what)
	if !ok {
		return v
	}
	v, err := parse(text)
	if err != nil {
		r.unreadable(n, problem.Error, what, err)
	}
	return v
}

func (r *reader) clampedPart(file fields, key string) plan.ClampedPart {
	n := file.get(key)
	if n == nil {
		return plan.ClampedPart{}
	}
	f, ok := r.fields(n, "the "+key, "material", "thickness")
	if !ok {
		return plan.ClampedPart{}
	}
	p := plan.ClampedPart{Material: f.text("material"), Thickness: r.kindSize(f, "thickness")}
	if p.Material != "" {
		if _, err := strength.ParseMaterial(p.Material); err != nil {
			r.unreadable(f.get("material"), problem.Error, "", err)
		}
	}
	return p
}

// gasket reads its kind, or its stiffness, or what a data sheet says of it.
func (r *reader) gasket(n *node) plan.Gasket {
	f, ok := r.fields(n, "the gasket", "kind", "stiffness", "strip", "squeezed", "at", "thickness")
	if !ok {
		return plan.Gasket{}
	}
	g := plan.Gasket{Strip: r.kindSize(f, "strip")}
	if f.has("stiffness") && f.has("squeezed") {
		r.fail(n, "one of stiffness, squeezed", "the gasket has stiffness and squeezed at once")
		return g
	}
	if at := f.get("kind"); at != nil {
		text, _ := r.text(at, "kind")
		kind, err := compliance.ParseGasket(text)
		if err != nil {
			r.unreadable(at, problem.Error, "", err)
		}
		g.Kind = string(kind)
	}
	if at := f.get("stiffness"); at != nil {
		g.Stiffness = span(r, at, "stiffness", unit.ParseAreaStiffness)
	}
	if f.has("squeezed") {
		g.Stiffness = r.dataSheet(f)
	} else if f.has("at") || f.has("thickness") {
		r.refuse(f, "at and thickness go with squeezed, the share that a data sheet states, such as 7-17 %", "at", "thickness")
	}
	return g
}

// dataSheet reads how much of its thickness a gasket is squeezed at a pressure.
func (r *reader) dataSheet(f fields) (stiffness unit.Span[unit.AreaStiffness]) {
	const example = "{squeezed: 7-17 %, at: 34.5 MPa, thickness: 1.5 mm}"
	squeezed, at, thick := f.get("squeezed"), f.need("at", "34.5 MPa, as in "+example), f.need("thickness", "1.5 mm, as in "+example)
	if squeezed == nil || at == nil || thick == nil {
		return stiffness
	}
	least, most, ok := r.percents(squeezed, "squeezed")
	pressure, okPressure := quantity(r, at, "at", unit.ParseStress)
	thickness, okThickness := r.sizeMm(thick, "thickness")
	if !ok || !okPressure || !okThickness {
		return stiffness
	}
	stiffness.Low = unit.AreaStiffness(compliance.GasketMPaPerMm(float64(pressure), most, thickness))
	stiffness.High = unit.AreaStiffness(compliance.GasketMPaPerMm(float64(pressure), least, thickness))
	stiffness.Nominal = unit.AreaStiffness(math.Sqrt(float64(stiffness.Low * stiffness.High)))
	return stiffness
}

// percents reads 10 % or 7-17 %.
func (r *reader) percents(n *node, what string) (least, most float64, ok bool) {
	low, high, found := strings.Cut(strings.ReplaceAll(strings.TrimSuffix(strings.TrimSpace(n.text), "%"), "–", "-"), "-")
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
	if n.shape != scalarShape || !strings.Contains(n.text, "%") || !(least > 0 && least <= most && most < 100) {
		r.fail(n, "more than 0 %, less than 100 %, such as 10 % or 7-17 %", "%s is %s", what, n.called())
		return 0, 0, false
	}
	return least, most, true
}

func (r *reader) clampedRow(n *node) *plan.Row {
	f, ok := r.fields(n, "the row", "bending", "foundation", "length", "start")
	if !ok {
		return nil
	}
	bending, foundation, length := f.need("bending", "2.0e8 N·mm²"), f.need("foundation", "900 N/mm²"), f.need("length", "380 mm")
	if bending == nil || foundation == nil || length == nil {
		return nil
	}
	row := &plan.Row{}
	var okBending, okLength bool
	row.Bending, okBending = quantity(r, bending, "bending", unit.ParseBendingStiffness)
	row.Foundation = span(r, foundation, "foundation", unit.ParseLineStiffness)
	long, okLength := r.sizeMm(length, "length")
	row.Length = unit.Length(long)
	if !okBending || !okLength || !row.Foundation.Stated() {
		return nil
	}
	r.rowFits(n, f, row)
	return row
}

// rowFits holds a row against its fasteners. Without a start they stand in the
// middle of it.
func (r *reader) rowFits(n *node, f fields, row *plan.Row) {
	at := r.input.Joint.Points()
	if len(at) == 0 || r.fasteners.broken {
		return
	}
	first, last := compliance.RowEnds(at)
	span := unit.Length(first.Distance(last))
	row.Start = (row.Length - span) / 2
	if at := f.get("start"); at != nil {
		start, ok := r.lengthMm(at, "start")
		if !ok {
			return
		}
		row.Start = unit.Length(start)
	}
	if !compliance.InLine(at) {
		r.fail(n, "", "a row belongs to fasteners on one line; these stand off it: leave row out, and state the part and its gasket")
		return
	}
	if row.Start < 0 || row.Start+span > row.Length*(1+1e-9) {
		r.fail(n, "", "the row of %v does not reach over its fasteners, which take %v from %v on", row.Length, span, row.Start)
	}
}

func (r *reader) roundFlange(n *node) *plan.Flange {
	f, ok := r.fields(n, "the flange", "outer", "bore", "face", "gasket inner", "gasket outer", "pipe wall", "pipe radius", "pair")
	if !ok {
		return nil
	}
	flange := &plan.Flange{
		Outer: r.kindSize(f, "outer"), Bore: r.kindSize(f, "bore"),
		GasketInner: r.kindSize(f, "gasket inner"), GasketOuter: r.kindSize(f, "gasket outer"),
		PipeWall: r.kindSize(f, "pipe wall"), PipeRadius: r.kindSize(f, "pipe radius"),
	}
	if at := f.get("pair"); at != nil {
		pair, ok := r.yesNo(at, "pair")
		flange.Single = ok && !pair
	}
	r.face(f, flange)
	if f.has("pipe wall") != f.has("pipe radius") && !f.mistyped("pipe wall", "pipe radius") {
		r.fail(n, "", "a pipe behind the flange has pipe wall and pipe radius, for example pipe wall: 12 mm, pipe radius: 160 mm")
	}
	r.flangeFits(n, flange)
	return flange
}

// face checks that a raised face has its gasket's diameters, and a full one
// none.
func (r *reader) face(f fields, flange *plan.Flange) {
	raised := f.has("gasket inner") || f.has("gasket outer")
	at := f.get("face")
	if at != nil {
		word, ok := r.choice(at, "face", "full", "raised")
		if !ok {
			return
		}
		if word == "full" && raised {
			r.fail(at, "raised", "the face is full, yet the gasket has diameters of its own")
			return
		}
		raised = word == "raised"
	}
	if !raised {
		return
	}
	inner, outer := f.need("gasket inner", "330 mm"), f.need("gasket outer", "370 mm")
	if inner != nil && outer != nil && flange.GasketInner > 0 && flange.GasketOuter > 0 && flange.GasketInner >= flange.GasketOuter {
		r.fail(outer, "more than gasket inner", "the gasket reaches from %v to %v", flange.GasketInner, flange.GasketOuter)
	}
}

// flangeFits holds a flange against its fasteners.
func (r *reader) flangeFits(n *node, flange *plan.Flange) {
	at := r.input.Joint.Points()
	if len(at) < 3 || r.fasteners.broken {
		return
	}
	if !compliance.OnCircle(at) {
		r.fail(n, "", "a flange belongs to fasteners on one circle; these stand off it: leave flange out, and state the part and its gasket")
		return
	}
	circle := unit.Length(2 * geometry.Enclose(at).Radius)
	around := []unit.Length{flange.Bore, circle, flange.Outer}
	around = slices.DeleteFunc(around, func(l unit.Length) bool { return l == 0 })
	if !slices.IsSorted(around) {
		r.fail(n, "", "the bolt circle of %v lies between the bore and the outer diameter; these are %v and %v", circle, flange.Bore, flange.Outer)
	}
	if flange.Outer > 0 && flange.GasketOuter > flange.Outer {
		r.fail(n, "", "the gasket of %v stands out over the flange of %v", flange.GasketOuter, flange.Outer)
	}
}
