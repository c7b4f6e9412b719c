package nodes

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// mostSlips limits the syntax errors reported for one file.
const mostSlips = 30

// decoded returns the parser's nodes of a file. Syntax errors are reported, and
// the copy without them is read. There is no document if nothing can be read.
func (p *Problems) decoded(f *File, keys []string) (document, second *yaml.Node, c copied) {
	c = newCopy(f)
	for range mostSlips {
		document, second, err := c.decode()
		if err == nil {
			return document, second, c
		}
		next, mended := p.mended(f, c, err, keys)
		if !mended {
			break
		}
		c = next
	}
	return nil, nil, c
}

// mended reports what the parser could not read, at the line that stopped it,
// and returns a copy in which reading can continue, or false.
func (p *Problems) mended(f *File, c copied, err error, keys []string) (copied, bool) {
	line, why := parserSays(err)
	if len(f.Text) > largestMended {
		p.reportSyntax(f, line, why)
		return c, false
	}
	line, _ = f.clamp(c.stoppingLine(), 1)
	if next, ok := p.meant(f, c, line, why.Code, keys); ok {
		return next, true
	}
	p.reportSyntax(f, line, why)
	next := c.without(line, keys)
	if why.Code == SecondDocument { // what follows is another document
		next.lines = c.lines[:line-1]
	}
	return next, next.past(min(line, len(next.lines))) > 0
}

// meant reports a syntax error that shows what was meant, and returns the
// corrected copy.
func (p *Problems) meant(f *File, c copied, line int, code finding.Code, keys []string) (copied, bool) {
	hashes := c.hashes(line)
	if next, ok := p.inText(f, c, hashes, nil, line, keys); ok {
		return next, true
	}
	if at, column, key, rest := c.tightColonNear(line, code, keys); at > 0 {
		if next := c.blankPut(at, column, key); next.past(line) > 0 {
			p.Report(f, at, c.column(at, column), TightColon(key, rest))
			return next, true
		}
	}
	for l := max(1, line-1); l <= min(line+1, len(c.lines)); l++ {
		signs := c.colons(l, keys)
		for _, some := range [][]sign{signs[min(1, len(signs)):], signs} {
			if len(some) == 0 {
				continue
			}
			for _, with := range [][]sign{nil, hashes} {
				if next, ok := p.inText(f, c, with, some, line, keys); ok {
					return next, true
				}
			}
		}
	}
	if next, at := c.dashPut(line); at > 0 {
		text := strings.TrimSpace(next.lines[at-1])
		p.Report(f, at, indent(f.Lines[at-1])+1, finding.Failed(NoDash, finding.Values{"line": problem.Shortened(text)}))
		return next, true
	}
	return c, false
}

// inText reports signs in texts that YAML interpreted, and returns the copy
// with marks in their place: the colons, and as few hashes as needed.
func (p *Problems) inText(f *File, c copied, hashes, colons []sign, line int, keys []string) (copied, bool) {
	c, ok := c.marked(hashes, colons, line)
	if !ok {
		return c, false
	}
	if document, _, err := decode(c.text(c.past(line))); err == nil && document != nil {
		newConverter(p, f, c, keys).reportMarked(document)
	}
	return c, true
}

// reportSyntax reports a message of the parser about a line.
func (p *Problems) reportSyntax(f *File, line int, why finding.Finding) {
	line, _ = f.clamp(line, 1)
	text := f.Lines[line-1]
	if why.Code == BadFirstCharacter && strings.Contains(text[:len(text)-len(strings.TrimLeft(text, " \t"))], "\t") {
		why = finding.Failed(Tab, nil)
	}
	p.Report(f, line, syntaxColumn(text, why), why)
}

// The parser's errors are only texts, with the line in front if known. They are
// converted to codes here and nowhere else.
var (
	linePrefix    = regexp.MustCompile(`^line (\d+): (.*)$`)
	unknownAnchor = regexp.MustCompile(`^unknown anchor '(.*)' referenced$`)
)

var ofParser = map[string]finding.Code{
	"could not find expected ':'":                                  ColonMissing,
	"did not find expected ',' or ']'":                             ListOpen,
	"did not find expected ',' or '}'":                             MapOpen,
	"found unexpected end of stream":                               QuoteOpen,
	"found unexpected document indicator":                          QuoteOpen,
	"mapping values are not allowed in this context":               ColonOutOfPlace,
	"did not find expected key":                                    LineMisfit,
	"did not find expected '-' indicator":                          DashMissing,
	"block sequence entries are not allowed in this context":       ListOnOwnLine,
	"did not find expected node content":                           ValueMissing,
	"found unknown escape character":                               UnknownEscape,
	"found character that cannot start any token":                  BadFirstCharacter,
	"did not find expected alphabetic or numeric character":        StarOrAmpersand,
	"did not find expected comment or line break":                  AfterBar,
	"did not find expected <document start>":                       SecondDocument,
	"found incompatible YAML document":                             OtherYAML,
	"found a tab character where an indentation space is expected": Tab,
	"found a tab character that violates indentation":              Tab,
}

func parserSays(err error) (line int, why finding.Finding) {
	message := strings.TrimPrefix(err.Error(), "yaml: ")
	if m := linePrefix.FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = m[2]
	}
	if m := unknownAnchor.FindStringSubmatch(message); m != nil {
		return line, finding.Failed(UnknownAnchor, finding.Values{"name": m[1]})
	}
	if strings.HasPrefix(message, "exceeded max depth") {
		return line, finding.Failed(TooDeep, nil)
	}
	code, known := ofParser[message]
	if !known {
		return line, finding.Failed(NoYAML, finding.Values{"message": message})
	}
	return line, finding.Failed(code, finding.Values{"braces": "{ }", "end": "}"})
}

// syntaxColumn finds the position on the line that the finding is about, or the
// line's first character.
func syntaxColumn(text string, why finding.Finding) int {
	at := -1
	switch why.Code {
	case Tab:
		at = strings.IndexByte(text, '\t')
	case UnknownAnchor:
		at = strings.Index(text, fmt.Sprint("*", why.Values["name"]))
	case BadFirstCharacter:
		at = strings.IndexAny(text, "@`%")
	}
	if at < 0 {
		at = len(text) - len(strings.TrimLeft(text, " \t"))
	}
	return utf8.RuneCountInString(text[:at]) + 1
}
