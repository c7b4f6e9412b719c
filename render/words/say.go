package words

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"drawdown/geometry/finding"
)

// Say returns the sentence of a finding in the language, with what is allowed
// instead. It is the same in all output.
func (c *Catalogue) Say(f finding.Finding) string {
	if allowed := c.Allowed(f); allowed != "" {
		return fmt.Sprintf(c.List.Allowed, c.What(f), allowed)
	}
	return c.What(f)
}

// Allowed says what is allowed instead of what was found, or "" if the code has
// no such text. Its text is under the code with ".allowed" appended. If a
// finding is the reason for this one, what it allows applies.
func (c *Catalogue) Allowed(f finding.Finding) string {
	var why finding.Finding
	if words, ok := c.Findings[string(f.Code)+".allowed"]; ok {
		return c.fill(words, f.Values)
	} else if errors.As(f.Unwrap(), &why) {
		return c.Allowed(why)
	}
	return ""
}

// What describes what was found.
//
// Braces in a sentence are filled in from the finding's values:
//
//	{torque}                         the value: see Value
//	{torque:.1 N·m}                  with one decimal, in a unit
//	{torque:~ N·m}                   with about three figures
//	{ids}, {ids:all}                 a list joined by and, shortened if long; all of it
//	{ids:or}, {ids:,}, {ids:12}      all of it joined by or; by commas; only 12 of it
//	{found}, {found:and}             findings: sentences joined by semicolons; a list as above
//	{bolts|# bolt goes|# bolts go}   by a count; # is the figure
//	{side|loosen=off|on}             by a word, the last form for all others
//	{?limit: up to {limit}}          only if there is such a value, other than zero
//	{!limit: of any size}            only if there is none
func (c *Catalogue) What(f finding.Finding) string {
	sentence, known := c.Findings[string(f.Code)]
	if !known {
		return f.Error() // a test ensures that every code has words
	}
	return c.fill(sentence, f.Values)
}

// SayAll words a list of findings, a sentence each.
func (c *Catalogue) SayAll(list []finding.Finding) []string { return each(list, c.Say) }

// Error words an error, together with the text that wraps it. Errors from the
// system are not translated.
func (c *Catalogue) Error(err error) string { return around(err, c.Say) }

// around replaces a finding inside an error by its words.
func around(err error, say func(finding.Finding) string) string {
	var found finding.Finding
	if !errors.As(err, &found) {
		return err.Error()
	}
	return strings.Replace(err.Error(), found.Error(), say(found), 1)
}

// fill fills in the braces.
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

// outside returns the index of the first such sign outside braces, or a
// negative value.
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

// part returns the replacement for one pair of braces.
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
		return "{" + inside + "}" // a test ensures that this does not happen
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

// split splits the forms of a choice at the bars outside braces.
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
