package nodes

import (
	"regexp"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

// In a flow a comma or a bracket ends a text.
var flowEnd = regexp.MustCompile(`[,\]}]`)

// setComment notes the comment that one blank parts from a text: in the trade #
// means number, and what stands behind it would be lost.
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

// InQuotes returns the line as it has to be written for a text and the comment
// behind it to be one text.
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

// hashes finds what may be numbers of the trade, and what YAML takes for
// comments, about the line that stops the parser.
func (c copied) hashes(line int) (signs []sign) {
	for l := max(1, line-1); l <= min(line+lookAhead, len(c.lines)); l++ {
		for _, m := range hashAfterText.FindAllStringIndex(c.lines[l-1], -1) {
			signs = append(signs, sign{l, m[1] - 1, hashMark})
		}
	}
	return signs
}
