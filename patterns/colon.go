package patterns

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// tightColon takes a plain value apart that is a known key with its value right
// behind the colon. Without a blank between them YAML reads torque:30 N·m as
// one word.
func tightColon(n *node, allowed []string) (key, rest string) {
	if n.shape != scalarShape || n.null {
		return "", ""
	}
	key, rest, ok := strings.Cut(n.text, ":")
	if !ok || rest == "" || !containsText(allowed, key) {
		return "", ""
	}
	return key, rest
}

func (r *reader) failTightColon(at *node, key, rest string) {
	r.fail(at, "", "%s", tightColonWords(key, rest))
}

// loosenColon reports an entry whose colon lacks its blank, and reads it as it
// is meant, so that one slip is one problem.
func (r *reader) loosenColon(n *node, e *entry, allowed []string) bool {
	key, rest := tightColon(e.key, allowed)
	if key == "" || !e.value.null || n.get(key) != nil {
		return false
	}
	r.failTightColon(e.key, key, rest)
	name, value := *e.key, *e.key
	name.text = key
	value.text, value.column = rest, e.key.column+utf8.RuneCountInString(key)+1
	*e = entry{&name, &value}
	return true
}

func tightColonWords(key, rest string) string {
	return "put a space after the colon: " + key + ": " + shortened(rest)
}

var tightLine = regexp.MustCompile(`^(\s*(?:- +)?)([a-z][a-z ]*):(\S.*)$`)

// tightColonNear finds a colon without its blank on the line that the parser
// could not read, or on the one above it: the parser then takes the key and its
// value for one word.
func (f *file) tightColonNear(line int, message string) (at, column int, words string) {
	if message != "could not find expected ':'" && message != "mapping values are not allowed in this context" {
		return 0, 0, ""
	}
	for at = line; at >= max(1, line-1); at-- {
		m := tightLine.FindStringSubmatch(f.lines[at-1])
		if m != nil && slices.Contains(everyKey(), m[2]) {
			return at, utf8.RuneCountInString(m[1]) + 1, tightColonWords(m[2], m[3])
		}
	}
	return 0, 0, ""
}

// everyKey lists the keys that may stand on a line of their own.
func everyKey() []string {
	return slices.Concat(fileKeys, kindKeys, tightenActions, generatorKeys(), commonKeys,
		[]string{"at", "of", "way", "note", "source", "stages", "order", "remove", "name", "loaded", "bore", "dowel", "label", "front"})
}
