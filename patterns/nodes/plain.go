package nodes

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// span is the position of a plain text, from its first character to after its
// last.
type span struct{ line, column, endLine, endColumn int }

// spanOf finds a plain text in the lines that it was read from. It returns
// false for other nodes, and for texts in quotes.
func (c copied) spanOf(y *yaml.Node) (s span, ok bool) {
	const written = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle | yaml.LiteralStyle | yaml.FoldedStyle
	if y.Kind != yaml.ScalarNode || y.Style&written != 0 || y.Line < 1 || y.Line > len(c.lines) {
		return s, false
	}
	at := position{c, y.Line, y.Column}
	for r := at.rune(); r == '&' || r == '!'; r = at.rune() {
		at.skip(func(r rune) bool { return !unicode.IsSpace(r) })
		at.skip(unicode.IsSpace)
	}
	s.line, s.column = at.line, at.column
	for _, r := range y.Value {
		if unicode.IsSpace(r) {
			continue
		}
		for at.skip(unicode.IsSpace); at.rune() == 0 && at.line < len(c.lines); at.skip(unicode.IsSpace) {
			at.line, at.column = at.line+1, 1
		}
		if at.rune() != r {
			return s, false
		}
		at.column++
	}
	s.endLine, s.endColumn = at.line, at.column
	return s, true
}

// position steps through the lines of a copy by characters.
type position struct {
	copied
	line, column int
}

// rune returns the character there; 0 past the end of the line.
func (p *position) rune() rune {
	text := p.runes(p.line)
	if p.column < 1 || p.column > len(text) {
		return 0
	}
	return text[p.column-1]
}

func (p *position) skip(which func(rune) bool) {
	for p.rune() != 0 && which(p.rune()) {
		p.column++
	}
}

// longest is the most of a line that is shown in advice.
const longest = 160

// before returns the part of the line before the text.
func (c copied) before(s span) string {
	line := c.runes(s.line)[:s.column-1]
	return strings.TrimLeft(string(line[max(0, len(line)-longest-1):]), " ")
}

// behind returns the part of the line after the text.
func (c copied) behind(s span) string {
	line := c.runes(s.endLine)[s.endColumn-1:]
	return string(line[:min(len(line), longest+1)])
}

// WithColon returns the line in quotes if a map was meant as a text with a
// colon, otherwise "".
func (n *Node) WithColon() string { return n.withColon }

// setWithColon marks a map without { } that has one unknown key.
func (c *converter) setWithColon(y *yaml.Node, n *Node) {
	if len(y.Content) != 2 || c.known(y.Content[0].Value) || y.Content[0].Line != y.Line || y.Content[0].Column != y.Column {
		return
	}
	key, okKey := c.copy.spanOf(y.Content[0])
	value, okValue := c.copy.spanOf(y.Content[1])
	if okKey && okValue && key.line == value.line && y.Content[1].Value != "" {
		n.withColon = inQuotes(c.copy.before(key), y.Content[0].Value+": "+y.Content[1].Value, c.copy.behind(value))
	}
}

// inQuotes returns a line with its text in quotes, or only the text if the line
// is long.
func inQuotes(before, text, behind string) string {
	text = quote(text)
	if strings.HasSuffix(before, ":") || strings.HasSuffix(before, "-") {
		before += " "
	}
	if line := unmarked.Replace(before + text + behind); utf8.RuneCountInString(line) <= longest {
		return line
	}
	return problem.Shortened(text)
}

// quote returns a text in quotes for YAML.
func quote(text string) string {
	if strings.ContainsAny(text, `"\`) {
		return "'" + strings.ReplaceAll(text, "'", "''") + "'"
	}
	return `"` + text + `"`
}

// Private characters that stand in a copy for signs of a text that YAML would
// interpret. No text contains them.
const (
	hashMark  = '\uE023'
	colonMark = '\uE03A'
)

var unmarked = strings.NewReplacer(string(hashMark), "#", string(colonMark), ":")

// reportMarked reports the texts of a copy with signs that were meant
// literally.
func (c *converter) reportMarked(y *yaml.Node) {
	if y.Kind == yaml.MappingNode && c.isText(y) {
		c.failMarked(y.Content[0], unmarked.Replace(y.Content[0].Value+": "+y.Content[1].Value), y.Content[1])
		return
	}
	if y.Kind == yaml.ScalarNode && strings.ContainsAny(y.Value, string([]rune{hashMark, colonMark})) {
		c.failMarked(y, unmarked.Replace(y.Value), y)
	}
	for _, child := range y.Content {
		c.reportMarked(child)
	}
}

// failMarked reports a text from the start of one node to the end of another.
func (c *converter) failMarked(from *yaml.Node, text string, to *yaml.Node) {
	start, ok := c.copy.spanOf(from)
	end, okEnd := c.copy.spanOf(to)
	if !ok || !okEnd {
		return
	}
	code := ColonInText
	if strings.ContainsRune(to.Value, hashMark) {
		code = HashInText
	}
	rest := unmarked.Replace(c.copy.behind(end))
	c.problems.Fail(c.node(from), code, finding.Values{"line": inQuotes(c.copy.before(start), text, rest)})
}

// isText reports whether a map was meant as a text with colons: an unknown key,
// and a value with another colon.
func (c *converter) isText(y *yaml.Node) bool {
	if len(y.Content) != 2 || y.Style&yaml.FlowStyle != 0 {
		return false
	}
	key, value := y.Content[0], y.Content[1]
	return value.Kind == yaml.ScalarNode && strings.ContainsRune(value.Value, colonMark) && !c.known(key.Value)
}
