// Package measure has what is measured on a machine: values with their limits
// and places, the judgement of a reading, and the shim that restores a
// clearance. All figures are exact decimals. It imports units and findings.
package measure

import (
	"slices"

	"drawdown/geometry/unit"
)

// Value is one thing to measure.
type Value struct {
	What   string        `json:"what"` // bolt length, valve clearance
	Unit   unit.Gauge    `json:"unit"`
	From   *unit.Decimal `json:"from,omitempty"` // lower limit; nil: none
	To     *unit.Decimal `json:"to,omitempty"`   // upper limit; nil: none
	Wanted *unit.Decimal `json:"wanted,omitempty"`
	At     []Place       `json:"at,omitempty"` // empty: once, on the whole part
	Shims  *Shims        `json:"shims,omitempty"`
	Source string        `json:"source,omitempty"` // where the limits come from
}

// Place is where a value is measured. One field is set.
type Place struct {
	Fastener string `json:"fastener,omitempty"`
	Station  string `json:"station,omitempty"`
	Label    string `json:"label,omitempty"` // of a bore, or any name in a machine file
}

// Name is the name of the place in the file.
func (p Place) Name() string { return p.Fastener + p.Station + p.Label }

// Verdict is the result of comparing a figure with the limits.
type Verdict string

const (
	Unlimited Verdict = ""       // there are no limits
	Within    Verdict = "within" // including the limits themselves
	Below     Verdict = "below"
	Above     Verdict = "above"
)

// Outside reports whether a figure is beyond a limit.
func (v Verdict) Outside() bool { return v == Below || v == Above }

// Judge compares a figure in the value's unit with the limits.
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

// Aim is the target for choosing a new shim: what the file wants, otherwise the
// middle of the limits; false if there is neither.
func (v Value) Aim() (unit.Decimal, bool) {
	switch {
	case v.Wanted != nil:
		return *v.Wanted, true
	case v.From != nil && v.To != nil:
		return v.From.Middle(*v.To), true
	}
	return unit.Decimal{}, false
}

// Has reports whether the value is measured at a place. One without places is
// measured at the empty place.
func (v Value) Has(p Place) bool {
	return slices.Contains(v.At, p) || len(v.At) == 0 && p == Place{}
}

// Read is a figure with the value's unit.
func (v Value) Read(d unit.Decimal) unit.Reading { return unit.Reading{Decimal: d, Unit: v.Unit} }

// Find returns the value with a name that is measured at a place; false if
// there is none.
func Find(list []Value, what string, p Place) (Value, bool) {
	i := slices.IndexFunc(list, func(v Value) bool { return v.What == what && v.Has(p) })
	if i < 0 {
		return Value{}, false
	}
	return list[i], true
}

// Limits formats the limits: "0.15–0.25 mm", "≤ 0.05 mm", "≥ 11.0 bar"; "" if
// there are none.
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
