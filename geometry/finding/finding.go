// Package finding defines what the calculating packages report: a code, the
// figures with their units, the places, the severity and the ground. It
// contains no sentences; render/words has one for each code and language.
//
// It imports nothing of the project, so that every package can use it.
package finding

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
)

// Code names one thing that can be found, such as "bolt breaks at torque". It
// is also an error to compare with: errors.Is(err, tension.BoltBreaks).
type Code string

// Error returns the code itself, for logs and tests. Readable text is in
// render/words.
func (c Code) Error() string { return string(c) }

// Severity is the importance of a finding for the work.
type Severity string

const (
	Note    Severity = "note"    // worth knowing
	Warning Severity = "warning" // needs attention before the work
	Error   Severity = "error"   // stops the work
)

// CommonPractice is the ground of what is usual in the trade without a
// published source.
const CommonPractice = "common practice"

// Values are the figures and names of a finding, by the names used in its text.
// A value is a quantity of geometry/unit, an int for a count, a float64, a
// string that a person wrote, a Term, a Finding that explains this one, or a
// slice of strings, Terms or Findings.
type Values map[string]any

// Term is a term of the trade with a translation in each language: a material,
// a lubricant, a way.
type Term string

// Place is what a finding is about. Empty fields are not used.
type Place struct {
	Kind  string   `json:"kind,omitempty"`  // of fastener
	Stage int      `json:"stage,omitempty"` // from 1
	IDs   []string `json:"ids,omitempty"`   // of fasteners
	Steps []int    `json:"steps,omitempty"` // of an order, from 1
	File  string   `json:"file,omitempty"`  // in which the reader found it
	Line  int      `json:"line,omitempty"`  // of the file, from 1; 0: unknown
}

// Finding is one thing that was found. As an error it is the cause.
type Finding struct {
	Code     Code
	Severity Severity
	Values   Values
	At       Place
	Ground   string // source (standard, clause or table) or CommonPractice
}

// Noted, Warned and Failed return a finding with each severity.
func Noted(code Code, values Values) Finding {
	return Finding{Code: code, Severity: Note, Values: values}
}
func Warned(code Code, values Values) Finding {
	return Finding{Code: code, Severity: Warning, Values: values}
}
func Failed(code Code, values Values) Finding {
	return Finding{Code: code, Severity: Error, Values: values}
}

// From returns the finding with its ground.
func (f Finding) From(ground string) Finding {
	f.Ground = ground
	return f
}

// About returns the finding with its place.
func (f Finding) About(at Place) Finding {
	f.At = at
	return f
}

// Error returns the code and its values, for logs and tests.
func (f Finding) Error() string {
	var b strings.Builder
	b.WriteString(string(f.Code))
	for _, name := range slices.Sorted(maps.Keys(f.Values)) {
		fmt.Fprintf(&b, " %s=%v", name, f.Values[name])
	}
	return b.String()
}

// Is reports whether the finding has a code.
func (f Finding) Is(target error) bool {
	code, ok := target.(Code)
	return ok && code == f.Code
}

// Unwrap returns the finding that explains this one, named "why".
func (f Finding) Unwrap() error {
	if why, ok := f.Values["why"].(error); ok {
		return why
	}
	return nil
}

// Same reports whether two findings are equal.
func (f Finding) Same(other Finding) bool { return reflect.DeepEqual(f, other) }

// Has reports whether a list has a finding with the code.
func Has(list []Finding, code Code) bool {
	return slices.ContainsFunc(list, func(f Finding) bool { return f.Code == code })
}
