package nodes

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawdown/geometry/finding"
)

// syntax reports what the YAML parser could not read, at the line that stopped
// it.
func (p *Problems) syntax(f *File, err error, keys []string) {
	line, why := parserSays(err)
	if stopping := f.stoppingLine(); stopping > 0 {
		line = stopping
	}
	line, _ = f.clamp(line, 1)
	text := f.Lines[line-1]
	if why.Code == BadFirstCharacter && strings.Contains(text[:len(text)-len(strings.TrimLeft(text, " \t"))], "\t") {
		why = finding.Failed(Tab, nil)
	}
	if at, column, tight := f.tightColonNear(line, why.Code, keys); at > 0 {
		p.Report(f, at, column, tight)
		return
	}
	p.Report(f, line, syntaxColumn(text, why), why)
}

// The parser's errors are texts alone, with the line in front where it knows
// one. Here, and nowhere else, they become codes.
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

// stoppingLine finds the line that makes the text unreadable. The parser often
// names the start of the part round it instead. Text up to the line before
// parses, and no longer piece of it does. It gives 0 for a file so large that
// the search would take long.
func (f *File) stoppingLine() int {
	const largest, lookAhead = 200_000, 30
	if len(f.Text) > largest {
		return 0
	}
	parses := func(lines int) bool {
		_, _, err := decode([]byte(strings.Join(f.Lines[:lines], "\n") + "\n"))
		return err == nil
	}
	good, bad := 0, len(f.Lines)
	for good+1 < bad {
		if middle := (good + bad) / 2; parses(middle) {
			good = middle
		} else {
			bad = middle
		}
		if good+1 < bad {
			continue
		}
		// Inside a bracket that closes further down nothing parses either.
		for ahead := bad + 1; ahead < min(bad+lookAhead, len(f.Lines)); ahead++ {
			if parses(ahead) {
				good, bad = ahead, len(f.Lines)
				break
			}
		}
	}
	return bad
}

// syntaxColumn finds the place on the line where the finding tells it, or the
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
