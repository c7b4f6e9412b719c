package nodes

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// Undashed returns the items of a list whose first item lacks its dash, so that
// YAML reads it as one text; nil if it is not one.
func (n *Node) Undashed() []*Node { return n.undashed }

func (c *converter) setUndashed(y *yaml.Node, n *Node) {
	s, ok := c.copy.spanOf(y)
	if !ok || s.endLine == s.line || c.flows > 0 {
		return
	}
	first := c.node(y)
	items := []*Node{first}
	first.Text = strings.TrimSpace(string(c.copy.runes(s.line)[s.column-1:]))
	for l := s.line + 1; l <= s.endLine; l++ {
		text := c.copy.lines[l-1]
		if dashed.MatchString(text) {
			items = append(items, &Node{File: c.file, Line: l, Column: indent(text) + 3})
			text = text[indent(text)+1:]
		}
		last := items[len(items)-1]
		last.Text = strings.TrimSpace(last.Text + " " + strings.TrimSpace(text))
	}
	if len(items) > 1 {
		n.undashed = items
	}
}

// dashPut returns the copy with a dash before the entry that lacks one, at the
// line or right above it, and the line of that entry, or 0.
func (c copied) dashPut(line int) (copied, int) {
	first, last := line, line
	text := c.lines[line-1]
	depth := indent(text)
	outside := func(l int) bool {
		return indent(c.lines[l-1]) < depth || strings.TrimSpace(c.lines[l-1]) == "" || indent(c.lines[l-1]) == depth && dashed.MatchString(c.lines[l-1])
	}
	if dashed.MatchString(text) {
		first, last = line-1, line-1
		for first > 1 && !outside(first-1) {
			first--
		}
	} else {
		for last < len(c.lines) && !outside(last+1) {
			last++
		}
	}
	if first < 1 || outside(first) || indent(c.lines[first-1]) != depth {
		return c, 0
	}
	anew := map[int]string{}
	for l := first; l <= last; l++ {
		put := "  "
		if l == first {
			put = "- "
		}
		anew[l] = c.lines[l-1][:depth] + put + c.lines[l-1][depth:]
	}
	c = c.with(anew)
	for l := range anew {
		c.put[l] = blanks{depth, 2}
	}
	if c.past(line) == 0 {
		return c, 0
	}
	return c, first
}
