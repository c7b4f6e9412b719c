package nodes

import (
	"regexp"
	"strconv"
	"strings"

	"drawdown/patterns/problem"
)

// syntax reports what the YAML parser could not read, in plain words and at
// the line that stopped it.
func (p *Problems) syntax(f *File, err error, keys []string) {
	message, line := strings.TrimPrefix(err.Error(), "yaml: "), 0
	if m := linePrefix.FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = m[2]
	}
	if stopping := f.stoppingLine(); stopping > 0 {
		line = stopping
	}
	line, _ = f.clamp(line, 1)
	if at, column, words := f.tightColonNear(line, message, keys); words != "" {
		p.Report(f, at, column, problem.Error, "", words)
		return
	}
	text := f.Lines[line-1]
	p.Report(f, line, syntaxColumn(text, message), problem.Error, "", inPlainWords(message, text))
}

var linePrefix = regexp.MustCompile(`^line (\d+): (.*)$`)

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

// syntaxColumn finds the place on the line where the message tells it, or the
// line's first character.
func syntaxColumn(text, message string) int {
	column := func(byteIndex int) int { return len([]rune(text[:byteIndex])) + 1 }
	if isTabMessage(message, text) {
		return column(strings.IndexByte(text, '\t'))
	}
	if m := unknownAnchor.FindStringSubmatch(message); m != nil {
		if i := strings.Index(text, "*"+m[1]); i >= 0 {
			return column(i)
		}
	}
	if message == "found character that cannot start any token" {
		if i := strings.IndexAny(text, "@`%"); i >= 0 {
			return column(i)
		}
	}
	return column(len(text) - len(strings.TrimLeft(text, " \t")))
}

var unknownAnchor = regexp.MustCompile(`^unknown anchor '(.*)' referenced$`)

func isTabMessage(message, text string) bool {
	indent := text[:len(text)-len(strings.TrimLeft(text, " \t"))]
	return strings.Contains(message, "found a tab") && strings.Contains(text, "\t") ||
		strings.Contains(message, "cannot start any token") && strings.Contains(indent, "\t")
}

// plainWords says in the words of someone who writes a list, not a parser.
var plainWords = map[string]string{
	"could not find expected ':'":                                  "a ':' is missing after the key",
	"did not find expected ',' or ']'":                             "the list in [ ] lacks a ',' or its ']'",
	"did not find expected ',' or '}'":                             "the map in { } lacks a ',' or its '}'",
	"found unexpected end of stream":                               "a text in quotes is not closed",
	"mapping values are not allowed in this context":               "a ':' is out of place: the line is set in too far, or a text with ': ' needs quotes",
	"did not find expected key":                                    "the line does not fit those above: it is set in differently, or something follows a closed quote or bracket",
	"did not find expected '-' indicator":                          "the line does not fit the list above: it is set in differently, or its '-' is missing",
	"block sequence entries are not allowed in this context":       "a list with '-' starts on a line of its own",
	"did not find expected node content":                           "a value is missing, or a bracket or comma is out of place",
	"found unknown escape character":                               `a \ in "double quotes" starts an escape that YAML does not know; use 'single quotes'`,
	"found character that cannot start any token":                  "a value cannot start with this character; put the text in quotes",
	"did not find expected alphabetic or numeric character":        "a value that starts with * or & needs quotes",
	"did not find expected comment or line break":                  "nothing may follow | or > on its line",
	"found incompatible YAML document":                             "the file asks for another version of YAML; leave the line with %YAML out",
	"found unexpected document indicator":                          "a text in quotes is not closed",
	"found a tab character where an indentation space is expected": tabWords,
	"found a tab character that violates indentation":              tabWords,
}

const tabWords = "the line is set in with a tab; use spaces"

func inPlainWords(message, text string) string {
	if isTabMessage(message, text) {
		return tabWords
	}
	if m := unknownAnchor.FindStringSubmatch(message); m != nil {
		return "*" + m[1] + " repeats a part that nothing above marks with &" + m[1] + "; put a text that starts with * in quotes"
	}
	if strings.HasPrefix(message, "exceeded max depth") {
		return "the brackets are nested too deep"
	}
	if words := plainWords[message]; words != "" {
		return words
	}
	return "the line is no YAML: " + message
}
