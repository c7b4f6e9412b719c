package mechanics

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
)

// introduction limits where a load enters the parts: 0 at the joint face, 1 at
// head and nut (VDI 2230 Part 1, section 5.2.2).
var introduction = unit.Limits{Least: 0.01, Most: 1, From: "0.01", To: "1"}

// service reads what the joint has to hold at work.
func (r *reader) service(f form.Fields, c plan.Clamped) (s plan.Service) {
	if at := f.Get("pressure"); at != nil {
		s.Pressure, _ = form.Parsed(r.Reader, at, "pressure", unit.Within(unit.Sensible.Pressure, unit.ParsePressure))
	}
	if at := f.Get("load"); at != nil {
		s.Load, _ = form.Parsed(r.Reader, at, "load", unit.Within(unit.Sensible.Load, unit.ParseForce))
	}
	if at := f.Get("load introduction"); at != nil {
		s.Introduced, _ = r.Number(at, "load introduction", introduction)
	}
	s.Sealed = f.Length("sealed", unit.Sensible.Bore)
	switch {
	case f.Mistyped("pressure", "sealed"):
	case f.Has("pressure") && !f.Has("sealed") && !c.Gasket.Ring():
		r.Fail(f.Get("pressure"), PressureAlone, nil)
	case f.Has("sealed") && !f.Has("pressure"):
		r.Fail(f.Get("sealed"), SealedAlone, nil)
	}
	s.Temperature = form.Opt(f, "temperature", r.temperature)
	return s
}

// assembledAt is the temperature of a workshop (common practice, no source).
const assembledAt unit.Temperature = 20

// temperature reads the temperatures at work. Bolts are as warm as the parts,
// unless theirs is stated.
func (r *reader) temperature(n *nodes.Node) *plan.Temperature {
	f, ok := r.Fields(n, finding.Term("the temperature"), "part", "bolt", "assembled")
	if !ok || f.Need("part", "110 °C") == nil {
		return nil
	}
	read := func(key string, usual unit.Temperature) unit.Temperature {
		at := f.Get(key)
		if at == nil {
			return usual
		}
		t, readable := form.Parsed(r.Reader, at, key, unit.Within(unit.Sensible.Temperature, unit.ParseTemperature))
		ok = ok && readable
		return t
	}
	t := plan.Temperature{Part: read("part", 0), Assembled: read("assembled", assembledAt)}
	t.Bolt = read("bolt", t.Part)
	if !ok {
		return nil
	}
	return &t
}
