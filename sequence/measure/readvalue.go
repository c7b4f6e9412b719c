package measure

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Reasons why a reading cannot be compared with its value.
const (
	Unread     finding.Code = "measure unread"      // what, written: value or shim
	WrongUnit  finding.Code = "measure wrong unit"  // what, written, unit
	WrongPlace finding.Code = "measure wrong place" // what, place: "" for none, allowed
	NoShims    finding.Code = "measure no shims"    // what
)

// Results of a reading.
const (
	Outside    finding.Code = "measure outside"     // what, place: "" for the whole part, reading, limits
	ShimKept   finding.Code = "measure shim keep"   // what, place, size
	ShimToFit  finding.Code = "measure shim change" // what, place, fitted, size, clearance
	ShimBeyond finding.Code = "measure shim none"   // what, place, size, clearance, limits
)

// Written is what a person entered.
type Written struct {
	What, Value, Unit, Shim string // the unit and the shim may be empty
	At                      Place
}

// Result is a reading compared with its value.
type Result struct {
	Named   string       `json:"-"` // the value
	Where   Place        `json:"-"`
	Limits  string       `json:"limits,omitempty"`
	Verdict Verdict      `json:"verdict,omitempty"`
	Read    unit.Reading `json:"-"` // in the unit of the value
	New     *Shim        `json:"new_shim,omitempty"`
}

// Take compares a reading with the value of that name in a list. known is false
// if the list has none: then there is nothing to compare with. The error says
// what to enter instead.
func Take(list []Value, w Written) (r Result, known bool, err error) {
	named := slices.DeleteFunc(slices.Clone(list), func(v Value) bool { return !strings.EqualFold(v.What, w.What) })
	if len(named) == 0 {
		return Result{}, false, nil
	}
	i := slices.IndexFunc(named, func(v Value) bool { return v.Has(w.At) })
	if i < 0 {
		return Result{}, true, finding.Failed(WrongPlace, finding.Values{"what": w.What, "place": w.At.Name(), "allowed": names(named)})
	}
	r, err = named[i].take(w)
	return r, true, err
}

// names lists the places where values are measured.
func names(list []Value) (all []string) {
	for _, v := range list {
		for _, p := range v.At {
			all = append(all, p.Name())
		}
	}
	return all
}

func (v Value) take(w Written) (Result, error) {
	r := Result{Named: v.What, Where: w.At, Limits: v.Limits()}
	read, err := v.figure(w, w.Value)
	if err != nil {
		return r, err
	}
	r.Read, r.Verdict = v.Read(read), v.Judge(read)
	if w.Shim == "" {
		return r, nil
	}
	if v.Shims == nil {
		return r, finding.Failed(NoShims, finding.Values{"what": v.What})
	}
	fitted, err := v.figure(w, w.Shim)
	if err != nil {
		return r, err
	}
	if shim, wanted := v.NewShim(fitted, read); wanted {
		r.New = &shim
	}
	return r, nil
}

// Findings reports what to do about a reading: outside the limits, a shim to
// fit.
func (r Result) Findings() (all []finding.Finding) {
	values := finding.Values{"what": r.Named, "place": r.Where.Name(), "reading": r.Read, "limits": unit.Written(r.Limits)}
	if r.Verdict.Outside() {
		all = append(all, finding.Warned(Outside, values))
	}
	if r.New == nil {
		return all
	}
	in := func(d unit.Decimal) unit.Reading { return unit.Reading{Decimal: d, Unit: r.Read.Unit} }
	values = finding.Values{"what": r.Named, "place": r.Where.Name(), "fitted": in(r.New.Fitted), "size": in(r.New.Size), "clearance": in(r.New.Clearance), "limits": unit.Written(r.Limits)}
	switch r.New.Advice {
	case Keep:
		return append(all, finding.Noted(ShimKept, values))
	case Change:
		return append(all, finding.Noted(ShimToFit, values))
	}
	return append(all, finding.Warned(ShimBeyond, values))
}

// figure reads a figure that a person wrote, in the value's unit. On a page a
// comma is a decimal sign.
func (v Value) figure(w Written, written string) (unit.Decimal, error) {
	in := v.Unit
	if w.Unit != "" {
		var err error
		if in, err = unit.ParseGauge(w.Unit); err != nil || !in.Measures(v.Unit) {
			return unit.Decimal{}, finding.Failed(WrongUnit, finding.Values{"what": v.What, "written": w.Unit, "unit": string(v.Unit)})
		}
	}
	d, err := unit.ParseDecimal(strings.Replace(written, ",", ".", 1))
	if err != nil {
		return d, finding.Failed(Unread, finding.Values{"what": v.What, "written": written})
	}
	return in.In(d, v.Unit), nil
}
