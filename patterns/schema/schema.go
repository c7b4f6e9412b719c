// Package schema describes the files that drawdown reads as JSON Schema, for
// editors: which keys there are, what their values look like, and what they
// mean. The readers themselves say which keys they know. It may import the
// readers of all files.
package schema

import (
	_ "embed"
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/fixes"
	"drawdown/patterns/form"
	"drawdown/patterns/machine"
	"drawdown/patterns/measured"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/wrenches"
)

//go:embed keys.txt
var keysText string

// Names lists the files with a schema: pattern, machine, survey, fixes and
// wrenches.
func Names() []string {
	var names []string
	for _, f := range files() {
		names = append(names, f.name)
	}
	return names
}

// Of returns the JSON Schema of a file, or the names that there are.
func Of(name string) ([]byte, error) {
	all := files()
	i := slices.IndexFunc(all, func(f file) bool { return f.name == name })
	if i < 0 {
		return nil, finding.Failed(NoSchema, finding.Values{"name": problem.Quoted(name), "meant": problem.Nearest(name, Names()), "allowed": Names()})
	}
	text, err := json.MarshalIndent(all[i].schema(), "", "  ")
	return append(text, '\n'), err
}

// file is one sort of file; its first object is the file itself.
type file struct {
	name, title string
	objects     []object
}

// object is a map of a file. The probe is a file in which the reader meets an
// unknown key there; "-" if it says its keys in another way.
type object struct {
	name, probe string
	keys        []key
}

type key struct {
	name     string
	required bool
	shape    string
	hover    string
}

// files reads the list of keys.
func files() []file {
	var all []file
	for _, line := range strings.Split(keysText, "\n") {
		if line == "" || line[0] == '#' {
			continue
		}
		if rest, ok := strings.CutPrefix(line, "file "); ok {
			name, title, _ := strings.Cut(rest, " ")
			all = append(all, file{name: name, title: title})
			continue
		}
		f := &all[len(all)-1]
		if rest, ok := strings.CutPrefix(line, "object "); ok {
			name, probe, _ := strings.Cut(rest, " ")
			f.objects = append(f.objects, object{name: name, probe: probe})
			continue
		}
		o := &f.objects[len(f.objects)-1]
		parts := strings.SplitN(line, " | ", 3)
		name, required := strings.CutSuffix(parts[0], "!")
		o.keys = append(o.keys, key{name, required, parts[1], parts[2]})
	}
	return all
}

// read reads a file of a sort, and returns only its problems.
func read(name string, from source.Source) problem.List {
	var list problem.List
	switch name {
	case "pattern":
		_, list = patterns.Read(from)
	case "machine":
		_, list = machine.Read(from)
	case "survey":
		_, list = measured.Read(from)
	case "fixes":
		_, list = fixes.Read(from)
	case "wrenches":
		_, list = wrenches.Read(from, time.Time{})
	}
	return list
}

// known returns the keys that the reader allows in an object.
func (f file) known(o object) []string {
	for _, p := range read(f.name, patterns.FromBytes(f.name+".yaml", []byte(o.probe+"\n"))) {
		if p.Found != nil && errors.Is(*p.Found, form.UnknownKey) && p.Found.Values["key"] == problem.Quoted("?") {
			allowed, _ := p.Found.Values["allowed"].([]string)
			return allowed
		}
	}
	var names []string
	for _, k := range o.keys {
		names = append(names, k.name)
	}
	return names
}

type node map[string]any

func (f file) schema() node {
	defs := node{}
	for _, o := range f.objects[1:] {
		defs[o.name] = f.object(o)
	}
	top := f.object(f.objects[0])
	top["$schema"], top["title"] = "https://json-schema.org/draft/2020-12/schema", f.title
	if len(defs) > 0 {
		top["$defs"] = defs
	}
	return top
}

// object describes a map. A key that the list lacks may have any value.
func (f file) object(o object) node {
	properties, required := node{}, []string{}
	for _, name := range f.known(o) {
		properties[name] = node{}
		if i := slices.IndexFunc(o.keys, func(k key) bool { return k.name == name }); i >= 0 {
			k := o.keys[i]
			value := shape(k.shape)
			value["description"] = k.hover
			properties[name] = value
			if k.required {
				required = append(required, name)
			}
		}
	}
	made := node{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		made["required"] = required
	}
	return made
}

// shape reads the shape of a value:
//
//	text, quantity       a text; a figure, with its unit or without
//	point                [x, y]
//	nothing              no value
//	list of X, map of X  a list of X, which is not empty; X by names
//	X or Y, (X or Y)     either
//	@name                an object
//	a, b, c              one of these words
func shape(text string) node {
	if parts := alternatives(text); len(parts) > 1 {
		var any []node
		for _, part := range parts {
			any = append(any, shape(part))
		}
		return node{"anyOf": any}
	}
	text = strings.TrimSuffix(strings.TrimPrefix(text, "("), ")")
	if len(alternatives(text)) > 1 {
		return shape(text)
	}
	if of, ok := strings.CutPrefix(text, "list of "); ok {
		return node{"type": "array", "items": shape(of), "minItems": 1}
	}
	if of, ok := strings.CutPrefix(text, "map of "); ok {
		return node{"type": "object", "additionalProperties": shape(of)}
	}
	if name, ok := strings.CutPrefix(text, "@"); ok {
		return node{"$ref": "#/$defs/" + name}
	}
	switch text {
	case "text":
		return node{"type": []string{"string", "number", "boolean"}}
	case "quantity":
		return node{"type": []string{"string", "number"}}
	case "point":
		return node{"type": "array", "items": node{"type": []string{"string", "number"}}, "minItems": 2, "maxItems": 2}
	case "nothing":
		return node{"type": "null"}
	}
	return node{"enum": words(text)}
}

// alternatives splits a shape at each " or " outside brackets.
func alternatives(text string) []string {
	var parts []string
	depth, begin := 0, 0
	for i := range text {
		switch {
		case text[i] == '(':
			depth++
		case text[i] == ')':
			depth--
		case depth == 0 && strings.HasPrefix(text[i:], " or "):
			parts, begin = append(parts, text[begin:i]), i+len(" or ")
		}
	}
	return append(parts, text[begin:])
}

// words lists the values of a choice. yes and no are true and false too.
func words(text string) (values []any) {
	for _, word := range strings.Split(text, ", ") {
		switch n, err := strconv.Atoi(word); {
		case err == nil:
			values = append(values, n)
		case word == "yes":
			values = append(values, word, true, "true")
		case word == "no":
			values = append(values, word, false, "false")
		default:
			values = append(values, word)
		}
	}
	return values
}
