package meaning

import (
	"strings"
	"unicode"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
)

// ofOtherPart warns of a mirrored or relabelled part whose title has no word of that of
// the file it extends: a counterpart is the same part on the other side.
func (r *reader) ofOtherPart(layers []*nodes.Node) {
	if len(layers) < 2 || layers[0].Get("mirror") == nil && layers[0].Get("relabel") == nil {
		return
	}
	own, base := layers[0].Get("title"), layers[1].Get("title")
	if own == nil || base == nil || shareWord(own.Text, base.Text) {
		return
	}
	r.Warn(layers[0].Get("extends"), ExtendsOther, finding.Values{"title": own.Text, "base": base.Text})
}

// shareWord reports whether two titles share a word, or the greater part of one:
// Zylinderkopf and Kopf.
func shareWord(a, b string) bool {
	const least = 4 // letters
	split := func(text string) []string {
		return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
	}
	for _, one := range split(a) {
		for _, other := range split(b) {
			if one == other || min(len(one), len(other)) >= least && (strings.Contains(one, other) || strings.Contains(other, one)) {
				return true
			}
		}
	}
	return false
}
