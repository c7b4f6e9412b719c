package words

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"drawdown/geometry/finding"
)

// Say returns the sentence of a finding in the language, with what is allowed in
// its place. It is the same on every surface.
func (c *Catalogue) Say(f finding.Finding) string {
	if allowed := c.Allowed(f); allowed != "" {
		return fmt.Sprintf(c.List.Allowed, c.What(f), allowed)
	}
	return c.What(f)
}

// Allowed says what is allowed in the place of what was found; empty where the
// code has no such words. They stand under the code with ".allowed" behind it.
// Where a finding explains this one, what is allowed is the same.
func (c *Catalogue) Allowed(f finding.Finding) string {
	var why finding.Finding
	if words, ok := c.Findings[string(f.Code)+".allowed"]; ok {
		return c.fill(words, f.Values)
	} else if errors.As(f.Unwrap(), &why) {
		return c.Allowed(why)
	}
	return ""
}

// What says what was found.
//
// Braces in a sentence are filled in from the finding's values:
//
//	{torque}                         the value: see Value
//	{torque:.1 N·m}                  with one decimal, in a unit
//	{torque:~ N·m}                   with about three figures
//	{ids}, {ids:all}                 a list joined by and, cut where it is long; all of it
//	{ids:or}, {ids:,}, {ids:12}      all of it joined by or; by commas alone; 12 of it
//	{found}, {found:and}             findings: sentences by semicolons; a list as above
//	{bolts|# bolt goes|# bolts go}   by a count; # is the figure
//	{side|loosen=off|on}             by a word, the last form for all others
//	{?limit: up to {limit}}          only where there is such a value, that is not zero
//	{!limit: of any size}            only where there is none
func (c *Catalogue) What(f finding.Finding) string {
	sentence, known := c.Findings[string(f.Code)]
	if !known {
		return f.Error() // a test holds that every code has its words
	}
	return c.fill(sentence, f.Values)
}

// SayAll words a list, a sentence each.
func (c *Catalogue) SayAll(list []finding.Finding) []string { return each(list, c.Say) }

// Error words what is wrong, inside of what an error says around it. What the
// system reports has no words of ours.
func (c *Catalogue) Error(err error) string { return around(err, c.Say) }

// around puts the words of a finding in its place in an error.
func around(err error, say func(finding.Finding) string) string {
	var found finding.Finding
	if !errors.As(err, &found) {
		return err.Error()
	}
	return strings.Replace(err.Error(), found.Error(), say(found), 1)
}

// fill puts values in the place of the braces.
func (c *Catalogue) fill(sentence string, values finding.Values) string {
	var b strings.Builder
	before, rest, more := strings.Cut(sentence, "{")
	for more {
		to := outside(rest, '}')
		b.WriteString(before)
		b.WriteString(c.part(rest[:to], values))
		before, rest, more = strings.Cut(rest[to+1:], "{")
	}
	b.WriteString(before)
	return b.String()
}

// outside finds the first such sign outside of braces; below 0 where there is none.
func outside(s string, sign byte) int {
	depth := 0
	for i := range len(s) {
		switch {
		case depth == 0 && s[i] == sign:
			return i
		case s[i] == '{':
			depth++
		case s[i] == '}':
			depth--
		}
	}
	return -1
}

// part returns what stands in place of one pair of braces.
func (c *Catalogue) part(inside string, values finding.Values) string {
	if there := inside[0] == '?'; there || inside[0] == '!' {
		name, text, _ := strings.Cut(inside[1:], ":")
		if v, ok := values[name]; there == (ok && v != nil && !reflect.ValueOf(v).IsZero()) {
			return c.fill(text, values)
		}
		return ""
	}
	name, forms, choice := strings.Cut(inside, "|")
	if choice {
		return c.fill(c.choose(values[name], split(forms)), values)
	}
	name, form, _ := strings.Cut(inside, ":")
	v, ok := values[name]
	if !ok {
		return "{" + inside + "}" // a test holds that there is none
	}
	return c.Value(v, form)
}

// choose picks the form of a choice.
func (c *Catalogue) choose(v any, forms []string) string {
	last := forms[len(forms)-1]
	if n, ok := v.(int); ok {
		if n == 1 {
			last = forms[0]
		}
		return strings.ReplaceAll(last, "#", fmt.Sprint(n))
	}
	for _, form := range forms[:len(forms)-1] {
		if key, text, ok := strings.Cut(form, "="); ok && key == fmt.Sprint(v) {
			return text
		}
	}
	return last
}

// split parts the forms of a choice at the bars that stand outside of braces.
func split(forms string) (parts []string) {
	for {
		bar := outside(forms, '|')
		if bar < 0 {
			return append(parts, forms)
		}
		parts = append(parts, forms[:bar])
		forms = forms[bar+1:]
	}
}
