package words

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// mostNamed is the number of names of a list that are written out; if only one
// more would be left, it is written too.
const mostNamed = 6

// number matches the form of a figure: "+" for a sign, decimals or significant
// figures or "~" for about three of them, and a unit: ".1 kN", "3g", "~ N·m",
// "+.0 %".
var number = regexp.MustCompile(`^(\+?)(?:\.(\d)|(\d)g|(~))?[\s\x{a0}]*(\S*)$`)

// sizes are the units that a sentence may use, each in internal units.
var sizes = map[string]float64{"": 1, "N": 1, "kN": 1000, "lbf": unit.NewtonsPerPound, "MPa": 1, "GPa": 1000, "mm": 1, "µm": 0.001, "°": 1, "N·m": 1, "lbf·ft": 1 / unit.Torque(1).In(unit.PoundForceFoot), "kN/mm": 1000, "min": 1, "%": 0.01}

// Value formats one value of a finding: a quantity with its unit, a number, a
// term of the trade in the language, a name as written, or a list.
func (c *Catalogue) Value(v any, form string) string {
	switch v := v.(type) {
	case string:
		return v
	case finding.Term:
		return c.Term(v)
	case error:
		return around(v, c.What) // what is allowed comes at the end of the whole text
	case []string:
		return c.List.join(v, form)
	case []finding.Term:
		return c.List.join(each(v, c.Term), form)
	case []finding.Finding:
		if form != "" {
			return c.List.join(c.SayAll(v), form)
		}
		return strings.Join(c.SayAll(v), "; ")
	case []unit.Length:
		return c.List.join(each(v, func(l unit.Length) string { return c.Value(l, "") }), form)
	case []int:
		return c.List.join(each(v, strconv.Itoa), form)
	case band:
		return c.Figure(span(v, form))
	}
	return c.Figure(figure(v, form))
}

// Term returns the word of the language, or the term itself if it has none. The
// names of ways are among the words of the sheets.
func (c *Catalogue) Term(t finding.Term) string {
	return cmp.Or(c.Terms[string(t)], c.Sheet.Ways[string(t)], string(t))
}

func each[T any](list []T, write func(T) string) []string {
	written := make([]string, len(list))
	for i, v := range list {
		written[i] = write(v)
	}
	return written
}

// figure formats a quantity as requested, or in the default way of its kind.
func figure(v any, form string) string {
	if f := reflect.ValueOf(v); form != "" && f.CanFloat() {
		return quantity(f.Float(), form)
	}
	switch v := v.(type) {
	case unit.Force:
		return strconv.FormatFloat(float64(v)/1000, 'f', 1, 64) + " kN"
	case unit.Stress:
		return strconv.FormatFloat(float64(v), 'f', 0, 64) + " MPa"
	case unit.Torque:
		return v.OnScale(unit.NewtonMetre).String()
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return fmt.Sprint(v)
}

func quantity(v float64, form string) string {
	m := number.FindStringSubmatch(form)
	if m == nil || sizes[m[5]] == 0 {
		panic("no figure is written as " + form) // the tests word every sentence
	}
	v /= sizes[m[5]]
	written := strconv.FormatFloat(v, 'f', -1, 64)
	if decimals, err := strconv.Atoi(m[2]); err == nil {
		written = strconv.FormatFloat(v, 'f', decimals, 64)
	} else if figures, err := strconv.Atoi(m[3]); err == nil {
		written = strconv.FormatFloat(v, 'g', figures, 64)
	} else if m[4] != "" {
		written = strconv.FormatFloat(v, 'f', decimalsOf(v), 64)
	}
	if m[1] == "+" && v >= 0 {
		written = "+" + written
	}
	switch m[5] {
	case "", "°":
		return written + m[5]
	}
	return written + " " + m[5]
}

// decimalsOf returns the decimals for about three figures, without powers of
// ten.
func decimalsOf(v float64) int {
	switch size := math.Abs(v); {
	case size >= 1000:
		return 0
	case size >= 10:
		return 1
	case size >= 1:
		return 2
	}
	return 3
}

// join joins a list: "a, b and c", "a, b or c", "a, b, c", or shortened: "a, b,
// c and 4 more". A number as the form shortens a list joined by commas at that
// many names.
func (l List) join(names []string, form string) string {
	if most, err := strconv.Atoi(form); err == nil && len(names) > most {
		return strings.Join(names[:most], ", ") + " " + l.More.Of(len(names)-most)
	} else if err == nil || form == "," {
		return strings.Join(names, ", ")
	}
	if len(names) > mostNamed+1 && form != "all" && form != "or" {
		left := len(names) - mostNamed
		return strings.Join(names[:mostNamed], ", ") + " " + l.More.Of(left)
	}
	last := len(names) - 1
	if last < 1 {
		return strings.Join(names, "")
	}
	word := l.And
	if form == "or" {
		word = l.Or
	}
	return strings.Join(names[:last], ", ") + " " + word + " " + names[last]
}
