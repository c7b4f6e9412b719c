package nodes

import (
	"regexp"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

// In a flow, a comma or a bracket ends a text.
var flowEnd = regexp.MustCompile(`[,\]}]`)

// setComment records a comment separated from a text by a single space: in the
// trade # means number, and the text after it would be lost.
func (c *converter) setComment(y *yaml.Node, n *Node) {
	s, ok := c.copy.spanOf(y)
	if !ok {
		return
	}
	comment, found := strings.CutPrefix(c.copy.behind(s), " #")
	if !found {
		return
	}
	comment, rest := "#"+strings.TrimRightFunc(comment, unicode.IsSpace), ""
	if at := flowEnd.FindStringIndex(comment); c.flows > 0 && at != nil {
		comment, rest = comment[:at[0]], comment[at[0]:]
	}
	n.Comment, n.before, n.behind = comment, c.copy.before(s), rest
}

// InQuotes returns the line as it must be written so that the text and the
// comment after it are one text.
func (n *Node) InQuotes() string {
	return inQuotes(n.before, strings.TrimSpace(n.Text+" "+n.Comment), n.behind)
}

// KeyInQuotes is InQuotes for a text that was meant as a key.
func (n *Node) KeyInQuotes() string {
	text, value, isKey := strings.Cut(n.Comment, ":")
	if !isKey {
		return n.InQuotes()
	}
	return inQuotes(n.before, n.Text+" "+text, ":"+value+n.behind)
}

// hashes finds # signs around the line that stops the parser that may mean
// "number" but start a comment in YAML.
func (c copied) hashes(line int) (signs []sign) {
	for l := max(1, line-1); l <= min(line+lookAhead, len(c.lines)); l++ {
		for _, m := range hashAfterText.FindAllStringIndex(c.lines[l-1], -1) {
			signs = append(signs, sign{l, m[1] - 1, hashMark})
		}
	}
	return signs
}
