package mechanics

import (
	"math"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
)

// gasket reads its kind, its stiffness, or the figures of a data sheet.
func (r *reader) gasket(n *nodes.Node) plan.Gasket {
	f, ok := r.Fields(n, finding.Term("the gasket"), "kind", "stiffness", "strip", "squeezed", "at", "thickness", "inside", "outside", "seating", "work", "crush")
	if !ok {
		return plan.Gasket{}
	}
	g := plan.Gasket{Strip: f.Length("strip", unit.Sensible.Strip), Thickness: f.Length("thickness", unit.Sensible.Thickness)}
	r.ring(f, &g)
	r.window(f, &g)
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
	} else if f.Has("at") {
		f.Refuse(GoesWithSqueezed, "at")
	}
	return g
}

// ring reads the diameters of a ring. A strip follows the edge instead.
func (r *reader) ring(f form.Fields, g *plan.Gasket) {
	g.Inside, g.Outside = f.Length("inside", unit.Sensible.Bore), f.Length("outside", unit.Sensible.Bore)
	switch {
	case f.Mistyped("inside", "outside") || !f.Has("inside") && !f.Has("outside"):
	case !f.Has("inside") || !f.Has("outside"):
		r.Fail(f.Node, HalfRing, nil)
		g.Inside, g.Outside = 0, 0
	case g.Inside >= g.Outside && g.Outside > 0:
		r.Fail(f.Get("outside"), GasketInsideOut, finding.Values{"inner": g.Inside, "outer": g.Outside})
	case f.Has("strip"):
		r.Fail(f.Get("strip"), RingAndStrip, nil)
	}
}

// window reads the stresses that the gasket needs and bears.
func (r *reader) window(f form.Fields, g *plan.Gasket) {
	stress := func(key string) unit.Stress {
		s, _ := form.Given(f.Get(key), key, func(n *nodes.Node, what any) (unit.Stress, bool) {
			return form.Parsed(r.Reader, n, what, unit.Within(unit.Sensible.Squeeze, unit.ParseStress))
		})
		return s
	}
	g.Seating, g.Work, g.Crush = stress("seating"), stress("work"), stress("crush")
	for _, least := range []unit.Stress{g.Seating, g.Work} {
		if g.Crush > 0 && least >= g.Crush {
			r.Fail(f.Get("crush"), CrushedFirst, finding.Values{"crush": g.Crush, "least": least})
			g.Seating, g.Work, g.Crush = 0, 0, 0
		}
	}
}

// dataSheet reads how much a gasket is compressed at a pressure, as a share of
// its thickness.
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
