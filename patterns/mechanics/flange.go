package mechanics

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
)

// placed reads what must fit the places of the fasteners.
type placed struct {
	reader
	at []geometry.Point // nil if they are unknown
}

func (r placed) clampedRow(n *nodes.Node) *plan.Row {
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

// rowFits checks a row against its fasteners. Without a start they are in the
// middle of it.
func (r placed) rowFits(n *nodes.Node, f form.Fields, row *plan.Row) {
	if len(r.at) == 0 {
		return
	}
	first, last := compliance.RowEnds(r.at)
	span := unit.Length(first.Distance(last))
	row.Start = (row.Length - span) / 2
	if at := f.Get("start"); at != nil {
		start, ok := r.CoordinateMm(at, "start")
		if !ok {
			return
		}
		row.Start = unit.Length(start)
	}
	if !compliance.InLine(r.at) {
		r.Fail(n, RowOffLine, nil)
		return
	}
	if row.Start < 0 || row.Start+span > row.Length*(1+1e-9) {
		r.Fail(n, RowTooShort, finding.Values{"length": row.Length, "span": span, "start": row.Start})
	}
}

func (r placed) roundFlange(n *nodes.Node) *plan.Flange {
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

// flangeFits checks a flange against its fasteners.
func (r placed) flangeFits(n *nodes.Node, flange *plan.Flange) {
	if len(r.at) < 3 {
		return
	}
	if !compliance.OnCircle(r.at) {
		r.Fail(n, FlangeOffCircle, nil)
		return
	}
	circle := unit.Length(2 * geometry.Enclose(r.at).Radius)
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
