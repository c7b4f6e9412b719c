// Package imprint marks a print with the file that it was drawn from and the
// state of that file. The mark is written into PDF, PNG and SVG files and read
// again, so that an old print is recognized. It imports nothing of the project.
package imprint

import (
	"net/url"
	"slices"
	"strings"
)

// Imprint is the state of the file that was drawn. Revision and date are empty
// if the file states none.
type Imprint struct {
	Pattern     string // file name without its extension
	Fingerprint string
	Revision    string
	Date        string
}

// field is the name of a part of the imprint in its text.
type field struct {
	name string
	of   func(*Imprint) *string
}

var fields = []field{
	{"pattern", func(p *Imprint) *string { return &p.Pattern }},
	{"fingerprint", func(p *Imprint) *string { return &p.Fingerprint }},
	{"revision", func(p *Imprint) *string { return &p.Revision }},
	{"date", func(p *Imprint) *string { return &p.Date }},
}

const between = ", " // separates imprints; the parts of one are separated by a space

// Text returns imprints in their form in a file: pattern=p4-head
// fingerprint=7c1e+90b4 revision=2 date=2026-03-01. Values are escaped as in a
// URL, so that they contain nothing with a meaning in any of the formats.
func Text(list ...Imprint) string {
	var texts []string
	for _, p := range list {
		var parts []string
		for _, f := range fields {
			if value := *f.of(&p); value != "" {
				parts = append(parts, f.name+"="+url.QueryEscape(value))
			}
		}
		texts = append(texts, strings.Join(parts, " "))
	}
	return strings.Join(texts, between)
}

// Parse returns the imprints in a text; none if it is something else.
func Parse(text string) (list []Imprint) {
	for one := range strings.SplitSeq(text, between) {
		var p Imprint
		for part := range strings.SplitSeq(one, " ") {
			name, escaped, _ := strings.Cut(part, "=")
			value, err := url.QueryUnescape(escaped)
			at := slices.IndexFunc(fields, func(f field) bool { return f.name == name })
			if err != nil || at < 0 {
				return nil
			}
			*fields[at].of(&p) = value
		}
		if p.Pattern == "" || p.Fingerprint == "" {
			return nil
		}
		list = append(list, p)
	}
	return list
}
