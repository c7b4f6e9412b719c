package nodes

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// marked returns the copy with signs replaced by marks: all of the colons, and
// as few hashes as needed. It returns false if the copy still cannot be parsed
// past the line.
func (c copied) marked(hashes, colons []sign, line int) (copied, bool) {
	best := c.signed(slices.Concat(hashes, colons))
	if len(hashes)+len(colons) == 0 || best.past(line) == 0 {
		return c, false
	}
	for i := 0; i < len(hashes) && len(hashes)+len(colons) > 1; {
		fewer := slices.Delete(slices.Clone(hashes), i, i+1)
		if next := c.signed(slices.Concat(fewer, colons)); next.past(line) > 0 {
			hashes, best = fewer, next
		} else {
			i++
		}
	}
	return best, true
}

// sign is a # or a colon in the text, by line and byte offset.
type sign struct {
	line, at int
	mark     rune
}

func (c copied) signed(signs []sign) copied {
	anew := map[int]string{}
	slices.SortFunc(signs, func(a, b sign) int { return b.at - a.at }) // from the end, because insertions move what follows
	for _, s := range signs {
		text, begun := anew[s.line]
		if !begun {
			text = c.lines[s.line-1]
		}
		anew[s.line] = text[:s.at] + string(s.mark) + text[s.at+1:]
	}
	return c.with(anew)
}

var hashAfterText = regexp.MustCompile(`[^\s,\[\]{}:"'-] #`)

var (
	colonAfterText = regexp.MustCompile(`\S:(?: |$)`)
	inEntry        = regexp.MustCompile(`\S: [^,{}\[\]]*$`) // after a key, and before the next one of a flow
)

// colons finds those on a line that are in a value, or in a line without a key.
func (c copied) colons(line int, keys []string) (signs []sign) {
	text := c.lines[line-1]
	keyed := false
	for _, m := range colonAfterText.FindAllStringIndex(text, -1) {
		at := strings.IndexByte(text[m[0]:], ':') + m[0]
		if slices.ContainsFunc(keys, func(key string) bool { return endsIn(text[:at], key) }) {
			keyed = true
			continue
		}
		signs = append(signs, sign{line, at, colonMark})
	}
	if !keyed {
		return signs
	}
	return slices.DeleteFunc(signs, func(s sign) bool { return !inEntry.MatchString(text[:s.at]) })
}

// endsIn reports whether a text ends in a word.
func endsIn(text, word string) bool {
	before, ends := strings.CutSuffix(text, word)
	return ends && (before == "" || strings.ContainsAny(before[len(before)-1:], " {[,"))
}

var dashed = regexp.MustCompile(`^ *-(?: |$)`)

func indent(text string) int { return len(text) - len(strings.TrimLeft(text, " ")) }

// blankPut returns the copy with a space inserted after a colon.
func (c copied) blankPut(line, column int, key string) copied {
	text := []rune(c.lines[line-1])
	behind := column + utf8.RuneCountInString(key)
	c = c.with(map[int]string{line: string(text[:behind]) + " " + string(text[behind:])})
	c.put[line] = blanks{behind, 1}
	return c
}
