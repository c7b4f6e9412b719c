// Package measure is what is measured on a machine: values with their limits at
// their places, the judgement of what was read, and the shim that brings a
// clearance back. All figures are exact decimals. It imports units and findings.
package measure

import (
	"slices"

	"drawdown/geometry/unit"
)

// Value is one thing to measure.
type Value struct {
	What   string        `json:"what"` // bolt length, valve clearance
	Unit   unit.Gauge    `json:"unit"`
	From   *unit.Decimal `json:"from,omitempty"` // the least that is right; nil: no lower limit
	To     *unit.Decimal `json:"to,omitempty"`   // the most
	Wanted *unit.Decimal `json:"wanted,omitempty"`
	At     []Place       `json:"at,omitempty"` // empty: once, on the whole part
	Shims  *Shims        `json:"shims,omitempty"`
	Source string        `json:"source,omitempty"` // where the limits come from
}

// Place is where a value is taken. One field is set.
type Place struct {
	Fastener string `json:"fastener,omitempty"`
	Station  string `json:"station,omitempty"`
	Label    string `json:"label,omitempty"` // of a bore, or in a machine file any name
}

// Name is what the file calls the place.
func (p Place) Name() string { return p.Fastener + p.Station + p.Label }

// Verdict is what a figure comes to against the limits.
type Verdict string

const (
	Unlimited Verdict = ""       // there is nothing to judge by
	Within    Verdict = "within" // at a limit counts
	Below     Verdict = "below"
	Above     Verdict = "above"
)

// Outside reports whether a figure is beyond a limit.
func (v Verdict) Outside() bool { return v == Below || v == Above }

// Judge holds a figure in the value's unit against the limits.
func (v Value) Judge(read unit.Decimal) Verdict {
	switch {
	case v.From != nil && read.Less(*v.From):
		return Below
	case v.To != nil && v.To.Less(read):
		return Above
	case v.From == nil && v.To == nil:
		return Unlimited
	}
	return Within
}

// Aim is what a new shim is chosen for: what the file wants, else the middle of
// the limits; false where there is neither.
func (v Value) Aim() (unit.Decimal, bool) {
	switch {
	case v.Wanted != nil:
		return *v.Wanted, true
	case v.From != nil && v.To != nil:
		return v.From.Middle(*v.To), true
	}
	return unit.Decimal{}, false
}

// Has reports whether the value is taken at a place; one without places is taken
// where none is named.
func (v Value) Has(p Place) bool {
	return slices.Contains(v.At, p) || len(v.At) == 0 && p == Place{}
}

// Read is a figure with the value's unit.
func (v Value) Read(d unit.Decimal) unit.Reading { return unit.Reading{Decimal: d, Unit: v.Unit} }

// Find returns the value of a name that is taken at a place; false where the
// list has none.
func Find(list []Value, what string, p Place) (Value, bool) {
	i := slices.IndexFunc(list, func(v Value) bool { return v.What == what && v.Has(p) })
	if i < 0 {
		return Value{}, false
	}
	return list[i], true
}

// Limits prints the limits: "0.15–0.25 mm", "≤ 0.05 mm", "≥ 11.0 bar"; empty
// where there are none.
func (v Value) Limits() string {
	switch {
	case v.From != nil && v.To != nil:
		return v.From.String() + "–" + v.Read(*v.To).String()
	case v.To != nil:
		return "≤ " + v.Read(*v.To).String()
	case v.From != nil:
		return "≥ " + v.Read(*v.From).String()
	}
	return ""
}
